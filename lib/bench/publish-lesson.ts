/**
 * Publishes the next revision of a lesson: exactly the draft that the teacher
 * saw, with its pictures, or nothing. Pictures are taken before anything is
 * written; what is written then is one short transaction. The same request
 * sent again gets the same answer.
 */
import { z } from 'zod';
import type { Queries } from '#lib/data/database.ts';
import { findExplainedTerms } from '#lib/data/glossary.ts';
import { findDraft, type LessonAddress, lockLesson, type VersionedDraft } from '#lib/data/lessons.ts';
import { noteRevisionFiles } from '#lib/data/revision-files.ts';
import { getRevision } from '#lib/data/revisions.ts';
import { writePublishedLines } from '#lib/data/search.ts';
import type { Change } from '#lib/lesson/change.ts';
import type { Content } from '#lib/lesson/content.ts';
import type { Finding } from '#lib/lesson/finding.ts';
import { filesToMake, type MadeFileName } from '#lib/lesson/made-files.ts';
import { missingFrom } from '#lib/lesson/missing.ts';
import { pageSteps } from '#lib/lesson/page-steps.ts';
import { type FrozenRecording, freezeRevision, type Revision } from '#lib/lesson/revision.ts';
import { failed, invariant, ok, type Result } from '#lib/result.ts';
import type { Bench } from './bench.ts';
import { saveDraftIn } from './save-draft.ts';

/** What a browser sends. */
export const publishRequest = z.object({
  /** Made by the browser, once for each wish to publish; becomes the revision's id. */
  requestId: z.uuid(),
  /** Version of the draft that was on the screen. */
  version: z.int().min(1),
});

export interface PublishInput extends LessonAddress, z.infer<typeof publishRequest> {
  readonly userId: string;
  readonly workshop: { readonly name: string; readonly slug: string };
}

/** What publishing needs of recordings. */
export interface Recordings {
  /** The lesson's ready recording as a revision keeps it, or null. */
  readonly current: (lessonId: string) => Promise<FrozenRecording | null>;
  /** Takes a picture, or finds the one that was taken; its storage key, or null where none came. */
  readonly takeStill: (recordingId: string, atMs: number) => Promise<string | null>;
  /** Has files of the revision made later, with the transaction that publishes it. */
  readonly makeLater: (tx: Queries, revisionId: string, names: readonly MadeFileName[]) => Promise<void>;
}

export type PublishFault =
  | { readonly code: 'not-found' }
  /** The draft was changed since the teacher saw it; nothing was published. */
  | { readonly code: 'draft-is-newer'; readonly version: number }
  | { readonly code: 'something-missing'; readonly blocks: readonly Finding[] }
  /** The recording was replaced while its pictures were taken; nothing was published. */
  | { readonly code: 'recording-changed' }
  /** The worker gave no picture for this moment (busy, or not running); nothing was published. */
  | { readonly code: 'picture-not-taken'; readonly atMs: number }
  | { readonly code: 'request-id-taken' };

export interface Published {
  readonly number: number;
  /** The draft's version afterwards: new corrections got their revision's number. */
  readonly version: number;
}

export async function publishLesson(
  bench: Bench,
  recordings: Recordings,
  input: PublishInput,
): Promise<Result<Published, PublishFault>> {
  const draft = await findDraft(bench.db, input);
  if (!draft) return failed({ code: 'not-found' });
  const earlier = await bench.db.revision.findUnique({
    where: { id: input.requestId },
    select: { lessonId: true, number: true },
  });
  if (earlier) return answerAgain(earlier, input, draft);
  if (draft.version !== input.version) return failed({ code: 'draft-is-newer', version: draft.version });

  const recording = await recordings.current(input.lessonId);
  const { blocks } = missingFrom({ content: draft.content, cues: draft.cues, recording });
  if (blocks.length > 0) return failed({ code: 'something-missing', blocks });
  const stills = await takeStills(recordings, recording, draft.content);
  return stills.ok ? write(bench, recordings, input, draft, recording, stills.value) : stills;
}

const answerAgain = (
  earlier: { readonly lessonId: string; readonly number: number },
  input: PublishInput,
  draft: VersionedDraft,
): Result<Published, PublishFault> =>
  earlier.lessonId === input.lessonId
    ? ok({ number: earlier.number, version: draft.version })
    : failed({ code: 'request-id-taken' });

async function takeStills(
  recordings: Recordings,
  recording: FrozenRecording | null,
  content: Content,
): Promise<Result<ReadonlyMap<number, string>, PublishFault>> {
  const keys = new Map<number, string>();
  if (!recording?.hasVideo) return ok(keys);
  const moments = new Set(pageSteps(content).flatMap((step) => (step.atMs === null ? [] : [step.atMs])));
  // One after the other: each is a run of ffmpeg, and ingest may be at work beside it.
  for (const atMs of moments) {
    if (atMs >= recording.durationMs) continue;
    const key = await recordings.takeStill(recording.id, atMs);
    // A revision is for ever: rather none than one that lacks its pictures.
    if (key === null) return failed({ code: 'picture-not-taken', atMs });
    keys.set(atMs, key);
  }
  return ok(keys);
}

const write = (
  bench: Bench,
  recordings: Recordings,
  input: PublishInput,
  draft: VersionedDraft,
  recording: FrozenRecording | null,
  stillKeys: ReadonlyMap<number, string>,
): Promise<Result<Published, PublishFault>> =>
  bench.db.$transaction(async (tx) => {
    // From here on every other save and publication of this lesson waits.
    const lesson = await lockLesson(tx, input);
    if (!lesson) return failed({ code: 'not-found' });
    const repeated = await tx.revision.findUnique({
      where: { id: input.requestId },
      select: { lessonId: true, number: true },
    });
    if (repeated) return answerAgain(repeated, input, { ...draft, version: lesson.version });
    if (lesson.version !== input.version) return failed({ code: 'draft-is-newer', version: lesson.version });
    const { recordingId } = await tx.lesson.findUniqueOrThrow({
      where: { id: input.lessonId },
      select: { recordingId: true },
    });
    if (recordingId !== (recording?.id ?? null)) return failed({ code: 'recording-changed' });

    const last = await tx.revision.findFirst({
      where: { lessonId: input.lessonId },
      select: { id: true, number: true },
      orderBy: { number: 'desc' },
    });
    const number = (last?.number ?? 0) + 1;
    const published: Content['corrections'] = last
      ? (await getRevision(tx, last.id)).content.corrections
      : [];
    const document = freezeRevision({
      number,
      publishedAt: bench.now(),
      workshop: input.workshop,
      content: draft.content,
      cues: draft.cues,
      recording,
      stillKeys,
      terms: await findExplainedTerms(tx, input.workshopId),
      published,
    });
    await tx.revision.create({
      data: {
        id: input.requestId,
        lessonId: input.lessonId,
        number,
        document,
        publishedAt: new Date(document.publishedAt),
        publishedById: input.userId,
      },
    });
    await writePublishedLines(tx, input.lessonId, document);
    const files = filesToMake(document);
    await noteRevisionFiles(tx, input.requestId, files);
    await recordings.makeLater(tx, input.requestId, files);
    return ok({ number, version: await markCorrections(tx, bench, input, draft, document) });
  });

/** Writes into the draft which revision its corrections stand in; they are locked from then on. */
async function markCorrections(
  tx: Parameters<typeof saveDraftIn>[0],
  bench: Bench,
  input: PublishInput,
  draft: VersionedDraft,
  document: Revision,
): Promise<number> {
  const before = new Map(draft.content.corrections.map((item) => [item.id, JSON.stringify(item)]));
  const changes: Change[] = document.content.corrections
    .filter((item) => before.get(item.id) !== JSON.stringify(item))
    .map((item) => ({ kind: 'put', list: 'corrections', item }));
  if (changes.length === 0) return draft.version;
  const saved = await saveDraftIn(tx, bench.now(), {
    workshopId: input.workshopId,
    lessonId: input.lessonId,
    userId: input.userId,
    saveId: input.requestId,
    baseVersion: draft.version,
    changes,
  });
  invariant(saved.ok, 'corrections that were frozen can be saved');
  return saved.value.version;
}
