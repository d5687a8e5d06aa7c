/**
 * Takes a move to a re-edited recording back. What nobody touched since is put
 * exactly where it was; what was changed or written since goes back with its
 * sound. What stands where only the new recording has sound is named as cut.
 */
import { z } from 'zod';
import { applyChange, type Change, change, type Draft, inverseOf, keysOf } from '#lib/lesson/change.ts';
import { draftChangesBetween } from '#lib/lesson/changes-between.ts';
import { SEQUENCE_PARTS } from '#lib/lesson/content.ts';
import { type Carried, type CutItem, carryOver } from './carry-over.ts';
import { type Edit, type EditList, editList } from './edit-list.ts';
import { retakesIn } from './retakes.ts';

/** What a move did, kept so that it can be taken back. */
export const move = z.object({
  /** As the person left it. */
  list: editList,
  made: z.array(change),
  /** Takes them back, in the order to be made. */
  back: z.array(change),
  /** What had a time and kept it: without it, what was written since could not be told from what was there. */
  stood: z.array(change),
});
export type Move = Readonly<z.infer<typeof move>>;

/** What is to be kept of changes that are about to be made on a draft. */
export function moveOf(draft: Draft, list: EditList, made: readonly Change[]): Move {
  let now = draft;
  const back: Change[] = [];
  for (const one of made) {
    back.unshift(inverseOf(now, one));
    now = applyChange(now, one);
  }
  return { list, made: [...made], back, stood: [...stoodAfter(draft, made)] };
}

function stoodAfter({ content, cues }: Draft, made: readonly Change[]): readonly Change[] {
  const moved = new Set(made.flatMap(keysOf));
  const items = (['chapters', ...SEQUENCE_PARTS, 'steps', 'corrections'] as const).flatMap((list) =>
    content[list]
      .filter(({ id }) => !moved.has(`${list}/${id}`))
      .map((item): Change => ({ kind: 'put', list, item: { ...item } })),
  );
  return [...items, { kind: 'cues', put: cues.filter(({ id }) => !moved.has(`cue/${id}`)), remove: [] }];
}

export interface TakenBack extends Pick<Carried, 'cut'> {
  /** Made on the draft, in order, they put it back on the old recording. */
  readonly changes: readonly Change[];
}

export function takeBack(draft: Draft, { list, made, back, stood }: Move): TakenBack {
  const inverted = invert(list);
  const wordsStay = new Set(retakesIn(inverted).map(({ cut }) => cut));
  const carried = carryOver(draft, inverted, { wordsStay });
  const untouched = untouchedSince(draft, [...stood, ...made]);
  const exact = back.flatMap((one) => onlyOf(one, untouched) ?? []).reduce(applyChange, draft);
  const bySound = carried.changes.flatMap((one) => onlyOf(one, (key) => !untouched(key)) ?? []);
  const now = inOrder(bySound.reduce(applyChange, exact), bySound);
  const cut = new Map(
    [...carried.cut].map(([at, items]) => [at, items.filter((item) => !untouched(keyOfCut(item)))] as const),
  );
  return { changes: draftChangesBetween(draft, now), cut };
}

function keyOfCut(item: CutItem): string {
  switch (item.of) {
    case 'cue':
      return `cue/${item.cue.id}`;
    case 'chapter':
      return `chapters/${item.chapter.id}`;
    case 'step':
      return `${item.list}/${item.id}`;
    case 'correction':
      return `corrections/${item.correction.id}`;
  }
}

/** Chapters in order of time, where one that was changed since went back with its sound. */
function inOrder(draft: Draft, bySound: readonly Change[]): Draft {
  if (!bySound.some((one) => one.kind === 'put' && one.list === 'chapters')) return draft;
  const chapters = draft.content.chapters.toSorted((one, other) => one.startMs - other.startMs);
  return { ...draft, content: { ...draft.content, chapters } };
}

/** The list as it reads from the new recording to the old one. */
function invert({ edits, oldMs, newMs, speed, pitchMoved }: EditList): EditList {
  const kinds = { kept: 'kept', moved: 'moved', cut: 'inserted', inserted: 'cut' } as const;
  const turned = edits.map((edit): Edit => ({ kind: kinds[edit.kind], old: edit.new, new: edit.old }));
  const ordered = turned.toSorted(
    (one, other) => one.new.startMs - other.new.startMs || one.new.endMs - other.new.endMs,
  );
  return { edits: ordered, oldMs: newMs, newMs: oldMs, speed: 1 / speed, pitchMoved };
}

/** Whether a key of the move holds now what the move made of it. */
function untouchedSince(draft: Draft, made: readonly Change[]): (key: string) => boolean {
  const after = new Map<string, unknown>();
  for (const one of made) {
    if (one.kind === 'put') after.set(`${one.list}/${one.item.id}`, one.item);
    if (one.kind === 'remove') after.set(`${one.list}/${one.id}`, null);
    if (one.kind !== 'cues') continue;
    for (const cue of one.put) after.set(`cue/${cue.id}`, cue);
    for (const id of one.remove) if (!one.put.some((cue) => cue.id === id)) after.set(`cue/${id}`, null);
  }
  const cues = new Map(draft.cues.map((cue) => [cue.id, cue]));
  return (key) => {
    if (!after.has(key)) return false;
    const [list = '', id = ''] = [key.slice(0, key.indexOf('/')), key.slice(key.indexOf('/') + 1)];
    const items = (draft.content as unknown as Record<string, readonly { readonly id: string }[]>)[list];
    const now = list === 'cue' ? cues.get(id) : items?.find((item) => item.id === id);
    return isAlike(now ?? null, after.get(key));
  };
}

/** Alike but for the order of their keys, which a database does not keep, and for absent ones. */
const isAlike = (one: unknown, other: unknown): boolean => inKeyOrder(one) === inKeyOrder(other);
const inKeyOrder = (value: unknown): string =>
  JSON.stringify(value, (_, inner: unknown) =>
    inner !== null && typeof inner === 'object' && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).toSorted(([one], [other]) => (one < other ? -1 : 1)))
      : inner,
  );

/** The part of a change that is about untouched keys; null where there is none. */
function onlyOf(one: Change, untouched: (key: string) => boolean): Change | null {
  switch (one.kind) {
    case 'set':
      return null;
    case 'put':
      return untouched(`${one.list}/${one.item.id}`) ? one : null;
    case 'remove':
      return untouched(`${one.list}/${one.id}`) ? one : null;
    case 'cues':
      return {
        kind: 'cues',
        put: one.put.filter(({ id }) => untouched(`cue/${id}`)),
        remove: one.remove.filter((id) => untouched(`cue/${id}`)),
      };
  }
}
