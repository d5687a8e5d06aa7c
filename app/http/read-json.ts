/** Reads a request's JSON body with a limit, so that nobody can fill the memory. */
import type { z } from 'zod';
import { fault } from './with-member.ts';

/** A body that fits the schema, or the refusal to answer with. */
export type Body<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly refusal: Response };

/**
 * @param mostBytes larger bodies are refused with 413 as soon as the limit is passed.
 * A body that is no JSON, or does not fit, is refused with 422 and every
 * fault's place.
 */
export async function readJson<T>(
  request: Request,
  schema: z.ZodType<T>,
  { mostBytes = 1_000_000 }: { mostBytes?: number } = {},
): Promise<Body<T>> {
  const text = await readText(request, mostBytes);
  if (text === null) return { ok: false, refusal: fault(413, 'body-too-large', { mostBytes }) };
  const parsed = schema.safeParse(parseOrNull(text));
  if (parsed.success) return { ok: true, value: parsed.data };
  const faults = parsed.error.issues.map((issue) => ({
    code: 'change-not-valid',
    where: issue.path.join('/'),
    message: issue.message,
  }));
  return { ok: false, refusal: fault(422, 'changes-not-valid', { faults }) };
}

async function readText(request: Request, mostBytes: number): Promise<string | null> {
  if (!request.body) return '';
  const chunks: Uint8Array[] = [];
  let size = 0;
  for await (const chunk of request.body) {
    size += chunk.byteLength;
    if (size > mostBytes) return null;
    chunks.push(chunk);
  }
  return Buffer.concat(chunks).toString('utf8');
}

function parseOrNull(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
