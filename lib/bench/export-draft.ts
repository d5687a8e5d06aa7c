/** A lesson's draft as files in open formats, for use elsewhere before anything is published. */
import { writeChaptersWebVtt } from '#lib/chapters/chapters-webvtt.ts';
import { findDraft, type LessonAddress } from '#lib/data/lessons.ts';
import { currentRecording } from '#lib/data/recordings.ts';
import { writeSrt } from '#lib/transcript/srt-write.ts';
import { writeStampedText } from '#lib/transcript/stamped-text-write.ts';
import { writeWebVtt } from '#lib/transcript/webvtt-write.ts';
import type { Bench } from './bench.ts';

/** Names of the files, with their media types. */
export const DRAFT_EXPORTS = {
  'captions.vtt': 'text/vtt',
  'captions.srt': 'application/x-subrip',
  'chapters.vtt': 'text/vtt',
  'transcript.txt': 'text/plain',
} as const;
export type DraftExport = keyof typeof DRAFT_EXPORTS;

export const isDraftExport = (name: string): name is DraftExport => Object.hasOwn(DRAFT_EXPORTS, name);

/** One of the files as text; null where there is no such lesson. */
export async function exportDraft(
  { db }: Pick<Bench, 'db'>,
  at: LessonAddress,
  name: DraftExport,
): Promise<string | null> {
  const draft = await findDraft(db, at);
  if (!draft) return null;
  switch (name) {
    case 'captions.vtt':
      return writeWebVtt(draft.cues);
    case 'captions.srt':
      return writeSrt(draft.cues);
    case 'transcript.txt':
      return writeStampedText(draft.cues);
    case 'chapters.vtt': {
      const recording = await currentRecording(db, at.lessonId);
      const lastWordMs = Math.max(0, ...draft.cues.slice(-1).map((cue) => cue.endMs));
      return writeChaptersWebVtt(draft.content.chapters, recording?.durationMs ?? lastWordMs);
    }
  }
}
