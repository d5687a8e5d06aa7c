import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Bench } from '#lib/bench/bench.ts';
import { type SaveDraftInput, saveDraft, saveRequest } from '#lib/bench/save-draft.ts';
import { findDraft } from '#lib/data/lessons.ts';
import type { Change } from '#lib/lesson/change.ts';
import { MOST_CUES } from '#lib/transcript/cue.ts';
import { aLesson, aUser, someCues } from '#tests/support/a-lesson.ts';
import { testDatabase } from '#tests/support/database.ts';

const at = new Date('2026-03-04T10:00:00.000Z');
let bench: Bench;

beforeAll(async () => {
  const { db } = await testDatabase();
  bench = { db, now: () => at, newId: randomUUID };
});

const title = (value: unknown): Change => ({ kind: 'set', field: 'title', value });
const putCues = (count: number): Change => ({ kind: 'cues', put: someCues(count), remove: [] });

async function aSave(over: Partial<SaveDraftInput> = {}): Promise<SaveDraftInput> {
  return {
    ...(await aLesson(bench.db)),
    saveId: randomUUID(),
    baseVersion: 1,
    changes: [title('Byzantine')],
    ...over,
  };
}

test('a save writes content and cues, and the version goes up by one', async () => {
  const save = await aSave({ changes: [title('Byzantine'), putCues(3)] });
  expect(await saveDraft(bench, save)).toEqual({ ok: true, value: { version: 2 } });
  const draft = await findDraft(bench.db, save);
  expect(draft?.version).toBe(2);
  expect(draft?.content.title).toBe('Byzantine');
  expect(draft?.cues).toEqual(someCues(3));
});

test('of changes to one cue in one save the last one stays', async () => {
  const [first] = someCues(1);
  if (!first) throw new Error('no cue');
  const save = await aSave({
    changes: [
      putCues(2),
      { kind: 'cues', put: [{ ...first, text: 'Mended.' }], remove: ['cue-00001'] },
      { kind: 'cues', put: [], remove: ['was never there'] },
    ],
  });
  await saveDraft(bench, save);
  expect((await findDraft(bench.db, save))?.cues).toEqual([{ ...first, text: 'Mended.' }]);
});

test('the same save sent again gets the same answer and is written once', async () => {
  const save = await aSave();
  const first = await saveDraft(bench, save);
  await saveDraft(bench, { ...save, saveId: randomUUID(), baseVersion: 2, changes: [title('Later')] });
  expect(await saveDraft(bench, save)).toEqual(first);
  expect((await findDraft(bench.db, save))?.content.title).toBe('Later');
});

test('a save on an older version writes nothing and is told what is newer, by whom and when', async () => {
  const save = await aSave();
  const other = await aUser(bench.db, 'Mara Ellwood');
  await saveDraft(bench, { ...save, userId: other, changes: [title('Theirs'), putCues(1)] });
  const stale = await saveDraft(bench, { ...save, saveId: randomUUID(), changes: [title('Mine')] });
  expect(stale).toMatchObject({
    ok: false,
    fault: {
      code: 'draft-is-newer',
      newer: { version: 2, content: { title: 'Theirs' }, cues: [{ id: 'cue-00000' }] },
      saves: [{ version: 2, keys: ['title', 'cue/cue-00000'], userName: 'Mara Ellwood', at }],
    },
  });
  expect((await findDraft(bench.db, save))?.content.title).toBe('Theirs');
});

test('of twenty saves on one version at once exactly one is written', async () => {
  const save = await aSave();
  const answers = await Promise.all(
    Array.from({ length: 20 }, (_, n) =>
      saveDraft(bench, { ...save, saveId: randomUUID(), changes: [title(`Window ${n}`), putCues(n + 1)] }),
    ),
  );
  const won = answers.findIndex((answer) => answer.ok);
  expect(answers.filter((answer) => answer.ok)).toHaveLength(1);
  const draft = await findDraft(bench.db, save);
  expect(draft).toMatchObject({ version: 2, content: { title: `Window ${won}` } });
  expect(draft?.cues).toHaveLength(won + 1);
  const refused = answers.filter((answer) => !answer.ok);
  expect(new Set(refused.map((answer) => answer.fault.code))).toEqual(new Set(['draft-is-newer']));
});

test('one save that arrives twice at once is written once and answered twice', async () => {
  const save = await aSave();
  const answers = await Promise.all([saveDraft(bench, save), saveDraft(bench, save)]);
  expect(answers).toEqual([
    { ok: true, value: { version: 2 } },
    { ok: true, value: { version: 2 } },
  ]);
});

test('a lesson of another workshop is not there, and its save id is not to be had', async () => {
  const [mine, theirs] = [await aSave(), await aSave()];
  expect(await saveDraft(bench, { ...mine, lessonId: theirs.lessonId })).toEqual({
    ok: false,
    fault: { code: 'not-found' },
  });
  await saveDraft(bench, theirs);
  expect(await saveDraft(bench, { ...mine, saveId: theirs.saveId })).toEqual({
    ok: false,
    fault: { code: 'save-id-taken' },
  });
});

describe('what cannot stand', () => {
  test('is refused whole, with every fault and its place', async () => {
    const save = await aSave({
      changes: [
        putCues(2),
        title(7),
        { kind: 'put', list: 'sizes', item: { id: 's', name: 'Small', bodyMm: -3 } },
      ],
    });
    const answer = await saveDraft(bench, save);
    const places = answer.ok || answer.fault.code !== 'changes-not-valid' ? [] : answer.fault.faults;
    expect(places.map((fault) => fault.where).sort()).toEqual(['sizes/0/bodyMm', 'title']);
    expect(await findDraft(bench.db, save)).toMatchObject({ version: 1, cues: [] });
  });

  test.each(['nothing \u0000 here', 'half a pair \ud83d'])('text that cannot be kept: %j', async (text) => {
    const answer = await saveDraft(bench, await aSave({ changes: [title(text)] }));
    expect(answer).toMatchObject({ fault: { faults: [{ where: 'changes/0/value' }] } });
  });

  test('a cue that ends before it starts', () => {
    const [one] = someCues(1);
    const body = {
      saveId: randomUUID(),
      baseVersion: 1,
      changes: [{ kind: 'cues', put: [{ ...one, endMs: 0 }], remove: [] }],
    };
    expect(saveRequest.safeParse(body).error?.issues[0]?.path).toEqual(['changes', 0, 'put', 0, 'endMs']);
  });

  test('more cues than a lesson holds, where the ones that are replaced count once', async () => {
    const save = await aSave({ changes: [putCues(MOST_CUES)] });
    expect(await saveDraft(bench, save)).toMatchObject({ ok: true });
    const again = { ...save, saveId: randomUUID(), baseVersion: 2 };
    expect(await saveDraft(bench, again)).toMatchObject({ ok: true });
    const one = { ...someCues(1)[0], id: 'one more' } as ReturnType<typeof someCues>[number];
    const full = await saveDraft(bench, {
      ...save,
      saveId: randomUUID(),
      baseVersion: 3,
      changes: [{ kind: 'cues', put: [one], remove: [] }],
    });
    expect(full).toMatchObject({ fault: { faults: [{ where: 'cues' }] } });
  });
});

test('cues come back in order of time, whatever order they were written in', async () => {
  const cues = someCues(50);
  const save = await aSave({ changes: [{ kind: 'cues', put: cues.toReversed(), remove: [] }] });
  await saveDraft(bench, save);
  expect((await findDraft(bench.db, save))?.cues).toEqual(cues);
});
