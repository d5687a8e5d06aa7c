/** Reads what a plain form sends, for pages that work without script. */
import { fault } from './answer-safely.ts';
import { readText } from './read-body.ts';

/** Bytes; encoded for a form a text may be nine times as long. */
const LARGEST_FORM = 64 * 1024;

export type ReadForm =
  | { readonly ok: true; readonly fields: Readonly<Record<string, string>> }
  | { readonly ok: false; readonly refusal: Response };

/** Fields by name, of several the last; 415 where it is no such form, 413 where it is too large. */
export async function readForm(request: Request): Promise<ReadForm> {
  const type = request.headers.get('content-type') ?? '';
  if (!/^application\/x-www-form-urlencoded\b/i.test(type))
    return { ok: false, refusal: fault(415, 'not-a-form') };
  const text = await readText(request, LARGEST_FORM);
  return text === null
    ? { ok: false, refusal: fault(413, 'body-too-large', { largestBytes: LARGEST_FORM }) }
    : { ok: true, fields: Object.fromEntries(new URLSearchParams(text)) };
}
