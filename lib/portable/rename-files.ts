/** A revision's document with other names for its files: stored ones become those of a copy, and back. */
import type { FrozenRecording, Revision } from '#lib/lesson/revision.ts';

export interface Renaming {
  /** @throws or gives null where the name is not known; null is passed on */
  readonly recordingId: (id: string) => string | null;
  readonly file: (name: string) => string | null;
}

/** Null where a name is not known: such a document is not of this lesson. */
export function renameFiles(document: Revision, to: Renaming): Revision | null {
  const recording = document.recording && renamedRecording(document.recording, to);
  if (document.recording && !recording) return null;
  const stills = document.stills.flatMap((still) => {
    const key = to.file(still.key);
    return key === null ? [] : [{ ...still, key }];
  });
  return stills.length === document.stills.length ? { ...document, recording, stills } : null;
}

function renamedRecording(recording: FrozenRecording, to: Renaming): FrozenRecording | null {
  const id = to.recordingId(recording.id);
  const mediaKey = to.file(recording.mediaKey);
  const posterKey = recording.posterKey === null ? null : to.file(recording.posterKey);
  if (id === null || mediaKey === null || (recording.posterKey !== null && posterKey === null)) return null;
  return { ...recording, id, mediaKey, posterKey };
}
