/** A lesson's draft as files in open formats, for use elsewhere before anything is published. */
import { writeChaptersJson } from '#lib/chapters/chapters-json.ts';
import { writeChaptersWebVtt } from '#lib/chapters/chapters-webvtt.ts';
import { writeFfmetadata } from '#lib/chapters/ffmetadata.ts';
import { findDraft, type LessonAddress } from '#lib/data/lessons.ts';
import { currentRecording } from '#lib/data/recordings.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { writeSrt } from '#lib/transcript/srt-write.ts';
import { writeStampedText } from '#lib/transcript/stamped-text-write.ts';
import { writeTtml } from '#lib/transcript/ttml-write.ts';
import { writeWebVtt } from '#lib/transcript/webvtt-write.ts';
import type { Bench } from './bench.ts';

/** Names of the files, with their media types. */
export const DRAFT_EXPORTS = {
  'captions.vtt': 'text/vtt',
  'captions.srt': 'application/x-subrip',
  'captions.ttml': 'application/ttml+xml',
  'chapters.vtt': 'text/vtt',
  'chapters.json': 'application/json+chapters',
  'chapters.ffmetadata': 'text/plain',
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
    case 'captions.ttml':
      return writeTtml(draft.cues, draft.content.language);
    case 'transcript.txt':
      return writeStampedText(draft.cues);
    case 'chapters.vtt':
      return writeChaptersWebVtt(draft.content.chapters, await endOf(db, at, draft.cues));
    case 'chapters.json':
      return writeChaptersJson(draft.content.chapters, draft.content.title);
    case 'chapters.ffmetadata':
      return writeFfmetadata(draft.content.chapters, draft.content.title, await endOf(db, at, draft.cues));
  }
}

/** Where the last chapter ends: with the recording, or, before there is one, with the last word. */
async function endOf(db: Bench['db'], { lessonId }: LessonAddress, cues: readonly Cue[]): Promise<number> {
  const recording = await currentRecording(db, lessonId);
  return recording?.durationMs ?? cues.at(-1)?.endMs ?? 0;
}
