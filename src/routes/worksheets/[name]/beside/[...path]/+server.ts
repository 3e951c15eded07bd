import { error } from '@sveltejs/kit';
import { worksheets } from '../../../../worksheets.ts';
import type { RequestHandler } from './$types';

/** Pictures that a sheet may show; anything else beside it stays unread. */
const types: ReadonlyMap<string, string> = new Map([
  ['png', 'image/png'],
  ['jpg', 'image/jpeg'],
  ['jpeg', 'image/jpeg'],
  ['gif', 'image/gif'],
  ['webp', 'image/webp'],
  ['avif', 'image/avif'],
  ['svg', 'image/svg+xml']
]);

export const GET: RequestHandler = async ({ params }) => {
  const ending = /\.([a-z]+)$/i.exec(params.path)?.[1]?.toLowerCase() ?? '';
  const type = types.get(ending);
  if (!type) error(404, `${params.path} is not a picture that a worksheet can show.`);
  const found = await worksheets().readPicture(params.path);
  if (found.kind === 'fault') error(404, found.message);
  return new Response(new Uint8Array(found.bytes), {
    headers: {
      'content-type': type,
      // An SVG opened by itself is a document: it may run and load nothing.
      'content-security-policy': "default-src 'none'; style-src 'unsafe-inline'; sandbox",
      'cache-control': 'no-cache'
    }
  });
};
