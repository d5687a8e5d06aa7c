/** A recording as the browser gets it. */

import { environment } from '#lib/config/environment.ts';
import { database } from '#lib/data/database.ts';
import { currentRecordingId, listRecordings, type Recording } from '#lib/data/recordings.ts';
import { arrived } from '#lib/recording/arriving.ts';
import type { RecordingFacts } from '#lib/recording/facts.ts';
import { mayTryAgain, type RecordingFault } from '#lib/recording/fault.ts';

export interface ShownRecording {
  readonly id: string;
  readonly state: Recording['state'];
  readonly name: string;
  readonly sizeBytes: number;
  /** Bytes that are there; all of them once it is no longer `receiving`. */
  readonly arrivedBytes: number;
  readonly step: string | null;
  readonly percent: number;
  readonly fault: RecordingFault | null;
  readonly mayRetry: boolean;
  readonly facts: RecordingFacts | null;
  readonly posterAtMs: number | null;
  readonly loudnessLufs: number | null;
  readonly createdAt: string;
}

/** A lesson's recordings, newest first, and which of them pupils see. */
export interface ShownRecordings {
  readonly current: string | null;
  readonly recordings: readonly ShownRecording[];
}

export async function presentRecordings(lessonId: string): Promise<ShownRecordings> {
  const recordings = await listRecordings(database(), lessonId);
  // Asked after the list: whoever sees that nothing is under way any more also sees the recording that came of it.
  const current = await currentRecordingId(database(), lessonId);
  return { current, recordings: await Promise.all(recordings.map(presentRecording)) };
}

export async function presentRecording(recording: Recording): Promise<ShownRecording> {
  const { state, sizeBytes, fault } = recording;
  const file = state === 'receiving' ? await arrived(environment().BENCHLEAF_FILES, recording.id) : null;
  return {
    id: recording.id,
    state,
    name: recording.name,
    sizeBytes,
    arrivedBytes: state === 'receiving' ? (file?.bytes ?? 0) : sizeBytes,
    step: recording.step,
    percent: recording.percent,
    fault,
    mayRetry: state === 'cancelled' || (state === 'refused' && fault !== null && mayTryAgain(fault)),
    facts: recording.facts,
    posterAtMs: recording.posterAtMs,
    loudnessLufs: recording.loudnessLufs,
    createdAt: recording.createdAt.toISOString(),
  };
}
