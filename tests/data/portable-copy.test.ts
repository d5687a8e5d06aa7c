/** A lesson taken out as a portable copy and brought in again is the same lesson. */
import { createHash, randomUUID } from 'node:crypto';
import { mkdir, mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { unzipSync, zipSync } from 'fflate';
import { HtmlValidate } from 'html-validate';
import { beforeAll, describe, expect, test } from 'vitest';
import { below, inTurn, lessonEntries } from '#app/portable/lesson-entries.ts';
import { workshopEntries } from '#app/portable/workshop-entries.ts';
import { bringInCopy } from '#lib/bench/bring-in-copy.ts';
import { frozenRecordingOf } from '#lib/bench/frozen-recording.ts';
import { gatherLesson } from '#lib/bench/gather-copy.ts';
import { publishLesson } from '#lib/bench/publish-lesson.ts';
import { readLessonPage } from '#lib/bench/read-lesson-page.ts';
import { saveDraft } from '#lib/bench/save-draft.ts';
import { type ClaimedEntry, entriesFault } from '#lib/copies/entry-rules.ts';
import { type CopyEntry, writeZip } from '#lib/copies/write-zip.ts';
import { findCopiedTexts, saveCopiedText } from '#lib/data/description-texts.ts';
import { findEndedLesson, noteEndedLesson } from '#lib/data/ended-lessons.ts';
import { addKitBatch, findKitBatches } from '#lib/data/kit-batches.ts';
import { findPlaceMarks, putPlaceMark } from '#lib/data/place-marks.ts';
import { addCopy, copyArrived, listCopies } from '#lib/data/portable-copies.ts';
import { addReport, findReports, settleReport } from '#lib/data/reports.ts';
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

const { db } = await testDatabase();
const bench = { db, now: () => new Date(), newId: randomUUID };
let work: RecordingWork;
let taught: LessonRows;

const HOSTILE = '</script><img src=x onerror=alert(1)>"\'&\u202E {1} ../..';

beforeAll(async () => {
  const filesFolder = await mkdtemp(join(tmpdir(), 'benchleaf-copies-'));
  work = {
    db,
    storage: openLocalDisk(filesFolder),
    ffmpeg: await testFfmpeg(),
    filesFolder,
    newId: randomUUID,
  };
  taught = await aLesson(db, { content: aContent() });
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
}, 60_000);

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
  return zipped(inTurn(below(copy.slug, lessonEntries(copy))));
}

const workshopZip = (id: string): Promise<Uint8Array> =>
  zipped(
    workshopEntries({
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
const textOf = (files: Record<string, Uint8Array>, name: string): string =>
  new TextDecoder().decode(files[name] ?? new Uint8Array());
const sha = (bytes: Uint8Array | undefined): string =>
  createHash('sha256')
    .update(bytes ?? '')
    .digest('hex');

describe('a lesson', () => {
  test('comes back equal, byte for byte, in another workshop', async () => {
    const out = await lessonZip(taught);
    // The same content gives the same bytes.
    expect(sha(await lessonZip(taught))).toBe(sha(out));
    const other = await another();
    const sent = await bringIn(out, other.workshopId, other.userId);
    expect(sent).toMatchObject({ state: 'ready', fault: null, lessons: [{ title: HOSTILE }] });
    const lessonId = sent.lessons[0]?.id ?? '';
    const again = await lessonZip({ ...other, lessonId });
    // Read by a library that had no part in writing it.
    const [before, after] = [unzipSync(out), unzipSync(again)];
    expect(Object.keys(after)).toEqual(Object.keys(before));
    for (const [name, bytes] of Object.entries(before))
      expect([name, sha(after[name])]).toEqual([name, sha(bytes)]);
    expect(sha(again)).toBe(sha(out));
    const slug = `l-${taught.lessonId}`;
    expect(Object.keys(before)).toEqual(
      expect.arrayContaining(
        [
          'index.html',
          'lesson.json',
          'revisions/1.json',
          'revisions/2.json',
          'draft.json',
          'media/recording-1.mp4',
          'captions.vtt',
          'chapters.json',
          'kit/size-1.csv',
          'kit/size-3.json',
          'transcripts/1',
          'bench.json',
          'sheet.pdf',
        ].map((name) => `${slug}/${name}`),
      ),
    );
    const row = await db.recording.findUniqueOrThrow({
      where: { id: (await db.lesson.findUniqueOrThrow({ where: { id: lessonId } })).recordingId ?? '' },
    });
    expect(row.sha256).toBe(sha(before[`${slug}/media/recording-1.mp4`]));
    // What the workshop keeps for itself is there too: its batch still holds the mark of its place.
    const [batch] = await findKitBatches(db, lessonId);
    const kept = await db.kitBatch.findFirstOrThrow({ where: { lessonId, note: HOSTILE } });
    expect(batch).toMatchObject({ revision: 1, madeOn: '2026-05-04', kits: [{ name: HOSTILE, times: 6 }] });
    expect((await findPlaceMarks(db, lessonId)).map(({ place }) => place).toSorted()).toEqual([
      `batch-${kept.id}`,
      'title',
    ]);
    expect(await findReports(db, lessonId)).toMatchObject([
      { wrong: HOSTILE, answer: null },
      { wrong: HOSTILE, at: '1:0x', answer: 'Thank you.' },
    ]);
    expect((await findCopiedTexts(db, lessonId)).markdown?.text).toBe(`# ${HOSTILE}\n`);
    // Pupils see it at once, as they saw the one that it was copied from.
    const page = await readLessonPage(db, {
      workshop: `w-${other.workshopId}`,
      lesson: slug,
      number: null,
      held: null,
    });
    expect(page?.revision).toMatchObject({
      number: 2,
      content: { title: 'Byzantine bracelet', corrections: [{ right: HOSTILE }] },
    });
    expect(page?.revision.stills.length).toBeGreaterThan(0);
  });

  test('stands beside one with the same address', async () => {
    const out = await lessonZip(taught);
    const sent = await bringIn(out, taught.workshopId, taught.userId);
    const made = await db.lesson.findUniqueOrThrow({ where: { id: sent.lessons[0]?.id ?? '' } });
    expect(made.slug).toBe(`l-${taught.lessonId}-2`);
    await db.lesson.delete({ where: { id: made.id } });
  });

  test('that was deleted comes back to its own address, which kits and sheets lead to', async () => {
    const slug = `l-${taught.lessonId}`;
    const other = await another();
    const ended = { workshopId: other.workshopId, slug, endedAt: new Date() };
    await noteEndedLesson(db, { ...ended, title: 'Another lesson' });
    const out = await lessonZip(taught);
    const beside = await bringIn(out, other.workshopId, other.userId);
    const slugOf = async (sent: typeof beside) =>
      (await db.lesson.findUniqueOrThrow({ where: { id: sent.lessons[0]?.id ?? '' } })).slug;
    expect(await slugOf(beside)).toBe(`${slug}-2`);
    await noteEndedLesson(db, { ...ended, title: 'Byzantine bracelet' });
    expect(await slugOf(await bringIn(out, other.workshopId, other.userId))).toBe(slug);
    expect(await findEndedLesson(db, `w-${other.workshopId}`, slug)).toBeNull();
  });

  test('without its draft holds nothing that is not published', async () => {
    const files = unzipSync(await lessonZip(taught, false));
    expect(Object.keys(files).some((name) => /draft|transcripts|bench/.test(name))).toBe(false);
    // A member who is no owner takes the draft, and nothing of what pupils said.
    const members = unzipSync(await lessonZip(taught, true, false));
    expect(Object.keys(members).filter((name) => /draft|bench/.test(name))).toEqual([
      `l-${taught.lessonId}/draft.json`,
    ]);
    for (const bytes of Object.values(files))
      expect(new TextDecoder().decode(bytes)).not.toContain(`"title": "</script>`);
    const other = await another();
    const sent = await bringIn(await lessonZip(taught, false), other.workshopId, other.userId);
    const made = await db.lesson.findUniqueOrThrow({ where: { id: sent.lessons[0]?.id ?? '' } });
    expect(made.content).toMatchObject({ title: 'Byzantine bracelet' });
  });

  test('is described by the schema that lies beside it (ajv, JSON Schema 2020-12)', async () => {
    const files = unzipSync(await lessonZip(taught));
    const at = `l-${taught.lessonId}`;
    const schema = JSON.parse(textOf(files, `${at}/lesson.schema.json`));
    const ajv = new Ajv2020({ strict: false, validateFormats: false });
    ajv.addSchema(schema, 'lesson');
    for (const [name, part] of [
      ['lesson.json', 'lesson'],
      ['revisions/2.json', 'lesson#/$defs/revision'],
      ['draft.json', 'lesson#/$defs/draft'],
      ['bench.json', 'lesson#/$defs/bench'],
    ]) {
      const valid = ajv.getSchema(part ?? '');
      expect(valid?.(JSON.parse(textOf(files, `${at}/${name}`))), JSON.stringify(valid?.errors)).toBe(true);
    }
    expect(
      ajv.getSchema('lesson')?.({ ...JSON.parse(textOf(files, `${at}/lesson.json`)), revisions: 'none' }),
    ).toBe(false);
  });

  test('has a page that is valid and lets nothing typed act (html-validate)', async () => {
    const page = textOf(unzipSync(await lessonZip(taught)), `l-${taught.lessonId}/index.html`);
    const report = await new HtmlValidate({
      extends: ['html-validate:standard'],
      rules: { 'require-sri': 'off', 'no-inline-style': 'off', 'valid-id': 'off' },
    }).validateString(page);
    expect(
      report.results.flatMap(({ messages }) =>
        messages.map(({ ruleId, line, message }) => `${ruleId} ${line} ${message}`),
      ),
    ).toEqual([]);
    expect(page).not.toContain('<img src=x');
    expect(page).toContain('&lt;/script&gt;&lt;img src=x onerror=alert(1)&gt;');
    expect(page).not.toMatch(/(src|href)="(https?:)?\/\//);
  });
});

describe('a workshop', () => {
  test('comes back with its lessons, its stock, its glossary and its wording', async () => {
    const home = await aLesson(db, { content: aContent({ title: 'Never published' }) });
    await db.workshop.update({ where: { id: home.workshopId }, data: { about: 'Rings, <b>slowly</b>.' } });
    await db.stockItem.create({
      data: { workshopId: home.workshopId, key: 'ring / 1', name: HOSTILE, unit: 'ring', onHandMilli: 5_000 },
    });
    await db.glossaryTerm.create({
      data: {
        ...{ id: randomUUID(), workshopId: home.workshopId, term: 'maille', forms: ['mail'], sounds: [] },
        meaning: 'Rings, woven.',
      },
    });
    await db.heardDecision.create({
      data: { workshopId: home.workshopId, heard: 'busy time', instead: 'byzantine', taken: 3 },
    });
    const out = await workshopZip(home.workshopId);
    const other = await another();
    await db.lesson.delete({ where: { id: other.lessonId } });
    const sent = await bringIn(out, other.workshopId, other.userId);
    expect(sent).toMatchObject({ state: 'ready', lessons: [{ title: 'Never published' }] });
    expect(sha(await workshopZip(other.workshopId))).toBe(sha(out));
    // Once more: what is there already stays as it is, and lessons stand beside each other.
    await db.stockItem.updateMany({ where: { workshopId: other.workshopId }, data: { onHandMilli: 7_000 } });
    expect((await bringIn(out, other.workshopId, other.userId)).state).toBe('ready');
    expect(await db.stockItem.findMany({ where: { workshopId: other.workshopId } })).toMatchObject([
      { onHandMilli: 7_000 },
    ]);
    expect(await db.lesson.count({ where: { workshopId: other.workshopId } })).toBe(2);
  });
});

describe('what is not a copy is refused whole', () => {
  const cases: readonly (readonly [
    string,
    (files: Record<string, Uint8Array>, at: string) => Uint8Array,
    string,
  ])[] = [
    ['no zip at all', () => Buffer.from('WEBVTT\n\n'), 'not-a-zip'],
    ['a zip cut short', (files) => zipSync(files).slice(0, -40), 'not-a-zip'],
    ['a zip without a lesson', () => zipSync({ 'a.txt': Buffer.from('a') }), 'no-lesson'],
    [
      'a name that leads up',
      (files) => zipSync({ ...files, '../../evil': Buffer.from('x') }),
      'name-not-plain',
    ],
    [
      'a name from the root',
      (files) => zipSync({ ...files, '/etc/evil': Buffer.from('x') }),
      'name-not-plain',
    ],
    ['a name of Windows', (files) => zipSync({ ...files, 'C:\\evil': Buffer.from('x') }), 'name-not-plain'],
    [
      'two names that differ in capitals',
      (files, at) => zipSync({ ...files, [`${at}/LESSON.json`]: Buffer.from('{}') }),
      'name-twice',
    ],
    [
      'a link',
      (files, at) =>
        zipSync({
          ...files,
          [`${at}/link`]: [Buffer.from('/etc/passwd'), { os: 3, attrs: (0o120777 << 16) >>> 0 }],
        }),
      'is-a-link',
    ],
    [
      'a bomb',
      (files, at) => zipSync({ ...files, [`${at}/draft.json`]: [new Uint8Array(8_000_000), { level: 9 }] }),
      'blown-up',
    ],
    [
      'a document that is none',
      (files, at) => zipSync({ ...files, [`${at}/draft.json`]: Buffer.from('{') }),
      'not-as-described',
    ],
    [
      'a text that no database keeps',
      (files, at) =>
        zipSync({
          ...files,
          [`${at}/draft.json`]: Buffer.from(
            textOf(files, `${at}/draft.json`).replace('Welcome to', 'Welcome\\u0000to'),
          ),
        }),
      'not-as-described',
    ],
    [
      'a lesson of a later form',
      (files, at) =>
        zipSync({ ...files, [`${at}/lesson.json`]: changed(files, `${at}/lesson.json`, { schema: 2 }) }),
      'newer-form',
    ],
    [
      'a revision that is missing',
      (files, at) => zipSync(without(files, `${at}/revisions/2.json`)),
      'file-missing',
    ],
    [
      'revisions out of order',
      (files, at) =>
        zipSync({
          ...files,
          [`${at}/lesson.json`]: Buffer.from(
            textOf(files, `${at}/lesson.json`).replace('"number": 1', '"number": 9'),
          ),
        }),
      'revisions-out-of-order',
    ],
    [
      'a revision that names a file elsewhere',
      (files, at) =>
        zipSync({
          ...files,
          [`${at}/revisions/2.json`]: Buffer.from(
            textOf(files, `${at}/revisions/2.json`).replaceAll('media/recording-1.mp4', '/etc/passwd'),
          ),
        }),
      'not-as-described',
    ],
    [
      'a manifest that names a file elsewhere',
      (files, at) =>
        zipSync({
          ...files,
          [`${at}/lesson.json`]: Buffer.from(
            textOf(files, `${at}/lesson.json`).replaceAll('media/recording-1.mp4', 'media/../../x.mp4'),
          ),
        }),
      'not-as-described',
    ],
    [
      'a mark of a batch that is not there',
      (files, at) =>
        zipSync({
          ...files,
          [`${at}/bench.json`]: Buffer.from(
            textOf(files, `${at}/bench.json`).replace('"batch-1"', '"batch-9"'),
          ),
        }),
      'not-as-described',
    ],
    [
      'a report on a revision that is not there',
      (files, at) =>
        zipSync({
          ...files,
          [`${at}/bench.json`]: Buffer.from(
            textOf(files, `${at}/bench.json`).replaceAll('"revision": 1', '"revision": 3'),
          ),
        }),
      'not-as-described',
    ],
    [
      'a recording that is none',
      (files, at) => zipSync({ ...files, [`${at}/media/recording-1.mp4`]: Buffer.from('<html>') }),
      'recording-not-taken',
    ],
    [
      'a picture that is none',
      (files, at) =>
        zipSync({
          ...files,
          [Object.keys(files).find((name) => name.startsWith(`${at}/stills/`)) ?? '']:
            Buffer.from('<svg onload=alert(1)>'),
        }),
      'not-a-picture',
    ],
    [
      'a recording with a byte changed',
      (files, at) => spoilt(zipSync(files, { level: 0 }), files[`${at}/media/recording-1.mp4`]),
      'file-damaged',
    ],
  ];

  let copied: Record<string, Uint8Array> | undefined;

  test.each(cases)('%s', async (_name, spoil, code) => {
    const other = await another();
    copied ??= unzipSync(await lessonZip(taught));
    const bytes = spoil(copied, `l-${taught.lessonId}`);
    const sent = await bringIn(bytes, other.workshopId, other.userId);
    expect([sent.state, sent.fault?.code]).toEqual(['refused', code]);
    expect(await db.lesson.count({ where: { workshopId: other.workshopId } })).toBe(1);
  });
});

describe('the directory of an archive', () => {
  const entry: ClaimedEntry = {
    name: 'a/b.txt',
    isLocked: false,
    method: 0,
    mode: 0o100644,
    packedBytes: 10,
    bytes: 10,
    at: 0,
    headBytes: 37,
  };

  test.each<readonly [string, readonly ClaimedEntry[], string | undefined]>([
    ['plain', [entry, { ...entry, name: 'a/c.txt', at: 47 }], undefined],
    ['files that share bytes', [entry, { ...entry, name: 'a/c.txt', at: 46 }], 'files-overlap'],
    ['locked', [{ ...entry, isLocked: true }], 'is-locked'],
    ['packed in a way that is not taken', [{ ...entry, method: 14 }], 'packed-otherwise'],
    ['a pipe', [{ ...entry, mode: 0o010644 }], 'is-a-link'],
    ['a name with a control', [{ ...entry, name: 'a\u0007b' }], 'name-not-plain'],
    ['a name with a step back inside', [{ ...entry, name: 'a/./b' }], 'name-not-plain'],
    ['a name as Windows writes it', [{ ...entry, name: 'a\\b' }], 'name-not-plain'],
    ['tight, but small', [{ ...entry, method: 8, packedBytes: 10, bytes: 900_000 }], undefined],
    ['tight and large', [{ ...entry, method: 8, packedBytes: 10_000, bytes: 9_000_000 }], 'blown-up'],
  ])('%s', (_name, entries, code) => expect(entriesFault(entries)?.code).toBe(code));
});

const without = (files: Record<string, Uint8Array>, name: string): Record<string, Uint8Array> =>
  Object.fromEntries(Object.entries(files).filter(([each]) => each !== name));

const changed = (files: Record<string, Uint8Array>, name: string, over: object): Uint8Array =>
  Buffer.from(JSON.stringify({ ...JSON.parse(textOf(files, name)), ...over }));

/** A stored zip in which one byte of a file is another. */
function spoilt(zip: Uint8Array, file: Uint8Array | undefined): Uint8Array {
  const at = Buffer.from(zip).indexOf(Buffer.from(file ?? []).subarray(0, 2_000));
  const bytes = Uint8Array.from(zip);
  const place = at + Math.floor((file?.length ?? 0) / 2);
  bytes[place] = (bytes[place] ?? 0) ^ 1;
  return bytes;
}
