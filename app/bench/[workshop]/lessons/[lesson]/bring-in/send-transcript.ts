/** Talks to the routes of transcript files. */
import { z } from 'zod';
import { cue } from '#lib/transcript/cue.ts';
import { TRANSCRIPT_FORMATS } from '#lib/transcript/detect-format.ts';
import { isEncoding } from '#lib/transcript/encoding.ts';
import { loss } from '#lib/transcript/loss.ts';

const encoding = z.string().refine(isEncoding);
const file = z.object({ fileId: z.string(), name: z.string() });

const understood = file.extend({
  kind: z.literal('read'),
  format: z.enum(TRANSCRIPT_FORMATS),
  encoding,
  cues: z.array(cue).min(1),
  losses: z.array(loss),
});
export type Understood = z.infer<typeof understood>;

const question = file.extend({
  kind: z.literal('which-encoding'),
  candidates: z.array(z.object({ encoding, label: z.string(), sample: z.string() })),
});
export type EncodingQuestion = z.infer<typeof question>;

const refusal = z.object({
  fault: z.looseObject({
    code: z.string(),
    looksLike: z.enum(['pdf', 'word-processor', 'picture-or-recording', 'markup']).optional(),
    cues: z.number().optional(),
    most: z.number().optional(),
    incident: z.string().optional(),
    losses: z.array(loss).optional(),
  }),
});

export type TranscriptAnswer =
  | Understood
  | EncodingQuestion
  | { readonly kind: 'refused'; readonly name: string; readonly fault: z.infer<typeof refusal>['fault'] };

/** Sends a file; its bytes go as they are. */
export const sendTranscript = (address: string, sent: Blob, name: string): Promise<TranscriptAnswer> =>
  ask(address, name, {
    method: 'POST',
    headers: { 'content-type': 'application/octet-stream', 'x-file-name': encodeURIComponent(name) },
    body: sent,
  });

/** Has a kept file read again, now that the recording, or the program, may know more. */
export const readAgain = (
  address: string,
  { fileId, name }: { readonly fileId: string; readonly name: string },
): Promise<TranscriptAnswer> =>
  ask(`${address}/${encodeURIComponent(fileId)}`, name, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: '{}',
  });

/** Has a kept file read again in an encoding. */
export const chooseEncoding = (
  address: string,
  { fileId, name }: { readonly fileId: string; readonly name: string },
  chosen: string,
): Promise<TranscriptAnswer> =>
  ask(`${address}/${encodeURIComponent(fileId)}`, name, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ encoding: chosen }),
  });

async function ask(address: string, name: string, request: RequestInit): Promise<TranscriptAnswer> {
  try {
    const answer = await fetch(address, request);
    const json: unknown = await answer.json();
    if (answer.ok) return z.discriminatedUnion('kind', [understood, question]).parse(json);
    return { kind: 'refused', name, fault: refusal.parse(json).fault };
  } catch {
    return { kind: 'refused', name, fault: { code: 'unreachable' } };
  }
}
