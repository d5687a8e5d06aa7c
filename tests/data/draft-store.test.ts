import { randomUUID } from 'node:crypto';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Keep } from '#app/bench/[workshop]/lessons/[lesson]/draft-keep.ts';
import { createDraftStore } from '#app/bench/[workshop]/lessons/[lesson]/draft-store.ts';
import type { SaveAnswer, ServerDraft } from '#app/bench/[workshop]/lessons/[lesson]/send-save.ts';
import { type Change, keysOf } from '#lib/lesson/change.ts';
import { emptyContent } from '#lib/lesson/content.ts';
import { layOn, type Pending, type Sending } from '#lib/lesson/pending.ts';
import { someCues } from '#tests/support/a-lesson.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

/** A server in memory that answers as lib/bench/save-draft.ts does. */
function aServer() {
  let draft: ServerDraft = { version: 1, content: emptyContent('Box chain', 'en', 'EUR'), cues: someCues(4) };
  const saves: { saveId: string; version: number; keys: string[]; by: string }[] = [];
  const save = (by: string, baseVersion: number, { saveId, changes }: Sending): SaveAnswer => {
    const known = saves.find((one) => one.saveId === saveId);
    if (known) return { kind: 'saved', version: known.version };
    if (baseVersion !== draft.version) {
      const since = saves.filter((one) => one.version > baseVersion);
      const told = since.map((one) => ({ ...one, own: one.by === by, at: '2026-03-04T10:00:00.000Z' }));
      return { kind: 'newer', newer: draft, saves: told };
    }
    draft = { ...layOn(draft, changes), version: draft.version + 1 };
    saves.push({ saveId, version: draft.version, keys: changes.flatMap((made) => keysOf(made)), by });
    return { kind: 'saved', version: draft.version };
  };
  return { save, draft: () => draft, saves: () => saves };
}

function aWindow(server: ReturnType<typeof aServer>, by: string, left: readonly Pending[] = []) {
  const line = { up: true, losesAnswers: false };
  let kept: Pending | null = null;
  const keep: Keep = {
    write: (pending) => {
      kept = pending;
    },
    findLeft: async () => left.map((pending) => ({ pending, forget: () => undefined })),
  };
  const store = createDraftStore({
    draft: server.draft(),
    mayEdit: true,
    keep,
    send: async (version, sending) => {
      if (!line.up) return { kind: 'not-reached' };
      const answer = server.save(by, version, sending);
      return line.losesAnswers ? { kind: 'not-reached' } : answer;
    },
    load: async () => server.draft(),
    newId: randomUUID,
    nowMs: () => 0,
  });
  return { store, line, kept: () => kept };
}

const title = (value: string): Change => ({ kind: 'set', field: 'title', value });
const mend = (at: number, text: string): Change => ({
  kind: 'cues',
  put: someCues(4).flatMap((cue, index) => (index === at ? [{ ...cue, text }] : [])),
  remove: [],
});
const settle = () => vi.advanceTimersByTimeAsync(120_000);

test('what is changed in quick succession is saved once, and kept until then', async () => {
  const server = aServer();
  const { store, kept } = aWindow(server, 'Ilo');
  store.change([title('Byz')], 'title');
  store.change([title('Byzantine')], 'title');
  expect(store.getState()).toMatchObject({ saveState: 'unsaved', undoLabel: 'title' });
  expect(kept()?.waiting).toEqual([title('Byzantine')]);
  await settle();
  expect(server.saves()).toHaveLength(1);
  expect(server.draft().content.title).toBe('Byzantine');
  expect(store.getState().saveState).toBe('saved');
  expect(kept()).toBeNull();
});

test('a lost answer costs nothing: the same save is sent again and written once', async () => {
  const server = aServer();
  const { store, line } = aWindow(server, 'Ilo');
  line.losesAnswers = true;
  store.change([title('Once')], 'title');
  await vi.advanceTimersByTimeAsync(1_000);
  expect(store.getState().saveState).toBe('offline');
  store.change([mend(0, 'Then this.')], 'mend text');
  line.losesAnswers = false;
  await settle();
  expect(server.saves().map((save) => save.version)).toEqual([2, 3]);
  expect(server.draft().content.title).toBe('Once');
  expect(store.getState()).toMatchObject({ saveState: 'saved', version: 3 });
});

test('others changed other things: both stand, a note says who, and own steps can still be taken back', async () => {
  const server = aServer();
  const [ilo, mara] = [aWindow(server, 'Ilo'), aWindow(server, 'Mara')];
  ilo.store.change([mend(1, 'Ilo.')], 'mend text');
  await settle();
  mara.store.change([mend(2, 'Mara.')], 'mend text');
  await settle();
  expect(mara.store.getState().note).toEqual({ kind: 'taken-in', by: ['Ilo'], ownWindow: false });
  expect(
    server
      .draft()
      .cues.map((cue) => cue.text)
      .slice(1, 3),
  ).toEqual(['Ilo.', 'Mara.']);
  mara.store.undo();
  await settle();
  expect(
    server
      .draft()
      .cues.map((cue) => cue.text)
      .slice(1, 3),
  ).toEqual(['Ilo.', 'Sentence 3.']);
});

describe('others changed the same thing', () => {
  async function collided() {
    const server = aServer();
    const [ilo, mara] = [aWindow(server, 'Ilo'), aWindow(server, 'Mara')];
    ilo.store.change([mend(1, 'Ilo.')], 'mend text');
    await settle();
    mara.store.change([mend(1, 'Mara.'), title('Also mine')], 'mend text');
    await settle();
    return { server, ...mara };
  }

  test('nothing is written and both are kept until it is decided', async () => {
    const { server, store, kept } = await collided();
    expect(store.getState().saveState).toBe('collided');
    expect(store.getState().collided?.collisions).toEqual([
      { keys: ['cue/cue-00001'], met: ['cue/cue-00001'] },
    ]);
    expect(server.draft().content.title).toBe('Box chain');
    expect(kept()).not.toBeNull();
  });

  test.each([
    ['mine', new Set<number>(), 'Mara.'],
    ['theirs', new Set([0]), 'Ilo.'],
  ])('%s is kept, and what met nothing is saved in either case', async (_, keepTheirs, text) => {
    const { server, store } = await collided();
    store.resolve(keepTheirs);
    await settle();
    expect(server.draft().cues[1]?.text).toBe(text);
    expect(store.getState().cues).toEqual(server.draft().cues);
    expect(server.draft().content.title).toBe('Also mine');
  });
});

describe('a window that is gone left changes behind', () => {
  test('they are taken up, saved, and can be undone', async () => {
    const server = aServer();
    const { store } = aWindow(server, 'Ilo', [{ version: 1, sending: null, waiting: [title('Kept')] }]);
    await store.start();
    expect(store.getState()).toMatchObject({
      note: { kind: 'taken-up', count: 1 },
      content: { title: 'Kept' },
    });
    await settle();
    expect(server.draft().content.title).toBe('Kept');
    store.undo();
    await settle();
    expect(server.draft().content.title).toBe('Box chain');
  });

  test('one that had arrived after all does not undo what others did since', async () => {
    const server = aServer();
    const sending = { saveId: randomUUID(), changes: [title('Arrived')] };
    server.save('Ilo', 1, sending);
    server.save('Mara', 2, { saveId: randomUUID(), changes: [title('Since then')] });
    const { store } = aWindow(server, 'Ilo', [{ version: 1, sending, waiting: [mend(0, 'Waited.')] }]);
    await store.start();
    await settle();
    expect(server.draft().content.title).toBe('Since then');
    expect(server.draft().cues[0]?.text).toBe('Waited.');
    expect(store.getState()).toMatchObject({ saveState: 'saved', content: { title: 'Since then' } });
  });
});
