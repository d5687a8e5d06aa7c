/** Answers with a text made from a revision, which never changes: a strong tag, and kept for long. */
import { createHash } from 'node:crypto';
import { alreadyHas } from '#lib/storage/byte-range.ts';

/** For what a revision froze. */
export const FROZEN = 'public, max-age=31536000, immutable';

interface TextAnswer {
  /** Media type with its charset. */
  readonly type: string;
  /** Cache-Control. */
  readonly cache: string;
  /** Name under which a browser saves it; shown in the window where none is given. */
  readonly saveAs?: string;
}

export function answerText(
  request: Request,
  text: string | Uint8Array<ArrayBuffer>,
  { type, cache, saveAs }: TextAnswer,
): Response {
  const etag = `"${createHash('sha256').update(text).digest('base64url').slice(0, 22)}"`;
  const headers = new Headers({
    'content-type': type,
    'cache-control': cache,
    etag,
    'x-content-type-options': 'nosniff',
  });
  if (saveAs !== undefined) headers.set('content-disposition', `attachment; filename="${saveAs}"`);
  return alreadyHas(request.headers.get('if-none-match'), etag)
    ? new Response(null, { status: 304, headers })
    : new Response(text, { headers });
}

export const PLAIN_TYPE = 'text/plain; charset=utf-8';

/** A feed is asked for again and again; five minutes old is new enough. */
export const FEED: TextAnswer = { type: 'application/atom+xml; charset=utf-8', cache: 'public, max-age=300' };
