import { servePackageFile } from '../../../../server/open-data/serve-file';

/** A file of the data package; visitors know it as /data/<file>. */
export async function GET(request: Request, { params }: { params: Promise<{ file: string }> }): Promise<Response> {
  return servePackageFile((await params).file, request.headers);
}
