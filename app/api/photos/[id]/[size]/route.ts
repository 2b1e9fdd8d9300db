import { createContext } from '../../../../../server/trpc/context';
import { openPhoto } from '../../../../../server/services/photo-add';
import { caseIdSchema } from '../../../../../shared/schemas/case';
import { PHOTO_SIZES, type PhotoSize } from '../../../../../shared/schemas/photo';

type Address = { params: Promise<{ id: string; size: string }> };

const sizeOf = (text: string): PhotoSize | null => (Object.keys(PHOTO_SIZES) as PhotoSize[]).find((size) => size === text) ?? null;

/** A month: a photo never changes under its id, and one that is taken back must not stay in a cache for long. */
const KEEP = 'public, max-age=2592000, immutable';

/** A photo in one of its two sizes, for whom the case is. Any other is not found, whether or not it exists. */
export async function GET(request: Request, { params }: Address): Promise<Response> {
  const { id, size: named } = await params;
  const size = sizeOf(named);
  const context = await createContext(request.headers);
  const isId = caseIdSchema.safeParse(id).success;
  const photo = isId && size !== null ? await openPhoto(context, context.actor, { id, size }) : null;
  if (photo === null) return new Response('There is no such photo.', { status: 404, headers: { 'cache-control': 'no-store' } });
  return new Response(photo.bytes, {
    headers: {
      'content-type': 'image/webp',
      'content-disposition': 'inline',
      'x-content-type-options': 'nosniff',
      'cache-control': photo.isPublic ? KEEP : 'private, no-store',
    },
  });
}
