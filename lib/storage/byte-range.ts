/**
 * Which bytes of a stored file a request asks for (RFC 9110, section 14).
 * Pure: header texts in, a decision out.
 */

export type ByteRange =
  /** The whole file: nothing asked, nothing understood, several spans, or the file changed. */
  | { readonly kind: 'whole' }
  /** Bytes `[start, end)`. */
  | { readonly kind: 'part'; readonly start: number; readonly end: number }
  /** No byte of the span exists: status 416. */
  | { readonly kind: 'unsatisfiable' };

const WHOLE: ByteRange = { kind: 'whole' };

/**
 * Reads a Range header: `bytes=0-99`, `bytes=100-`, `bytes=-500`. A header
 * that is not valid, names another unit or asks for several spans is answered
 * with the whole file, which the standard allows.
 *
 * @param size of the file, bytes
 * @param etag the file's strong entity tag, quotes included
 * @param ifRange an If-Range header; the range counts only where it is that very tag
 */
export function readByteRange(
  range: string | null,
  size: number,
  etag: string,
  ifRange: string | null = null,
): ByteRange {
  if (range === null) return WHOLE;
  // A date is never good enough here (we send no Last-Modified), nor a weak tag.
  if (ifRange !== null && ifRange.trim() !== etag) return WHOLE;
  const match = /^bytes=[ \t]*(\d*)-(\d*)[ \t]*$/i.exec(range.trim());
  if (!match) return WHOLE;
  const [, first = '', last = ''] = match;
  if (first === '' && last === '') return WHOLE;
  if (first === '') return suffix(Number(last), size);
  const start = Number(first);
  const end = last === '' ? size : Math.min(Number(last) + 1, size);
  if (last !== '' && Number(last) < start) return WHOLE;
  if (start >= size) return { kind: 'unsatisfiable' };
  return { kind: 'part', start, end };
}

const suffix = (length: number, size: number): ByteRange =>
  length === 0 || size === 0
    ? { kind: 'unsatisfiable' }
    : { kind: 'part', start: Math.max(0, size - length), end: size };

/** Whether an If-None-Match header says that the asker already has this very file. */
export const alreadyHas = (ifNoneMatch: string | null, etag: string): boolean =>
  (ifNoneMatch ?? '').split(',').some((tag) => tag.trim() === '*' || tag.trim().replace(/^W\//, '') === etag);
