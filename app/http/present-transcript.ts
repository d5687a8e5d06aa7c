/** What was made of a transcript file, as the browser gets it. */
import type { BroughtIn } from '#lib/bench/bring-in-transcript.ts';
import type { TranscriptFault } from '#lib/transcript/read-transcript.ts';
import { fault } from './answer-safely.ts';

export const presentBroughtIn = (brought: BroughtIn): Response =>
  Response.json(brought, { headers: { 'cache-control': 'no-store' } });

export function refuseTranscript(why: TranscriptFault | { readonly code: 'not-found' }): Response {
  const { code, ...facts } = why;
  return fault(code === 'not-found' ? 404 : 422, code, facts);
}
