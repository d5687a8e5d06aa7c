/** Where something of a lesson has to be pasted again: found from what differs, ticked off, and kept. */
import { randomUUID } from 'node:crypto';
import { expect, test } from 'vitest';
import type { Bench } from '#lib/bench/bench.ts';
import { batchPlace, forgetPlace, markDraftFile, markPlace, readPlaces } from '#lib/bench/paste-again.ts';
import { publishLesson, type Recordings } from '#lib/bench/publish-lesson.ts';
import { readBatches, recordBatch } from '#lib/bench/record-batch.ts';
import { saveDraft } from '#lib/bench/save-draft.ts';
import { saveCopiedText } from '#lib/data/description-texts.ts';
import type { DraftFile } from '#lib/description/places.ts';
import type { Change } from '#lib/lesson/change.ts';
import { aContent, aTranscript } from '#tests/support/a-content.ts';
import { aLesson } from '#tests/support/a-lesson.ts';
import { testDatabase } from '#tests/support/database.ts';

const { db } = await testDatabase();
let minutes = 0;
const bench: Bench = {
  db,
  now: () => {
    minutes += 1;
    return new Date(Date.UTC(2026, 4, 1, 8, minutes));
  },
  newId: randomUUID,
};
const none: Recordings = {
  current: async () => null,
  takeStill: async () => null,
  makeLater: async () => {},
};

async function published() {
  const rows = await aLesson(db, { content: aContent() });
  await db.cue.createMany({
    data: aTranscript.map((cue) => ({ ...cue, timing: null, lessonId: rows.lessonId })),
  });
  const workshop = { name: 'Kettle Row Rings', slug: `w-${rows.workshopId}` };
  const publish = async () => {
    const { version } = await db.lesson.findUniqueOrThrow({ where: { id: rows.lessonId } });
    const done = await publishLesson(bench, none, { ...rows, requestId: randomUUID(), version, workshop });
    if (!done.ok) throw new Error(JSON.stringify(done.fault));
  };
  const change = async (...changes: Change[]) => {
    const { version } = await db.lesson.findUniqueOrThrow({ where: { id: rows.lessonId } });
    const saved = await saveDraft(bench, { ...rows, saveId: randomUUID(), baseVersion: version, changes });
    if (!saved.ok) throw new Error(JSON.stringify(saved.fault));
    await publish();
  };
  await publish();
  const of = { lessonId: rows.lessonId, workshop: workshop.slug, lessonAddress: 'https://bench.example/l' };
  const states = async () =>
    Object.fromEntries((await readPlaces(db, of))?.places.map(({ place, state }) => [place, state.is]) ?? []);
  const tick = (place: string, revision: number, ticked = true) =>
    markPlace(bench, of, { place, revision, ticked });
  const takeDraft = (place: DraftFile) => markDraftFile(bench, { ...of, workshopId: rows.workshopId }, place);
  return { rows, of, change, publish, states, tick, takeDraft };
}

test('a place is stale where what stands in it differs, and only there', async () => {
  const { change, states, tick } = await published();
  // The lesson has no recording, so none stands anywhere.
  expect(await states()).toEqual({
    title: 'unknown',
    'description-text': 'unknown',
    'description-markdown': 'unknown',
    'description-html': 'unknown',
    captions: 'unknown',
    chapters: 'unknown',
    'kit-sheets': 'unknown',
  });
  for (const place of ['title', 'description-text', 'captions', 'chapters', 'kit-sheets'])
    expect((await tick(place, 1)).ok).toBe(true);
  await tick('description-html', 1, false);
  expect(await states()).toEqual({
    title: 'in place',
    'description-text': 'in place',
    'description-markdown': 'unknown',
    'description-html': 'taken',
    captions: 'in place',
    chapters: 'in place',
    'kit-sheets': 'in place',
  });
  const [cue] = aTranscript;
  if (!cue) throw new Error('the transcript has a cue');
  await change({ kind: 'cues', put: [{ ...cue, text: 'Good morning.' }], remove: [] });
  expect(await states()).toMatchObject({
    captions: 'stale',
    chapters: 'in place',
    'description-text': 'in place',
  });
  const [, chapter] = aContent().chapters;
  if (!chapter) throw new Error('there is a chapter');
  await change({ kind: 'put', list: 'chapters', item: { ...chapter, title: 'Four and four' } });
  expect(await states()).toMatchObject({
    title: 'in place',
    'description-text': 'stale',
    'description-html': 'stale',
    captions: 'stale',
    chapters: 'stale',
    'kit-sheets': 'in place',
  });
  await tick('chapters', 3);
  await tick('description-text', 3);
  expect(await states()).toMatchObject({
    'description-text': 'in place',
    captions: 'stale',
    chapters: 'in place',
  });
  // Taken back word for word, what still stands outside is right again.
  await change({ kind: 'cues', put: [cue], remove: [] });
  expect(await states()).toMatchObject({ captions: 'in place' });
});

test('a text copied from a draft counts as it was copied; a file that is forgotten is unknown again', async () => {
  const { of, states, tick } = await published();
  await tick('description-text', 1);
  await saveCopiedText(db, {
    lessonId: of.lessonId,
    format: 'text',
    text: 'Older.\n',
    copiedAt: bench.now(),
  });
  expect(await states()).toMatchObject({ 'description-text': 'stale' });
  await forgetPlace(db, of.lessonId, 'description-text');
  expect(await states()).toMatchObject({ 'description-text': 'unknown' });
  expect(await tick('shop window', 1)).toEqual({ ok: false, fault: { code: 'place-not-found' } });
  expect(await tick('captions', 9)).toEqual({ ok: false, fault: { code: 'revision-not-found' } });
});

test('a file of the draft is noted as the revision’s where it says the same, else as it was taken', async () => {
  const { rows, of, change, publish, states, tick, takeDraft } = await published();
  const since = async (place: string) =>
    (await readPlaces(db, of))?.places.find((one) => one.place === place)?.since?.revision;
  expect((await takeDraft('captions')).ok).toBe(true);
  expect([await states(), await since('captions')]).toEqual([
    expect.objectContaining({ captions: 'taken', chapters: 'unknown' }),
    1,
  ]);
  // Changed in the draft, taken along, and published only then.
  const [cue] = aTranscript;
  if (!cue) throw new Error('the transcript has a cue');
  const { version } = await db.lesson.findUniqueOrThrow({ where: { id: rows.lessonId } });
  const changes = [{ kind: 'cues' as const, put: [{ ...cue, text: 'Good morning.' }], remove: [] }];
  await saveDraft(bench, { ...rows, saveId: randomUUID(), baseVersion: version, changes });
  expect((await takeDraft('captions')).ok).toBe(true);
  expect([await states(), await since('captions')]).toEqual([
    expect.objectContaining({ captions: 'stale' }),
    null,
  ]);
  await publish();
  expect(await states()).toMatchObject({ captions: 'taken' });
  await change({ kind: 'cues', put: [cue], remove: [] });
  expect(await states()).toMatchObject({ captions: 'stale' });
  // What is ticked later counts more; what is forgotten is unknown.
  await tick('captions', 3);
  expect(await states()).toMatchObject({ captions: 'in place' });
  await forgetPlace(db, of.lessonId, 'captions');
  expect(await states()).toMatchObject({ captions: 'unknown' });
});

test('a batch is reached by a revision that changes its kits, until it is ticked', async () => {
  const { of, change, tick } = await published();
  const id = randomUUID();
  const batch = { id, revision: 1, madeOn: '2026-05-04', rule: 'per kit' as const, note: '' };
  const kits = [{ name: 'medium', bodyMm: 165, times: 4 }];
  expect(await recordBatch(db, of.lessonId, { ...batch, kits, revision: 7 })).toMatchObject({
    fault: { code: 'revision-not-found' },
  });
  const tiny = [{ name: 'tiny', bodyMm: 5, times: 1 }];
  expect(await recordBatch(db, of.lessonId, { ...batch, kits: tiny })).toMatchObject({
    fault: { code: 'kit-not-computed', names: ['tiny'] },
  });
  await recordBatch(db, of.lessonId, { ...batch, kits });
  await recordBatch(db, of.lessonId, { ...batch, kits });
  const [caution] = aContent().cautions;
  if (!caution) throw new Error('there is a caution');
  await change({ kind: 'put', list: 'cautions', item: { ...caution, text: 'Mind the ends.' } });
  expect((await readBatches(db, of.lessonId)).batches).toMatchObject([
    { change: { lines: [], unknown: [] } },
  ]);
  const last = aContent().finishing.at(-1);
  if (!last) throw new Error('the piece is finished');
  await change({ kind: 'put', list: 'finishing', item: { ...last, id: 'more' } });
  const [read] = (await readBatches(db, of.lessonId)).batches;
  expect(read?.change?.lines).toMatchObject([{ each: [1], inAll: 4 }]);
  const stale = async () => (await readPlaces(db, of))?.batches.map((one) => [one.upTo, one.stale]);
  expect(await stale()).toEqual([[1, true]]);
  await tick(batchPlace(id), 3);
  expect(await stale()).toEqual([[3, false]]);
});
