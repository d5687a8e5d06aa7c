/**
 * Changes that were made in one window and are not acknowledged yet: what is
 * on its way, what waits, and what happens to both when somebody else saved
 * first. Changes that touch other keys than theirs are laid on top of the
 * newer draft; the rest collide, and a person decides. Nothing here sends.
 */
import { applyChange, type Change, type Draft, keysOf } from './change.ts';

/** Changes on their way under one id: sent again with the same id until there is an answer. */
export interface Sending {
  readonly saveId: string;
  readonly changes: readonly Change[];
}

export interface Pending {
  /** The version that the changes stand on. */
  readonly version: number;
  readonly sending: Sending | null;
  readonly waiting: readonly Change[];
}

/** What others touched in the meantime; `everything` where it is not known. */
export type Touched = ReadonlySet<string> | 'everything';

/** Own changes that hang together and meet something that others touched too. */
export interface Collision {
  /** Every key of the own changes that stand or fall together. */
  readonly keys: readonly string[];
  /** Those of them that others touched. */
  readonly met: readonly string[];
}

export const nothingPending = (version: number): Pending => ({ version, sending: null, waiting: [] });

/** Whether every change was acknowledged. */
export const isSettled = (pending: Pending): boolean => !pending.sending && pending.waiting.length === 0;

/** All changes that are not acknowledged, oldest first. */
export const unacknowledged = (pending: Pending): readonly Change[] => [
  ...(pending.sending?.changes ?? []),
  ...pending.waiting,
];

/** Puts further changes into the queue. */
export const addPending = (pending: Pending, changes: readonly Change[]): Pending => ({
  ...pending,
  waiting: condense([...pending.waiting, ...changes]),
});

/** Sends what waits, under an id; nothing changes where something is on its way already. */
export const startSending = (pending: Pending, saveId: string): Pending =>
  pending.sending || pending.waiting.length === 0
    ? pending
    : { ...pending, sending: { saveId, changes: pending.waiting }, waiting: [] };

/** What was on its way has arrived and made this version. */
export const acknowledge = (pending: Pending, version: number): Pending => ({
  ...pending,
  version,
  sending: null,
});

/** What was on its way was not written: it waits again, on this version, and will go under a new id. */
export const sendAgain = (pending: Pending, version: number): Pending => ({
  version,
  sending: null,
  waiting: condense(unacknowledged(pending)),
});

/** The draft with changes made on it, in order. */
export const layOn = (draft: Draft, changes: readonly Change[]): Draft => changes.reduce(applyChange, draft);

/**
 * Groups of own changes that meet what others touched. Two changes belong to
 * one group when they share a key, since one of them alone would leave half a
 * deed behind: a split without its second half.
 */
export function collisionsOf(mine: readonly Change[], touched: Touched): readonly Collision[] {
  const met = (key: string) => touched === 'everything' || touched.has(key);
  return groupsOf(mine)
    .map((keys) => ({ keys, met: keys.filter(met) }))
    .filter((group) => group.met.length > 0);
}

/** Own changes without those that touch any of these keys. */
export const withoutKeys = (mine: readonly Change[], keys: ReadonlySet<string>): readonly Change[] =>
  mine.filter((made) => !keysOf(made).some((key) => keys.has(key)));

function groupsOf(changes: readonly Change[]): readonly (readonly string[])[] {
  const parent = new Map<string, string>();
  const rootOf = (key: string): string => {
    let root = key;
    for (let up = parent.get(root); up !== undefined && up !== root; up = parent.get(root)) root = up;
    return root;
  };
  for (const made of changes) {
    const keys = keysOf(made);
    for (const key of keys) if (!parent.has(key)) parent.set(key, key);
    const first = keys[0];
    if (first === undefined) continue;
    const root = rootOf(first);
    for (const key of keys) parent.set(rootOf(key), root);
  }
  const groups = new Map<string, string[]>();
  for (const key of parent.keys()) {
    const root = rootOf(key);
    groups.set(root, [...(groups.get(root) ?? []), key]);
  }
  return [...groups.values()];
}

/**
 * Fewer changes with the same outcome: what a later change overwrites whole
 * is left out, so that typing a sentence is saved as one change. Changes that
 * share keys stay linked, as `collisionsOf` needs.
 */
export function condense(changes: readonly Change[]): readonly Change[] {
  const kept: Change[] = [];
  // From the last to the first, since a later change makes earlier ones needless.
  const later: { readonly kind: Change['kind']; readonly keys: ReadonlySet<string> }[] = [];
  for (const made of changes.toReversed()) {
    const keys = keysOf(made);
    const next = kept.at(-1);
    const merged = next && mergePuts(made, next);
    if (merged) kept[kept.length - 1] = merged;
    else if (!isOverwritten(made, keys, later)) {
      kept.push(made);
      if (made.kind === 'cues' || made.kind === 'set') later.push({ kind: made.kind, keys: new Set(keys) });
    }
  }
  return kept.toReversed();
}

const isOverwritten = (
  made: Change,
  keys: readonly string[],
  later: readonly { readonly kind: Change['kind']; readonly keys: ReadonlySet<string> }[],
): boolean =>
  (made.kind === 'cues' || made.kind === 'set') &&
  later.some((other) => other.kind === made.kind && keys.every((key) => other.keys.has(key)));

/** Two puts of one item, one straight after the other, as one; null where they are something else. */
function mergePuts(made: Change, next: Change): Change | null {
  if (made.kind !== 'put' || next.kind !== 'put') return null;
  if (made.list !== next.list || made.item.id !== next.item.id) return null;
  const index = next.index ?? made.index;
  return { kind: 'put', list: next.list, item: next.item, ...(index === undefined ? {} : { index }) };
}
