/**
 * Brings the demo lesson in, through the same actions as a teacher's own:
 * recording, transcript, draft, revision 1, the correction, revision 2.
 * Everything has a fixed id, so that a second run goes on where one that was
 * killed left off, and a finished one changes nothing.
 */
import { copyFile, mkdir, stat } from 'node:fs/promises';
import { dirname } from 'node:path';
import { findDraft, type LessonAddress } from '#lib/data/lessons.ts';
import { findRecording } from '#lib/data/recordings.ts';
import { addUpload, moveRecording } from '#lib/data/uploads.ts';
import type { Change } from '#lib/lesson/change.ts';
import { changesBetween } from '#lib/lesson/changes-between.ts';
import { emptyContent } from '#lib/lesson/content.ts';
import { arrivingPath, settleArrived } from '#lib/recording/arriving.ts';
import { ingestRecording } from '#lib/recording/ingest-recording.ts';
import { openRecordingWork, type RecordingWork } from '#lib/recording/recording-work.ts';
import { takeStill } from '#lib/recording/take-still.ts';
import { invariant } from '#lib/result.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { readTranscript } from '#lib/transcript/read-transcript.ts';
import { type Demo, readDemo } from '../../prisma/demo/read-demo.ts';
import type { Bench } from './bench.ts';
import { createDemoWorkshop, DEMO_LESSON_SLUG, DEMO_WORKSHOP_SLUG } from './demo-workshop.ts';
import { frozenRecordingOf } from './frozen-recording.ts';
import { publishLesson, type Recordings } from './publish-lesson.ts';
import { saveDraft } from './save-draft.ts';

const WORKSHOP = {
  id: 'de300000-0000-4000-8000-000000000001',
  slug: DEMO_WORKSHOP_SLUG,
  name: 'Lower Withy Workshop',
  about:
    'An invented workshop with one invented lesson. It came with this program, to show what a finished lesson looks like.',
  currency: 'GBP',
  language: 'en',
} as const;
const LESSON_ID = 'de300000-0000-4000-8000-000000000002';
const RECORDING_ID = 'de300000-0000-4000-8000-000000000003';
const FIRST = {
  save: 'de300000-0000-4000-8000-000000000011',
  publish: 'de300000-0000-4000-8000-000000000012',
};
const AGAIN = {
  save: 'de300000-0000-4000-8000-000000000021',
  publish: 'de300000-0000-4000-8000-000000000022',
};
/** Nobody's account: the demo's teacher is invented too. */
const TEACHER = 'demo-teacher';

/** A recording of a few minutes takes seconds; this is for machines that do much else. */
const LONGEST_MS = 30 * 60_000;

const AT: LessonAddress = { workshopId: WORKSHOP.id, lessonId: LESSON_ID };

/**
 * @returns `already there` where it is complete, or where an owner deleted it:
 * what was thrown away does not come back.
 * @throws where a step fails; running it again goes on from there
 */
export async function loadDemo(
  bench: Bench,
  given: { readonly work?: RecordingWork; readonly signal?: AbortSignal } = {},
): Promise<'loaded' | 'already there'> {
  const { work = await openRecordingWork(), signal = AbortSignal.timeout(LONGEST_MS) } = given;
  const { db } = bench;
  const demo = readDemo();
  if (await db.revision.findUnique({ where: { id: AGAIN.publish }, select: { id: true } }))
    return 'already there';
  if (!(await beginLesson(bench, demo))) return 'already there';
  await bringInRecording(bench, work, demo, signal);
  const cues = demoCues(demo);
  const first = changesBetween(
    emptyContent(demo.first.title, WORKSHOP.language, WORKSHOP.currency),
    demo.first,
  );
  await save(bench, FIRST.save, () => [...first, { kind: 'cues', put: [...cues], remove: [] }]);
  await publish(bench, work, FIRST.publish, signal);
  await save(bench, AGAIN.save, (content) => [
    ...changesBetween(content, demo.corrected(content)),
    { kind: 'cues', put: mended(cues, demo.said), remove: [] },
  ]);
  await publish(bench, work, AGAIN.publish, signal);
  return 'loaded';
}

/** Makes workshop and lesson together. @returns false where the workshop is there and the lesson was deleted. */
async function beginLesson({ db, now, newId }: Bench, demo: Demo): Promise<boolean> {
  const there = await db.workshop.findUnique({ where: { slug: WORKSHOP.slug }, select: { id: true } });
  if (there) return (await db.lesson.count({ where: { id: LESSON_ID } })) > 0;
  const at = now();
  const lesson = {
    id: LESSON_ID,
    slug: DEMO_LESSON_SLUG,
    content: emptyContent(demo.first.title, WORKSHOP.language, WORKSHOP.currency),
    createdAt: at,
    updatedAt: at,
  };
  await createDemoWorkshop(db, { ...WORKSHOP, createdAt: at, lessons: { create: lesson } }, newId());
  return true;
}

async function bringInRecording(
  bench: Bench,
  work: RecordingWork,
  demo: Demo,
  signal: AbortSignal,
): Promise<void> {
  const { db } = bench;
  const find = () => findRecording(db, LESSON_ID, RECORDING_ID);
  if (!(await find())) {
    const { size } = await stat(demo.recordingPath);
    await addUpload(db, {
      recordingId: RECORDING_ID,
      lessonId: LESSON_ID,
      name: 'two-colour-byzantine.mp4',
      sizeBytes: size,
      createdAt: bench.now(),
    });
  }
  if ((await find())?.state === 'receiving') {
    const path = arrivingPath(work.filesFolder, RECORDING_ID);
    await mkdir(dirname(path), { recursive: true });
    await copyFile(demo.recordingPath, path);
    await settleArrived(work.filesFolder, RECORDING_ID);
  }
  // A refusal was the machine's fault (a full disk, no ffmpeg yet), not this file's.
  await moveRecording(db, RECORDING_ID, ['receiving', 'refused', 'cancelled'], 'waiting');
  await ingestRecording(work, { recordingId: RECORDING_ID }, { signal });
  const recording = await find();
  if (recording?.state !== 'ready') {
    const why = recording?.fault?.code ?? recording?.state ?? 'deleted';
    throw new Error(`The demo recording was not taken in: ${why}`);
  }
}

/** The transcript's cues as the reader gives them, their ids the same in every run. */
function demoCues(demo: Demo): readonly Cue[] {
  let count = 0;
  const newId = () => {
    count += 1;
    return `demo-cue-${String(count).padStart(2, '0')}`;
  };
  const read = readTranscript(demo.transcript, { recordingMs: null, newId });
  invariant(read.ok && read.value.kind === 'read', 'the demo transcript can be read');
  return read.value.cues;
}

const mended = (cues: readonly Cue[], said: readonly string[]): Cue[] =>
  cues.flatMap((cue, index) => {
    const text = said[index] ?? cue.text;
    return text === cue.text ? [] : [{ ...cue, text }];
  });

async function save(
  bench: Bench,
  saveId: string,
  changesOn: (content: Parameters<Demo['corrected']>[0]) => readonly Change[],
): Promise<void> {
  if (await bench.db.draftSave.findUnique({ where: { id: saveId }, select: { id: true } })) return;
  const draft = await findDraft(bench.db, AT);
  invariant(draft !== null, 'the demo lesson is there');
  const changes = [...changesOn(draft.content)];
  const saved = await saveDraft(bench, {
    ...AT,
    userId: TEACHER,
    saveId,
    baseVersion: draft.version,
    changes,
  });
  if (!saved.ok) throw new Error(`The demo lesson was not saved: ${JSON.stringify(saved.fault)}`);
}

async function publish(
  bench: Bench,
  work: RecordingWork,
  requestId: string,
  signal: AbortSignal,
): Promise<void> {
  const draft = await findDraft(bench.db, AT);
  invariant(draft !== null, 'the demo lesson is there');
  const input = { ...AT, userId: TEACHER, workshop: WORKSHOP, requestId, version: draft.version };
  const published = await publishLesson(bench, recordingsOf(work, signal), input);
  if (!published.ok) throw new Error(`The demo lesson was not published: ${JSON.stringify(published.fault)}`);
}

const recordingsOf = (work: RecordingWork, signal: AbortSignal): Recordings => ({
  current: (lessonId) => frozenRecordingOf(work.db, lessonId),
  takeStill: (recordingId, atMs) => takeStill(work, { recordingId, atMs }, signal),
  // Whoever calls has a queue and sees to it; else the next worker that starts does.
  makeLater: async () => {},
});
