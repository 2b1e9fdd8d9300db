import { serveFeed } from '../../../../../server/feeds/serve-feed';

type Params = { params: Promise<{ kind: string; slug: string }> };

/** An Atom feed; visitors know it as /symptoms/<slug>/feed.atom and the like. */
export async function GET(request: Request, { params }: Params): Promise<Response> {
  return serveFeed({ ...(await params), headers: request.headers });
}
