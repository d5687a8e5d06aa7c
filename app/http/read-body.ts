/** Reads a route's JSON body and checks it. */
import type { z } from 'zod';
import { fault } from './answer-safely.ts';

/** Bytes; what people type into forms is far below it. */
const LARGEST_BODY = 64 * 1024;

export type ReadBody<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly refusal: Response };

/**
 * The body of a request as its schema describes it, or the refusal to answer
 * with: 413 where it is larger than `largestBytes`, 400 where it is no JSON,
 * 422 with the fields that are wrong.
 */
export async function readBody<T>(
  request: Request,
  schema: z.ZodType<T>,
  largestBytes = LARGEST_BODY,
): Promise<ReadBody<T>> {
  const text = await readText(request, largestBytes);
  if (text === null) return { ok: false, refusal: fault(413, 'body-too-large', { largestBytes }) };
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return { ok: false, refusal: fault(400, 'body-not-json') };
  }
  const parsed = schema.safeParse(json);
  if (parsed.success) return { ok: true, value: parsed.data };
  const fields = [...new Set(parsed.error.issues.map((issue) => issue.path.join('.')))];
  return { ok: false, refusal: fault(422, 'fields-not-valid', { fields }) };
}

/** The body as text; null where it is larger. Counts while reading, since a length may be left out or untrue. */
export async function readText(request: Request, largestBytes: number): Promise<string | null> {
  const decoder = new TextDecoder();
  let text = '';
  let size = 0;
  for await (const chunk of request.body ?? []) {
    size += chunk.byteLength;
    if (size > largestBytes) return null;
    text += decoder.decode(chunk, { stream: true });
  }
  return text + decoder.decode();
}
