/** A recording is given up for failures of its own, not for workers that were killed at it. */
import { randomUUID } from 'node:crypto';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { retryRecording } from '#lib/bench/retry-recording.ts';
import { claimRecording } from '#lib/data/ingest-state.ts';
import { addUpload, moveRecording } from '#lib/data/uploads.ts';
import { ingestRecording } from '#lib/recording/ingest-recording.ts';
import { type RecordingWork, uploadsFolder } from '#lib/recording/recording-work.ts';
import { openLocalDisk } from '#lib/storage/local-disk.ts';
import { aLesson } from '#tests/support/a-lesson.ts';
import { testFfmpeg } from '#tests/support/clips.ts';
import { testDatabase } from '#tests/support/database.ts';

const { db } = await testDatabase();
const filesFolder = await mkdtemp(join(tmpdir(), 'benchleaf-failures-'));
afterAll(() => rm(filesFolder, { recursive: true }));
const work: RecordingWork = {
  db,
  // Whatever is lent for an attempt cannot be read.
  storage: {
    ...openLocalDisk(filesFolder),
    lend: () => Promise.reject(new Error('the disk does not answer')),
  },
  ffmpeg: await testFfmpeg(),
  filesFolder,
  newId: randomUUID,
};
/** As the queue tells it of an attempt; its number counts killed ones too. */
const attempt = { signal: new AbortController().signal, number: 5, isLast: false };

test('killed attempts do not count among the failures after which a recording is given up', async () => {
  const { lessonId } = await aLesson(db);
  const recordingId = randomUUID();
  await mkdir(uploadsFolder(filesFolder), { recursive: true });
  await writeFile(join(uploadsFolder(filesFolder), recordingId), 'bytes');
  await addUpload(db, {
    recordingId,
    lessonId,
    name: 'lesson.m4a',
    sizeBytes: 5,
    createdAt: new Date('2026-05-01T08:00:00Z'),
  });
  await moveRecording(db, recordingId, ['receiving'], 'waiting');
  const now = () => db.recording.findUniqueOrThrow({ where: { id: recordingId } });
  const fail = (signal = attempt.signal) =>
    expect(ingestRecording(work, { recordingId }, { ...attempt, signal })).rejects.toThrow();

  // What a worker that is gone without a word leaves behind, and what one does that is told to stop.
  for (let k = 0; k < 3; k += 1) await claimRecording(db, { recordingId, attempt: randomUUID() });
  await fail(AbortSignal.abort(new Error('The worker stops')));
  expect(await now()).toMatchObject({ state: 'waiting', failures: 0 });

  await fail();
  await claimRecording(db, { recordingId, attempt: randomUUID() });
  await fail();
  expect(await now()).toMatchObject({ state: 'waiting', failures: 2 });
  await fail();
  expect(await now()).toMatchObject({ state: 'refused', fault: { code: 'gave-up' } });

  // Who asks for another try gets as many again.
  const queue = { send: async () => true };
  expect(await retryRecording({ db }, queue, { lessonId, recordingId })).toEqual({ ok: true, value: null });
  await fail();
  expect(await now()).toMatchObject({ state: 'waiting', failures: 1 });
});
