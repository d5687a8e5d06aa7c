/** Files that the worker makes of a revision: noted with it, made once, found again after a kill, gone with the lesson. */
import { randomUUID } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Bench } from '#lib/bench/bench.ts';
import { deleteLesson } from '#lib/bench/delete-lesson.ts';
import { frozenRecordingOf } from '#lib/bench/frozen-recording.ts';
import { publishLesson, type Recordings } from '#lib/bench/publish-lesson.ts';
import { queueRevisionFiles } from '#lib/bench/queue-revision-files.ts';
import { saveDraft } from '#lib/bench/save-draft.ts';
import { retryRevisionFile, revisionFile, revisionFiles } from '#lib/data/revision-files.ts';
import type { MadeFileName } from '#lib/lesson/made-files.ts';
import { makeRevisionFile } from '#lib/recording/make-revision-file.ts';
import type { RecordingWork } from '#lib/recording/recording-work.ts';
import { openLocalDisk } from '#lib/storage/local-disk.ts';
import { aContent, aTranscript } from '#tests/support/a-content.ts';
import { aLesson, type LessonRows } from '#tests/support/a-lesson.ts';
import { aReadyRecording } from '#tests/support/a-ready-recording.ts';
import { testFfmpeg } from '#tests/support/clips.ts';
import { testDatabase } from '#tests/support/database.ts';

const { db } = await testDatabase();
const bench: Bench = { db, now: () => new Date('2026-05-01T08:00:00Z'), newId: randomUUID };
let work: RecordingWork;
let rows: LessonRows;
beforeAll(async () => {
  const filesFolder = await mkdtemp(join(tmpdir(), 'revision-files-'));
  afterAll(() => rm(filesFolder, { recursive: true, force: true }));
  const storage = openLocalDisk(filesFolder);
  work = { db, storage, ffmpeg: await testFfmpeg(), filesFolder, newId: randomUUID };
  rows = await aLesson(db, { content: aContent() });
  await aReadyRecording(db, filesFolder, rows.lessonId, 90_000);
  await db.cue.createMany({
    data: aTranscript.map((cue) => ({ ...cue, timing: null, lessonId: rows.lessonId })),
  });
});

const queued: string[] = [];
const recordings: Recordings = {
  current: (lessonId) => frozenRecordingOf(db, lessonId),
  takeStill: async () => 'recordings/r/still-1.jpg',
  makeLater: async (_tx, _id, names) => void queued.push(...names),
};
const attempt = { signal: AbortSignal.timeout(60_000), isLast: false };

async function publish(version: number): Promise<string> {
  const requestId = randomUUID();
  const workshop = { name: 'Kettle Row Rings', slug: `w-${rows.workshopId}` };
  const published = await publishLesson(bench, recordings, { ...rows, requestId, version, workshop });
  expect(published.ok).toBe(true);
  return requestId;
}

async function storageKeyOf(revisionId: string, name: MadeFileName): Promise<string> {
  const file = await revisionFile(db, { revisionId, name });
  return file?.state === 'ready' ? file.storageKey : `not ready: ${file?.state}`;
}

const jobsFor = async (): Promise<readonly unknown[]> => {
  const sent: unknown[] = [];
  await queueRevisionFiles(work, { send: async (_name, payload) => sent.push(payload) > 0 });
  return sent;
};

test('from publication to deletion', async () => {
  const revisionId = await publish(1);
  const noted = await revisionFiles(db, revisionId);
  expect(noted.map(({ state }) => state)).toEqual(noted.map(() => 'waiting'));
  expect(queued.toSorted()).toEqual(noted.map(({ name }) => name).toSorted());

  // The picture for links needs no ffmpeg.
  const card = { revisionId, name: 'card.png' } as const;
  await makeRevisionFile({ ...work, ffmpeg: null }, card, attempt);
  const cardKey = await storageKeyOf(revisionId, 'card.png');
  const png = await new Response(work.storage.read(cardKey, { start: 0, end: 8 })).bytes();
  // The signature of PNG (W3C PNG, section 5.2).
  expect([...png]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);

  // Without ffmpeg it is given up at once, and says why; asked again, it is made.
  const mp4 = { revisionId, name: 'recording.mp4' } as const;
  await expect(makeRevisionFile({ ...work, ffmpeg: null }, mp4, attempt)).rejects.toThrow(/ffmpeg/);
  expect(await revisionFile(db, mp4)).toMatchObject({ state: 'failed', fault: 'converter-missing' });
  expect(await jobsFor()).not.toContainEqual(mp4);
  expect(await retryRevisionFile(db, mp4)).toBe(true);

  // An attempt that was cut short is taken up by the next worker that starts.
  const cut = { signal: AbortSignal.abort(new Error('killed')), isLast: false };
  await expect(makeRevisionFile(work, mp4, cut)).rejects.toThrow('killed');
  expect((await revisionFile(db, mp4))?.state).toBe('making');
  expect(await jobsFor()).toContainEqual(mp4);
  await makeRevisionFile(work, mp4, attempt);
  const key = await storageKeyOf(revisionId, 'recording.mp4');
  expect(await revisionFile(db, mp4)).toMatchObject({ sizeBytes: await work.storage.size(key) });
  expect(await jobsFor()).not.toContainEqual(mp4);

  // A revision with other words in the text but the same captions shares the copy; one with other chapters does not.
  await saveDraft(bench, {
    ...rows,
    saveId: randomUUID(),
    baseVersion: 1,
    changes: [{ kind: 'set', field: 'summary', value: 'A round chain.' }],
  });
  const second = await publish(2);
  await makeRevisionFile({ ...work, ffmpeg: null }, { revisionId: second, name: 'recording.mp4' }, attempt);
  expect(await storageKeyOf(second, 'recording.mp4')).toBe(key);
  await saveDraft(bench, {
    ...rows,
    saveId: randomUUID(),
    baseVersion: 2,
    changes: [
      {
        kind: 'put',
        list: 'chapters',
        item: { id: 'ch-2', kind: 'repeat unit', title: 'Again and again', startMs: 30_000 },
      },
    ],
  });
  const third = await publish(3);
  await makeRevisionFile(work, { revisionId: third, name: 'recording.mp4' }, attempt);
  const other = await storageKeyOf(third, 'recording.mp4');
  expect(other).not.toBe(key);

  const removed: string[] = [];
  const workshop = await db.workshop.findUniqueOrThrow({ where: { id: rows.workshopId } });
  await deleteLesson(
    bench,
    { workshop, role: 'owner', caller: { userId: rows.userId, name: 'Ilo', email: 'ilo@example.org' } },
    rows.lessonId,
    async (storageKey) => void removed.push(storageKey),
  );
  expect(removed).toContain(key);
  expect(removed).toContain(other);
  expect(removed).toContain(cardKey);
});
