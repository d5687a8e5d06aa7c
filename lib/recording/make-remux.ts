/** Makes the copy of a revision's recording that carries captions and chapters inside. */
import { createHash } from 'node:crypto';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { chaptersInOrder } from '#lib/chapters/chapter-rules.ts';
import { writeFfmetadata } from '#lib/chapters/ffmetadata.ts';
import type { Revision } from '#lib/lesson/revision.ts';
import { recordingKey } from '#lib/storage/storage-key.ts';
import { writeSrt } from '#lib/transcript/srt-write.ts';
import { writeTimedTextTrack } from '#lib/transcript/timed-text-track.ts';
import type { Ffmpeg } from './find-ffmpeg.ts';
import { languageCode, type RemuxEnding, remuxArguments } from './plan-remux.ts';
import { runFfmpeg } from './run-ffmpeg.ts';

/** Copying takes as long as the disk does. */
const LONGEST_MS = 3_600_000;

/** What goes into a copy beside sound and picture. */
export interface RemuxParts {
  readonly captions: Uint8Array | null;
  readonly chapters: string;
  readonly language: string | null;
}

type Source = Pick<Revision, 'content' | 'cues'> & { readonly recording: NonNullable<Revision['recording']> };

export function remuxParts(ending: RemuxEnding, { content, cues, recording }: Source): RemuxParts {
  const captions = ending === 'mp4' ? writeTimedTextTrack(cues) : new TextEncoder().encode(writeSrt(cues));
  return {
    captions: cues.some(({ text }) => text.trim() !== '') ? captions : null,
    chapters: writeFfmetadata(
      ending === 'mp4' ? fromTheStart(content) : content.chapters,
      content.title,
      recording.durationMs,
    ),
    language: languageCode(content.language),
  };
}

/** Chapters of an MP4 follow each other from 0 on: what comes before the first gets the lesson's name. */
function fromTheStart({ chapters, title }: Source['content']): Source['content']['chapters'] {
  const first = chaptersInOrder(chapters)[0];
  return first && first.startMs > 0
    ? [{ id: 'before-the-first', kind: 'opening', title, startMs: 0 }, ...chapters]
    : chapters;
}

/** Where a copy is kept. Revisions with the same recording, captions and chapters share one. */
export function remuxKey(ending: RemuxEnding, recording: Source['recording'], parts: RemuxParts): string {
  const hash = createHash('sha256')
    .update(JSON.stringify([recording.mediaKey, parts.chapters, parts.language]))
    .update(parts.captions ?? '')
    .digest('hex');
  return recordingKey(recording.id, `copy-${hash.slice(0, 32)}.${ending}`);
}

export interface RemuxRun {
  readonly recording: Pick<Source['recording'], 'mediaType' | 'durationMs'>;
  readonly parts: RemuxParts;
  /** Absolute path of the recording. */
  readonly path: string;
  /** A folder of its own, in which the copy stands afterwards. */
  readonly folder: string;
  readonly signal: AbortSignal;
  /** 0 to 100. */
  readonly onPercent?: (percent: number) => void;
}

/**
 * @returns the copy's absolute path
 * @throws where ffmpeg does not come to a good end
 */
export async function makeRemux(ffmpeg: Ffmpeg, ending: RemuxEnding, run: RemuxRun): Promise<string> {
  const { parts, recording, folder } = run;
  const captions = parts.captions && join(folder, ending === 'mp4' ? 'captions.mp4' : 'captions.srt');
  if (captions && parts.captions) await writeFile(captions, parts.captions);
  const chapters = join(folder, 'chapters.ffmetadata');
  await writeFile(chapters, parts.chapters);
  const output = join(folder, `copy.${ending}`);
  const inputs = {
    recording: run.path,
    recordingType: recording.mediaType,
    captions,
    chapters,
    language: parts.language,
  };
  const { end, report } = await runFfmpeg(ffmpeg, {
    args: remuxArguments(ending, inputs, output),
    folder,
    signal: run.signal,
    limitMs: LONGEST_MS,
    onProgress: (doneMs) =>
      run.onPercent?.(Math.min(99, Math.round((100 * doneMs) / Math.max(1, recording.durationMs)))),
  });
  if (end !== 'done') throw new Error(`ffmpeg made no copy (${end}): ${report.slice(-2_000)}`);
  return output;
}
