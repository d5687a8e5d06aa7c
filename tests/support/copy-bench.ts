/** A lesson with everything that a portable copy can hold, taken out and brought in without a browser. */
import { randomUUID } from 'node:crypto';
import { mkdir, mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { below, inTurn, lessonEntries } from '#app/portable/lesson-entries.ts';
import { workshopEntries } from '#app/portable/workshop-entries.ts';
import { bringInCopy } from '#lib/bench/bring-in-copy.ts';
import { frozenRecordingOf } from '#lib/bench/frozen-recording.ts';
import { gatherLesson } from '#lib/bench/gather-copy.ts';
import { publishLesson } from '#lib/bench/publish-lesson.ts';
import { saveDraft } from '#lib/bench/save-draft.ts';
import { type CopyEntry, writeZip } from '#lib/copies/write-zip.ts';
import { saveCopiedText } from '#lib/data/description-texts.ts';
import { addKitBatch } from '#lib/data/kit-batches.ts';
import { putPlaceMark } from '#lib/data/place-marks.ts';
import { addCopy, copyArrived, listCopies } from '#lib/data/portable-copies.ts';
import { addReport, settleReport } from '#lib/data/reports.ts';
import { emptyCorrection } from '#lib/lesson/corrections.ts';
import { arrivingPath } from '#lib/recording/arriving.ts';
import type { RecordingWork } from '#lib/recording/recording-work.ts';
import { takeStill } from '#lib/recording/take-still.ts';
import { openLocalDisk } from '#lib/storage/local-disk.ts';
import { aContent, aTranscript } from '#tests/support/a-content.ts';
import { aLesson, type LessonRows } from '#tests/support/a-lesson.ts';
import { aReadyRecording } from '#tests/support/a-ready-recording.ts';
import { testFfmpeg } from '#tests/support/clips.ts';
import { testDatabase } from '#tests/support/database.ts';

export const HOSTILE = '</script><img src=x onerror=alert(1)>"\'&\u202E {1} ../..';

/** Makes the lesson, published twice and changed since, in a database of the test file's own. */
export async function copyBench() {
  const { db } = await testDatabase();
  const bench = { db, now: () => new Date(), newId: randomUUID };

  const filesFolder = await mkdtemp(join(tmpdir(), 'benchleaf-copies-'));
  const work: RecordingWork = {
    db,
    storage: openLocalDisk(filesFolder),
    ffmpeg: await testFfmpeg(),
    filesFolder,
    newId: randomUUID,
  };
  const taught = await aLesson(db, { content: aContent() });
  await aReadyRecording(db, filesFolder, taught.lessonId, 90_000);
  await db.cue.createMany({
    data: aTranscript.map((cue) => ({ ...cue, timing: null, lessonId: taught.lessonId })),
  });
  await db.transcriptFile.create({
    data: {
      id: randomUUID(),
      lessonId: taught.lessonId,
      name: `${HOSTILE}.vtt`,
      bytes: Buffer.from('WEBVTT\n'),
      format: 'webvtt',
      encoding: 'utf-8',
      losses: [],
    },
  });

  /** What a workshop keeps about a lesson for itself. */
  async function keepSomething(lessonId: string): Promise<void> {
    const batchId = randomUUID();
    const kits = [{ name: HOSTILE, bodyMm: 165, times: 6 }];
    for (const [id, note] of [
      [batchId, HOSTILE],
      [randomUUID(), 'made on the same day'],
    ] as const)
      await addKitBatch(db, lessonId, { id, revision: 1, madeOn: '2026-05-04', rule: 'pooled', kits, note });
    const said = { revision: 1, concerns: 'kit', at: '1:0x', wrong: HOSTILE, right: '' } as const;
    for (const second of [1, 2])
      await addReport(db, lessonId, {
        ...said,
        id: randomUUID(),
        createdAt: new Date(1_777_000_000_000 + second),
      });
    const [report] = await db.report.findMany({ where: { lessonId } });
    await settleReport(db, lessonId, report?.id ?? '', {
      answer: 'Thank you.',
      settledAt: new Date(1_777_000_005_000),
    });
    const at = new Date(1_777_000_009_000);
    for (const place of ['title', `batch-${batchId}`])
      await putPlaceMark(db, lessonId, { place, revision: 1, ticked: place === 'title', at });
    await saveCopiedText(db, { lessonId, format: 'markdown', text: `# ${HOSTILE}\n`, copiedAt: at });
  }

  async function publish(): Promise<void> {
    const { version } = await db.lesson.findUniqueOrThrow({ where: { id: taught.lessonId } });
    const published = await publishLesson(
      bench,
      {
        current: (lessonId) => frozenRecordingOf(db, lessonId),
        takeStill: (recordingId, atMs) => takeStill(work, { recordingId, atMs }),
        makeLater: async () => {},
      },
      {
        ...taught,
        requestId: randomUUID(),
        version,
        workshop: { name: 'Kettle Row Rings', slug: `w-${taught.workshopId}` },
      },
    );
    if (!published.ok) throw new Error(JSON.stringify(published.fault));
  }

  async function zipped(entries: AsyncIterable<CopyEntry>): Promise<Uint8Array> {
    return new Uint8Array(await new Response(writeZip(entries)).arrayBuffer());
  }

  async function lessonZip(at: LessonRows, withDraft = true, withBench = withDraft): Promise<Uint8Array> {
    const workshop = { id: at.workshopId, name: 'Kettle Row Rings', slug: `w-${at.workshopId}` };
    const copy = await gatherLesson(
      { db, storage: work.storage },
      { workshop, lessonId: at.lessonId, withDraft, withBench },
    );
    if (!copy) throw new Error('Nothing to copy');
    return zipped(inTurn(below(copy.slug, lessonEntries(copy, copy.shown.content))));
  }

  const workshopZip = (id: string): Promise<Uint8Array> =>
    zipped(
      workshopEntries({
        pictured: async (content) => content,
        db,
        storage: work.storage,
        workshop: { id, name: 'Kettle Row Rings', slug: `w-${id}` },
      }),
    );

  /** Sends a zip to a workshop and reads it; what the list then says of it. */
  async function bringIn(bytes: Uint8Array, workshopId: string, userId: string) {
    const id = randomUUID();
    await addCopy(db, {
      id,
      workshopId,
      userId,
      name: 'copy.zip',
      sizeBytes: bytes.length,
      createdAt: new Date(),
    });
    const path = arrivingPath(work.filesFolder, id);
    await mkdir(dirname(path), { recursive: true });
    await writeFile(path, bytes);
    await copyArrived(db, id);
    await bringInCopy(
      work,
      { copyId: id },
      { signal: AbortSignal.timeout(60_000), number: 3, largestBytes: 1e9 },
    );
    const [sent] = await listCopies(db, workshopId);
    if (!sent) throw new Error('The copy is not listed');
    return sent;
  }

  const another = async (): Promise<LessonRows> => aLesson(db);
  await publish();
  await keepSomething(taught.lessonId);
  await saveDraft(bench, {
    ...taught,
    saveId: randomUUID(),
    baseVersion: 1,
    changes: [
      {
        kind: 'put',
        list: 'corrections',
        item: { ...emptyCorrection('co-1'), wrong: 'Eighteen', right: HOSTILE, affects: 'All.' },
      },
    ],
  });
  await publish();
  const { version } = await db.lesson.findUniqueOrThrow({ where: { id: taught.lessonId } });
  await saveDraft(bench, {
    ...taught,
    saveId: randomUUID(),
    baseVersion: version,
    changes: [{ kind: 'set', field: 'title', value: HOSTILE }],
  });

  return { db, work, taught, lessonZip, workshopZip, bringIn, another };
}

export const textOf = (files: Record<string, Uint8Array>, name: string): string =>
  new TextDecoder().decode(files[name] ?? new Uint8Array());
