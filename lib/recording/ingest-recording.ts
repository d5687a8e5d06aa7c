/**
 * Makes of an uploaded file what a lesson needs. Can be ended at any moment:
 * all that is half done lies in a folder of the attempt, what is done is
 * stored under keys of the attempt, and one short transaction shows it.
 */
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { join } from 'node:path';
import {
  type Claim,
  claimRecording,
  finishRecording,
  type Ingested,
  noteOriginal,
  noteProgress,
  refuseRecording,
  releaseRecording,
} from '#lib/data/ingest-state.ts';
import { failed, ok, type Result } from '#lib/result.ts';
import { recordingKey } from '#lib/storage/storage-key.ts';
import { type Examined, type ExamineStep, examine } from './examine.ts';
import type { RecordingFault } from './fault.ts';
import type { Ffmpeg } from './find-ffmpeg.ts';
import { type RecordingWork, uploadsFolder, withFolder } from './recording-work.ts';
import { takePicture } from './take-picture.ts';

/** The steps that a person sees. */
export type IngestStep = ExamineStep | 'poster' | 'store';

/** How often progress is written at most, ms. */
const PROGRESS_MS = 500;
/** After so many failures that are nobody's file's fault a person is asked; killed attempts do not count. */
const MOST_FAILURES = 3;

/** The recording was cancelled, or another attempt has it: leave everything to that. */
class Superseded extends Error {}

/**
 * Ingests a recording that waits, or one whose last attempt was killed. Every
 * end that concerns the file is written to the recording; what is thrown is
 * for the queue to try again.
 */
export async function ingestRecording(
  work: RecordingWork,
  { recordingId }: { readonly recordingId: string },
  { signal }: { readonly signal: AbortSignal },
): Promise<void> {
  const claim: Claim = { recordingId, attempt: work.newId() };
  const row = await claimRecording(work.db, claim);
  if (!row) return;
  const progress = reportProgress(work, claim);
  const stopping = AbortSignal.any([signal, progress.superseded]);
  try {
    const made = await withFolder(work, (folder) =>
      ingest(work, claim, { ...row, folder, signal: stopping, onStep: progress.report }),
    );
    await progress.settle();
    if (made.ok) await finishRecording(work.db, claim, made.value);
    else await refuseRecording(work.db, claim, made.fault);
  } catch (error) {
    await progress.settle();
    if (progress.superseded.aborted) return;
    if (isDiskFull(error)) return await refuseRecording(work.db, claim, { code: 'disk-full' });
    if (!signal.aborted && row.failures + 1 >= MOST_FAILURES) {
      await refuseRecording(work.db, claim, { code: 'gave-up' });
    } else {
      await releaseRecording(work.db, claim, !signal.aborted);
    }
    throw error;
  }
}

interface Attempt {
  readonly sizeBytes: number;
  readonly originalKey: string | null;
  readonly folder: string;
  readonly signal: AbortSignal;
  readonly onStep: (step: IngestStep, percent: number) => void;
}

async function ingest(
  work: RecordingWork,
  claim: Claim,
  attempt: Attempt,
): Promise<Result<Ingested, RecordingFault>> {
  const { folder, signal, onStep } = attempt;
  const { ffmpeg } = work;
  if (!ffmpeg) return failed({ code: 'converter-missing' });
  const originalKey = await takeOver(work, claim, attempt);
  const path = await work.storage.lend(originalKey, folder, 'input');
  const { size } = await stat(path);
  if (size !== attempt.sizeBytes) {
    return failed({ code: 'incomplete', sizeBytes: size, announcedBytes: attempt.sizeBytes });
  }
  // Both read the file at about the same pace: the second finds it in memory.
  const ended = new AbortController();
  const hashing = hashFile(path, AbortSignal.any([signal, ended.signal]));
  hashing.catch(() => {});
  try {
    const examined = await examine(ffmpeg, { path, folder, signal, onStep });
    if (!examined.ok) return examined;
    onStep('poster', 0);
    const poster = await storePoster(work, ffmpeg, claim, attempt, examined.value);
    onStep('store', 0);
    const { facts, playablePath, ending, sound, loudnessLufs } = examined.value;
    const part = claim.attempt.slice(0, 8);
    let playableKey = originalKey;
    if (facts.playable.made !== 'original') {
      playableKey = recordingKey(claim.recordingId, `playable-${part}.${ending}`);
      await work.storage.adopt(playableKey, playablePath);
    }
    const peaksKey = sound && recordingKey(claim.recordingId, `peaks-${part}.bin`);
    if (sound && peaksKey) await work.storage.put(peaksKey, sound.peaks);
    const sha256 = await hashing;
    return ok({
      facts,
      sha256,
      playableKey,
      poster,
      peaksKey,
      pauses: sound?.pauses ?? [],
      loudnessLufs,
    });
  } finally {
    ended.abort();
  }
}

/** Moves the upload under its key; an attempt that was killed may have done so already. */
async function takeOver(work: RecordingWork, claim: Claim, { originalKey }: Attempt): Promise<string> {
  if (originalKey) return originalKey;
  const key = recordingKey(claim.recordingId, 'original');
  if ((await work.storage.size(key)) === null) {
    await work.storage.adopt(key, join(uploadsFolder(work.filesFolder), claim.recordingId));
  }
  await noteOriginal(work.db, claim, key);
  return key;
}

async function storePoster(
  work: RecordingWork,
  ffmpeg: Ffmpeg,
  { recordingId }: Claim,
  { folder, signal }: Attempt,
  { facts, playablePath }: Examined,
): Promise<Ingested['poster']> {
  if (!facts.video) return null;
  const atMs = posterMoment(facts.durationMs);
  const bytes = await takePicture(ffmpeg, { path: playablePath, atMs, folder, signal });
  if (!bytes) return null;
  const key = recordingKey(recordingId, `still-${atMs}.jpg`);
  await work.storage.put(key, bytes);
  return { key, atMs };
}

/** A tenth in, at most 15 s: past a black beginning, before the matter; the teacher may choose another. */
const posterMoment = (durationMs: number): number => Math.min(15_000, Math.floor(durationMs / 10));

async function hashFile(path: string, signal: AbortSignal): Promise<string> {
  const hash = createHash('sha256');
  for await (const chunk of createReadStream(path, { highWaterMark: 1024 * 1024, signal }))
    hash.update(chunk);
  return hash.digest('hex');
}

/**
 * Writes progress at most twice a second, one write at a time. A write that
 * finds the recording taken away (cancelled, deleted, or given to another
 * attempt) ends this attempt.
 */
function reportProgress(work: RecordingWork, claim: Claim) {
  const taken = new AbortController();
  let next: { step: IngestStep; percent: number } | null = null;
  let writing = Promise.resolve();
  let writtenAt = 0;
  let isWriting = false;
  const write = async (): Promise<void> => {
    while (next && !taken.signal.aborted) {
      const progress = next;
      next = null;
      writtenAt = performance.now();
      if (!(await noteProgress(work.db, claim, progress))) taken.abort(new Superseded());
    }
  };
  return {
    superseded: taken.signal,
    report(step: IngestStep, percent: number): void {
      next = { step, percent };
      if (isWriting || performance.now() - writtenAt < PROGRESS_MS) return;
      isWriting = true;
      // A write that fails is not worth the attempt: the next one may go through.
      writing = write()
        .catch(() => {})
        .finally(() => {
          isWriting = false;
        });
    },
    /** Waits for the write under way; afterwards none is begun. */
    async settle(): Promise<void> {
      next = null;
      await writing;
    },
  };
}

const isDiskFull = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && (error.code === 'ENOSPC' || error.code === 'EDQUOT');
