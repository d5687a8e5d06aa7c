/** Going back to an earlier content: the draft becomes it, what is published stays. */
import { randomUUID } from 'node:crypto';
import { expect, test } from 'vitest';
import type { Bench } from '#lib/bench/bench.ts';
import { bringBackRevision } from '#lib/bench/bring-back-revision.ts';
import { publishLesson, type Recordings } from '#lib/bench/publish-lesson.ts';
import { saveDraft } from '#lib/bench/save-draft.ts';
import { findDraft } from '#lib/data/lessons.ts';
import { getRevision, listRevisions } from '#lib/data/revisions.ts';
import { emptyCorrection } from '#lib/lesson/corrections.ts';
import { cueChanges, kitChanges, textChanges } from '#lib/lesson/revision-texts.ts';
import { aContent } from '#tests/support/a-content.ts';
import { aLesson } from '#tests/support/a-lesson.ts';
import { testDatabase } from '#tests/support/database.ts';
import { dyingBefore } from '#tests/support/dying-database.ts';

const { db } = await testDatabase();
const bench: Bench = { db, now: () => new Date('2026-05-01T08:00:00Z'), newId: randomUUID };
const none: Recordings = {
  current: async () => null,
  takeStill: async () => null,
  makeLater: async () => {},
};
const workshop = { name: 'Kettle Row Rings', slug: 'kettle-row' };

test('the draft becomes an earlier revision, corrections stay, and publishing makes a new one', async () => {
  const content = aContent();
  const rows = await aLesson(db, { content });
  const cue = (id: string, startMs: number, text: string) => ({
    id,
    startMs,
    endMs: startMs + 900,
    text,
    settings: '',
  });
  const save = async (baseVersion: number, changes: Parameters<typeof saveDraft>[1]['changes']) => {
    const saved = await saveDraft(bench, { ...rows, saveId: randomUUID(), baseVersion, changes });
    if (!saved.ok) throw new Error(JSON.stringify(saved.fault));
    return saved.value.version;
  };
  const publish = async (version: number) => {
    const done = await publishLesson(bench, none, { ...rows, requestId: randomUUID(), version, workshop });
    if (!done.ok) throw new Error(JSON.stringify(done.fault));
    return done.value.version;
  };
  let version = await save(1, [
    { kind: 'cues', put: [cue('a', 0, 'Take four rings.'), cue('b', 1_000, 'Close them.')], remove: [] },
  ]);
  version = await publish(version);
  const [size] = content.sizes;
  if (!size) throw new Error('there is a size');
  const stated = { ...emptyCorrection('co-1'), wrong: 'four', right: 'eight', affects: 'everyone' };
  version = await save(version, [
    { kind: 'cues', put: [cue('a', 0, 'Take eight rings.'), cue('b', 2_000, 'Close them.')], remove: [] },
    { kind: 'put', list: 'sizes', item: { ...size, bodyMm: size.bodyMm + 40 } },
    { kind: 'put', list: 'corrections', item: stated },
  ]);
  version = await publish(version);

  const [second, first] = await Promise.all(
    (await listRevisions(db, rows.lessonId)).map(({ id }) => getRevision(db, id)),
  );
  if (!first || !second) throw new Error('there are two');
  expect(textChanges(first, second)).toEqual([
    {
      part: 'transcript',
      id: 'a',
      atMs: 0,
      parts: [
        { how: 'same', text: 'Take ' },
        { how: 'removed', text: 'four ' },
        { how: 'added', text: 'eight ' },
        { how: 'same', text: 'rings.' },
      ],
    },
  ]);
  expect(cueChanges(first, second)).toEqual({ added: 0, removed: 0, reworded: 1, moved: 1 });
  const [kit] = kitChanges(first, second);
  const issuedIn = ({ kits }: typeof first, name: string): number => {
    const kind = content.ringKinds.find((one) => one.name === name)?.id;
    return (
      kits.find((one) => one.size === size.id)?.rings.find(({ ringKind }) => ringKind === kind)?.issued ?? 0
    );
  };
  expect(kitChanges(first, second).map((one) => one.size)).toEqual([size.name]);
  expect(kit?.rings.length).toBeGreaterThan(0);
  for (const { ringKind, before, now } of kit?.rings ?? []) {
    expect([before, now]).toEqual([issuedIn(first, ringKind), issuedIn(second, ringKind)]);
    expect(now).toBeGreaterThan(before);
  }

  const wish = { ...rows, number: 1, saveId: randomUUID(), version };
  expect(await bringBackRevision(bench, { ...wish, version: version - 1 })).toMatchObject({
    fault: { code: 'draft-is-newer' },
  });
  expect(await bringBackRevision(bench, { ...wish, number: 9 })).toMatchObject({
    fault: { code: 'not-found' },
  });
  // A program that dies between any two steps leaves the draft as it was, and the same wish does it all then.
  const before = await findDraft(db, rows);
  let steps = 0;
  for (let alive = false; !alive; steps += 1) {
    const { client, died } = dyingBefore(db, steps + 1);
    alive = await bringBackRevision({ ...bench, db: client }, wish)
      .then(() => !died())
      .catch(() => false);
    if (!alive) expect(await findDraft(db, rows)).toEqual(before);
  }
  expect(steps).toBeGreaterThan(8);
  const answers = [await bringBackRevision(bench, wish), await bringBackRevision(bench, wish)];
  expect(answers).toEqual([1, 2].map(() => ({ ok: true, value: { version: version + 1 } })));
  const draft = await findDraft(db, rows);
  expect(draft?.cues).toEqual(first.cues);
  expect(draft?.content).toEqual({ ...first.content, corrections: [{ ...stated, revision: 2 }] });
  await publish(version + 1);
  const marks = await listRevisions(db, rows.lessonId);
  expect(marks.map(({ number }) => number)).toEqual([3, 2, 1]);
});
