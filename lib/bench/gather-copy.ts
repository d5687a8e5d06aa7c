/** Gathers a lesson as the files of a portable copy: data, recordings and pictures, read only when their turn comes. */
import type { CopyEntry } from '#lib/copies/write-zip.ts';
import type { Database } from '#lib/data/database.ts';
import { findLessonBench } from '#lib/data/lesson-bench-rows.ts';
import { findLessonFiles, type RecordingFiles } from '#lib/data/lesson-files.ts';
import { findDraft, type VersionedDraft } from '#lib/data/lessons.ts';
import { getRevision, listRevisions, type RevisionMark } from '#lib/data/revisions.ts';
import { findTranscriptFile, listTranscriptFiles } from '#lib/data/transcript-files.ts';
import { pageSteps } from '#lib/lesson/page-steps.ts';
import type { Revision } from '#lib/lesson/revision.ts';
import { BENCH_FILE } from '#lib/portable/portable-bench.ts';
import {
  DRAFT_FILE,
  type KeptRecording,
  LESSON_FILE,
  LESSON_SCHEMA_FILE,
  MEDIA_ENDINGS,
  PORTABLE_SCHEMA,
  type PortableLesson,
  portableLesson,
  portableLessonSchema,
  recordingName,
} from '#lib/portable/portable-lesson.ts';
import { type Renaming, renameFiles } from '#lib/portable/rename-files.ts';
import { invariant } from '#lib/result.ts';
import type { Storage } from '#lib/storage/storage.ts';
import { readPreview } from './read-preview.ts';

export interface LessonCopy {
  readonly slug: string;
  /** What its page shows, files named as in the copy: the latest revision, or the draft where nothing is published. */
  readonly shown: Revision;
  readonly isDraft: boolean;
  /** All revisions, newest first. */
  readonly revisions: readonly RevisionMark[];
  readonly entries: readonly CopyEntry[];
}

interface Gathering {
  readonly db: Database;
  readonly storage: Storage;
}

interface Asked {
  readonly workshop: { readonly id: string; readonly name: string; readonly slug: string };
  readonly lessonId: string;
  /** Whether what was not published goes along. */
  readonly withDraft: boolean;
  /** Whether what the workshop keeps about it for itself goes along: for an owner. */
  readonly withBench: boolean;
}

/** Null where there is no such lesson, or nothing of it may go along. */
export async function gatherLesson({ db, storage }: Gathering, asked: Asked): Promise<LessonCopy | null> {
  const { workshop, lessonId, withDraft, withBench } = asked;
  const lesson = await db.lesson.findFirst({
    where: { id: lessonId, workshopId: workshop.id },
    select: { slug: true, recordingId: true, updatedAt: true },
  });
  const marks = await listRevisions(db, lessonId);
  const draft = withDraft ? await findDraft(db, { workshopId: workshop.id, lessonId }) : null;
  if (!lesson || (!draft && marks.length === 0)) return null;
  const kept = withBench ? await findLessonBench(db, lessonId) : null;
  const files = await findLessonFiles(
    db,
    lessonId,
    draft && { recordingId: lesson.recordingId, momentsMs: momentsOf(draft) },
  );
  const naming = namingOf(files);
  const [latest] = marks;
  const shown = latest
    ? await getRevision(db, latest.id)
    : await readPreview(db, { workshop, lessonId, number: 1, at: lesson.updatedAt });
  invariant(shown !== null, 'the lesson is there');
  const renamed = latest ? renameFiles(shown, naming) : previewed(shown, files, naming);
  invariant(renamed !== null, `a revision of lesson ${lessonId} names files that are not its own`);
  const transcripts = draft ? await listTranscriptFiles(db, lessonId) : [];
  const oldestFirst = marks.toReversed();
  const manifest: PortableLesson = portableLesson.parse({
    $schema: LESSON_SCHEMA_FILE,
    schema: PORTABLE_SCHEMA,
    slug: lesson.slug,
    recordings: files.map(keptRecording(naming)),
    current: mediaNameOf(files, draft ? lesson.recordingId : currentOf(shown)),
    revisions: oldestFirst.map(({ number, publishedAt }) => ({
      number,
      publishedAt: publishedAt.toISOString(),
      file: `revisions/${number}.json`,
    })),
    draft: draft && DRAFT_FILE,
    bench: kept && BENCH_FILE,
    transcriptFiles: transcripts.toReversed().map(({ name, format, encoding, losses, createdAt }, index) => ({
      file: `transcripts/${index + 1}`,
      name,
      format,
      encoding,
      losses,
      createdAt: createdAt.toISOString(),
    })),
  } satisfies Record<keyof PortableLesson, unknown>);
  return {
    slug: lesson.slug,
    shown: renamed,
    isDraft: !latest,
    revisions: marks,
    entries: [
      json(LESSON_FILE, () => manifest),
      json(LESSON_SCHEMA_FILE, portableLessonSchema),
      ...oldestFirst.map(({ id, number }) =>
        json(`revisions/${number}.json`, async () => {
          const document = renameFiles(await getRevision(db, id), naming);
          invariant(
            document !== null,
            `revision ${number} of lesson ${lessonId} names files that are not its own`,
          );
          return document;
        }),
      ),
      ...(draft ? [json(DRAFT_FILE, () => ({ content: draft.content, cues: draft.cues }))] : []),
      ...(kept ? [json(BENCH_FILE, () => kept)] : []),
      ...transcripts.toReversed().map(({ id }, index) => ({
        path: `transcripts/${index + 1}`,
        content: async () => (await findTranscriptFile(db, lessonId, id))?.bytes ?? new Uint8Array(),
      })),
      ...files.flatMap((recording) => [
        stored(storage, recording.mediaKey, naming),
        ...recording.pictures.map(({ key }) => stored(storage, key, naming)),
      ]),
    ],
  };
}

const momentsOf = ({ content }: VersionedDraft): readonly number[] =>
  pageSteps(content).flatMap(({ atMs }) => (atMs === null ? [] : [atMs]));

const currentOf = ({ recording }: Revision): string | null => recording?.id ?? null;

/** Of a stored file its place in the copy, of a recording its name there. */
function namingOf(files: readonly RecordingFiles[]): Renaming {
  const ids = new Map(files.map(({ id }, index) => [id, recordingName(index)]));
  const names = new Map(
    files.flatMap(({ mediaKey, mediaType, pictures }, index) => [
      [
        mediaKey,
        `media/${recordingName(index)}.${MEDIA_ENDINGS[mediaType as KeptRecording['mediaType']]}`,
      ] as const,
      ...pictures.map(
        ({ key }) => [key, `stills/${recordingName(index)}/${key.slice(key.lastIndexOf('/') + 1)}`] as const,
      ),
    ]),
  );
  return { recordingId: (id) => ids.get(id) ?? null, file: (key) => names.get(key) ?? null };
}

const mediaNameOf = (files: readonly RecordingFiles[], id: string | null): string | null => {
  const found = files.find((recording) => recording.id === id);
  return found ? namingOf(files).file(found.mediaKey) : null;
};

const keptRecording =
  (naming: Renaming) =>
  ({ name, mediaType, mediaKey, posterKey, posterAtMs, pictures }: RecordingFiles): unknown => ({
    file: naming.file(mediaKey),
    name,
    mediaType,
    poster: posterKey && naming.file(posterKey),
    posterAtMs,
    pictures: pictures.map(({ key, atMs }) => ({ file: naming.file(key), atMs })),
  });

/** A preview names pictures by their moments; those that were taken go along. */
function previewed(preview: Revision, files: readonly RecordingFiles[], naming: Renaming): Revision | null {
  const recording = files.find(({ id }) => id === preview.recording?.id);
  const keys = new Map(recording?.pictures.map(({ atMs, key }) => [atMs, key]));
  const stills = preview.stills.flatMap((still) => {
    const key = keys.get(still.atMs);
    return key === undefined ? [] : [{ ...still, key }];
  });
  return renameFiles({ ...preview, stills }, naming);
}

const json = (path: string, make: () => unknown): CopyEntry => ({
  path,
  content: async () => Buffer.from(`${JSON.stringify(await make(), null, 2)}\n`),
});

const stored = (storage: Storage, key: string, naming: Renaming): CopyEntry => ({
  path: naming.file(key) ?? '',
  content: async () => {
    const end = await storage.size(key);
    if (end === null) throw new Error(`A file of a lesson is gone: ${key}`);
    return storage.read(key, { start: 0, end });
  },
});
