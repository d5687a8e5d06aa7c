/**
 * Compares the sound of a lesson's recording with that of one that may take
 * its place, or of another lesson whose transcript may be placed on it, and writes down what was kept, cut, put in and moved. May be
 * killed at any moment: the next attempt begins anew.
 */
import { setImmediate } from 'node:timers/promises';
import {
  type Comparison,
  failComparison,
  finishComparison,
  noteComparing,
  takeComparison,
} from '#lib/data/comparisons.ts';
import { readyRecording } from '#lib/data/recordings.ts';
import { compareSound } from '#lib/retiming/compare-sound.ts';
import { type EditList, editListOf } from '#lib/retiming/edit-list.ts';
import { type RecordingWork, withFolder } from './recording-work.ts';
import { extractSound, openSoundFile } from './sound-file.ts';

/** How often progress is written, ms. */
const PROGRESS_MS = 700;

export async function compareRecordings(
  work: RecordingWork,
  { comparisonId }: { readonly comparisonId: string },
  { signal, isLast }: { readonly signal: AbortSignal; readonly isLast: boolean },
): Promise<void> {
  const comparison = await takeComparison(work.db, comparisonId);
  if (!comparison) return;
  try {
    const list = await compare(work, comparison, signal);
    if (list === 'no-sound') await failComparison(work.db, comparisonId);
    else if (list !== 'decided') await finishComparison(work.db, comparisonId, list);
  } catch (error) {
    if (isLast && !signal.aborted) await failComparison(work.db, comparisonId);
    throw error;
  }
}

async function compare(
  work: RecordingWork,
  comparison: Comparison,
  signal: AbortSignal,
): Promise<EditList | 'no-sound' | 'decided'> {
  const { ffmpeg } = work;
  if (!ffmpeg) throw new Error('ffmpeg is missing: recordings cannot be compared');
  return withFolder(work, async (folder) => {
    const paths: string[] = [];
    const { lessonId, fromLessonId, oldRecordingId, newRecordingId } = comparison;
    for (const [name, of, id] of [
      ['old', fromLessonId ?? lessonId, oldRecordingId],
      ['new', lessonId, newRecordingId],
    ] as const) {
      const recording = await readyRecording(work.db, of, id);
      if (!recording) return 'no-sound';
      const path = await work.storage.lend(recording.playableKey, folder, `${name}-input`);
      const sound = await extractSound(ffmpeg, { path, folder, name, signal });
      if (!sound) return 'no-sound';
      paths.push(sound);
    }
    return listen(work, comparison.id, paths, signal);
  });
}

async function listen(
  work: RecordingWork,
  id: string,
  [oldPath = '', newPath = '']: readonly string[],
  signal: AbortSignal,
): Promise<EditList | 'decided'> {
  const old = openSoundFile(oldPath);
  const heard = openSoundFile(newPath);
  try {
    const turns = compareSound(old, heard);
    let writtenAt = 0;
    for (;;) {
      const turn = turns.next();
      if (turn.done) return editListOf(turn.value);
      signal.throwIfAborted();
      // The worker must stay reachable: it shows every few seconds that it lives.
      await setImmediate();
      if (performance.now() - writtenAt < PROGRESS_MS) continue;
      writtenAt = performance.now();
      const { at, done } = turn.value;
      if (!(await noteComparing(work.db, id, { step: at, percent: Math.round(done * 100) })))
        return 'decided';
    }
  } finally {
    old.close();
    heard.close();
  }
}
