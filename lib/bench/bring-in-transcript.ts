/**
 * Brings a transcript file in: keeps it whole, reads it, and answers what was
 * understood. The lesson's draft is not touched: the teacher looks at the
 * answer and takes the cues as a change of the draft, which can be undone.
 */
import { currentRecording } from '#lib/data/recordings.ts';
import { addTranscriptFile, findTranscriptFile, noteTranscriptReading } from '#lib/data/transcript-files.ts';
import { failed, ok, type Result } from '#lib/result.ts';
import type { Encoding } from '#lib/transcript/encoding.ts';
import {
  type ReadTranscript,
  readTranscript,
  type TranscriptFault,
  type WhichEncoding,
} from '#lib/transcript/read-transcript.ts';
import type { Bench } from './bench.ts';

/** What was made of a file; it goes by this id from now on. */
export type BroughtIn = { readonly fileId: string; readonly name: string } & (ReadTranscript | WhichEncoding);

export interface BringInTranscript {
  readonly lessonId: string;
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Keeps a new file and reads it. A file that is no transcript is kept too, except where it is not text at all. */
export async function bringInTranscript(
  bench: Bench,
  { lessonId, name, bytes }: BringInTranscript,
): Promise<Result<BroughtIn, TranscriptFault>> {
  const id = bench.newId();
  const read = readTranscript(bytes, { ...(await soundOf(bench, lessonId)), newId: bench.newId });
  const nothingToKeep =
    !read.ok && (read.fault.code === 'transcript-not-text' || read.fault.code === 'transcript-empty');
  if (nothingToKeep) return read;
  await addTranscriptFile(bench.db, { id, lessonId, name, bytes, at: bench.now() });
  return noteReading(bench, { id, name }, read);
}

/** Reads a kept file again, in the encoding that was chosen for it. */
export async function readTranscriptAgain(
  bench: Bench,
  { lessonId, fileId, encoding }: { lessonId: string; fileId: string; encoding?: Encoding | undefined },
): Promise<Result<BroughtIn, TranscriptFault | { readonly code: 'not-found' }>> {
  const file = await findTranscriptFile(bench.db, lessonId, fileId);
  if (!file) return failed({ code: 'not-found' });
  const sound = await soundOf(bench, lessonId);
  const read = readTranscript(file.bytes, { encoding, ...sound, newId: bench.newId });
  return noteReading(bench, file, read);
}

async function noteReading(
  bench: Bench,
  file: { readonly id: string; readonly name: string },
  read: Result<ReadTranscript | WhichEncoding, TranscriptFault>,
): Promise<Result<BroughtIn, TranscriptFault>> {
  if (!read.ok) return read;
  if (read.value.kind === 'read') {
    const { format, encoding, losses } = read.value;
    await noteTranscriptReading(bench.db, file.id, { format, encoding, losses });
  }
  return ok({ fileId: file.id, name: file.name, ...read.value });
}

/** What the lesson's recording tells of when is spoken. */
async function soundOf({ db }: Bench, lessonId: string) {
  const recording = await currentRecording(db, lessonId);
  return { recordingMs: recording?.durationMs ?? null, pauses: recording?.pauses };
}
