/** Rows of a lesson that came whole, from a portable copy. */
import type { Content } from '#lib/lesson/content.ts';
import type { Revision } from '#lib/lesson/revision.ts';
import type { RecordingFacts } from '#lib/recording/facts.ts';
import type { Span } from '#lib/time/time.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import type { Loss } from '#lib/transcript/loss.ts';
import type { Queries } from './database.ts';

interface WholeRecording {
  readonly id: string;
  readonly kept: { readonly name: string; readonly posterAtMs: number | null };
  readonly sizeBytes: number;
  readonly sha256: string;
  readonly mediaKey: string;
  readonly posterKey: string | null;
  readonly peaksKey: string | null;
  readonly examined: {
    readonly facts: RecordingFacts;
    readonly sound: { readonly pauses: readonly Span[] } | null;
    readonly loudnessLufs: number | null;
  };
  readonly pictures: readonly { readonly key: string; readonly atMs: number | null }[];
}

export interface WholeLesson {
  readonly id: string;
  readonly workshopId: string;
  readonly slug: string;
  readonly content: Content;
  readonly cues: readonly Cue[];
  readonly currentId: string | null;
  readonly recordings: readonly WholeRecording[];
  readonly now: Date;
}

/** The lesson with its cues and its recordings, in the order in which they are given. */
export async function addLessonRow(tx: Queries, lesson: WholeLesson): Promise<void> {
  const { id, now } = lesson;
  await tx.lesson.create({
    data: {
      id,
      workshopId: lesson.workshopId,
      slug: lesson.slug,
      content: lesson.content,
      recordingId: lesson.currentId,
      createdAt: now,
      updatedAt: now,
    },
  });
  await tx.cue.createMany({
    data: lesson.cues.map(({ timing, ...cue }) => ({ ...cue, lessonId: id, timing: timing ?? null })),
  });
  for (const [index, recording] of lesson.recordings.entries()) {
    const { facts, sound, loudnessLufs } = recording.examined;
    await tx.recording.create({
      data: {
        id: recording.id,
        lessonId: id,
        state: 'ready',
        originalName: recording.kept.name,
        sizeBytes: recording.sizeBytes,
        sha256: recording.sha256,
        percent: 100,
        facts,
        // What a page plays is all that a copy holds; it stands for the original too.
        originalKey: recording.mediaKey,
        playableKey: recording.mediaKey,
        posterKey: recording.posterKey,
        posterAtMs: recording.kept.posterAtMs,
        peaksKey: recording.peaksKey,
        pauses: (sound?.pauses ?? []).map(({ startMs, endMs }) => [startMs, endMs]),
        loudnessLufs,
        createdAt: new Date(now.getTime() + index),
        stills: {
          create: recording.pictures.flatMap(({ key, atMs }) =>
            atMs === null ? [] : [{ atMs, storageKey: key }],
          ),
        },
      },
    });
  }
}

export async function addRevisionRow(
  tx: Queries,
  {
    id,
    lessonId,
    document,
    publishedById,
  }: {
    readonly id: string;
    readonly lessonId: string;
    readonly document: Revision;
    readonly publishedById: string;
  },
): Promise<void> {
  const { number, publishedAt } = document;
  await tx.revision.create({
    data: { id, lessonId, number, document, publishedAt: new Date(publishedAt), publishedById },
  });
}

export async function addTranscriptRow(
  tx: Queries,
  file: {
    readonly id: string;
    readonly lessonId: string;
    readonly name: string;
    readonly bytes: Uint8Array;
    readonly format: string;
    readonly encoding: string;
    readonly losses: readonly Loss[];
    readonly createdAt: string;
  },
): Promise<void> {
  await tx.transcriptFile.create({
    data: {
      id: file.id,
      lessonId: file.lessonId,
      name: file.name,
      bytes: Uint8Array.from(file.bytes),
      format: file.format,
      encoding: file.encoding,
      losses: [...file.losses],
      createdAt: new Date(file.createdAt),
    },
  });
}
