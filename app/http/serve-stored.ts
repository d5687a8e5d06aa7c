/** Answers with a stored file, whole or in part, so that players can seek. */
import { createHash } from 'node:crypto';
import { alreadyHas, readByteRange } from '#lib/storage/byte-range.ts';
import { openStorage } from '#lib/storage/open-storage.ts';

interface Serving {
  /** Cache-Control without `no-transform`, which is always added. */
  readonly cache?: string;
}

/**
 * The file under a key. GET reads it lazily and stops when the asker leaves;
 * HEAD opens nothing.
 * @param type the exact media type; browsers are told not to guess another
 */
export async function serveStored(
  request: Request,
  storageKey: string,
  type: string,
  { cache = 'private, max-age=0, must-revalidate' }: Serving = {},
): Promise<Response> {
  const size = await openStorage().size(storageKey);
  if (size === null) return new Response(null, { status: 404, headers: { 'cache-control': 'no-store' } });
  const etag = tagOf(storageKey, size);
  const headers = new Headers({
    'content-type': type,
    'accept-ranges': 'bytes',
    etag,
    'cache-control': `${cache}, no-transform`,
    'x-content-type-options': 'nosniff',
  });
  if (alreadyHas(request.headers.get('if-none-match'), etag)) {
    return new Response(null, { status: 304, headers });
  }
  if (request.method === 'HEAD') {
    headers.set('content-length', String(size));
    return new Response(null, { status: 200, headers });
  }
  const range = readByteRange(request.headers.get('range'), size, etag, request.headers.get('if-range'));
  if (range.kind === 'unsatisfiable') {
    headers.set('content-range', `bytes */${size}`);
    return new Response(null, { status: 416, headers });
  }
  const { start, end } = range.kind === 'part' ? range : { start: 0, end: size };
  headers.set('content-length', String(end - start));
  if (range.kind === 'part') headers.set('content-range', `bytes ${start}-${end - 1}/${size}`);
  return new Response(openStorage().read(storageKey, { start, end }), {
    status: range.kind === 'part' ? 206 : 200,
    headers,
  });
}

/** A strong tag: a key's bytes never change, so its name and size stand for them. */
const tagOf = (storageKey: string, size: number): string =>
  `"${createHash('sha256').update(`${storageKey} ${size}`).digest('base64url').slice(0, 22)}"`;
