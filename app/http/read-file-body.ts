/** Reads a route's body that is a file as it stands: its bytes, and its name from a header. */
import { fault } from './answer-safely.ts';

/** The header that carries the file's name, percent-encoded since headers hold ASCII alone. */
const FILE_NAME_HEADER = 'x-file-name';

export type ReadFileBody =
  | { readonly ok: true; readonly name: string; readonly bytes: Uint8Array }
  | { readonly ok: false; readonly refusal: Response };

/** Counts while reading, since a length may be left out or untrue. Meant for small files: all of it is held. */
export async function readFileBody(request: Request, largestBytes: number): Promise<ReadFileBody> {
  const chunks: Uint8Array[] = [];
  let size = 0;
  for await (const chunk of request.body ?? []) {
    size += chunk.byteLength;
    if (size > largestBytes) return { ok: false, refusal: fault(413, 'body-too-large', { largestBytes }) };
    chunks.push(chunk);
  }
  return { ok: true, name: nameFrom(request.headers), bytes: Buffer.concat(chunks) };
}

/** The name without folders and control characters; only ever shown, never a path. */
function nameFrom(headers: Headers): string {
  const sent = headers.get(FILE_NAME_HEADER) ?? '';
  let name = sent;
  try {
    name = decodeURIComponent(sent);
  } catch {
    // A name that is not percent-encoded stands as it was sent.
  }
  const last = name.split(/[/\\]/).at(-1) ?? '';
  return last.replace(/\p{C}/gu, '').trim().slice(0, 200) || 'transcript';
}
