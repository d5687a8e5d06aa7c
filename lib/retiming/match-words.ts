/**
 * Matches the words of cues with those of a transcript of another take: what
 * was said again, in other words here and there, at another pace.
 */
import { diffArrays } from 'diff';
import { unitsOf } from '#lib/lesson/replace-value.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { offsetToMs } from '#lib/transcript/word-times.ts';

/** The same word in both takes, ms. */
export interface Anchor {
  readonly oldMs: number;
  readonly newMs: number;
}

export interface MatchedWords {
  /** In order of time in both takes. */
  readonly anchors: readonly Anchor[];
  /** For cues of the new take, by their place: the old cue that says the same. Each old cue is there once at most. */
  readonly same: ReadonlyMap<number, Cue>;
}

interface Word {
  readonly key: string;
  readonly ms: number;
  /** Place of its cue. */
  readonly cue: number;
}

/** A cue says the same as another where so much of the shorter one is found in the other. */
const ENOUGH = 0.5;
/** So many words that differ are two texts, not two takes: looking on would take long. */
const MOST_DIFFERENT = 6_000;

export function matchWords(old: readonly Cue[], heard: readonly Cue[]): MatchedWords {
  const before = wordsOf(old);
  const now = wordsOf(heard);
  const pairs = pairsOf(before, now);
  const anchors: Anchor[] = [];
  const shared = new Map<string, number>();
  for (const [one, other] of pairs) {
    const last = anchors.at(-1);
    if (!last || (one.ms > last.oldMs && other.ms > last.newMs))
      anchors.push({ oldMs: one.ms, newMs: other.ms });
    const key = `${one.cue} ${other.cue}`;
    shared.set(key, (shared.get(key) ?? 0) + 1);
  }
  return { anchors, same: pairCues(shared, old, heard, countsOf(before), countsOf(now)) };
}

const wordsOf = (cues: readonly Cue[]): readonly Word[] =>
  cues.flatMap((cue, at) =>
    unitsOf(cue.text).map(({ key, start }): Word => ({ key, ms: offsetToMs(cue, start), cue: at })),
  );

/** The longest common row of words (Myers 1986). */
function pairsOf(before: readonly Word[], now: readonly Word[]): readonly (readonly [Word, Word])[] {
  const parts = diffArrays([...before], [...now], {
    comparator: (one, other) => one.key === other.key,
    maxEditLength: MOST_DIFFERENT,
  });
  const pairs: [Word, Word][] = [];
  let [i, j] = [0, 0];
  for (const { added, removed, count } of parts ?? []) {
    for (let k = 0; !added && !removed && k < count; k += 1) {
      const [one, other] = [before[i + k], now[j + k]];
      if (one && other) pairs.push([one, other]);
    }
    if (!added) i += count;
    if (!removed) j += count;
  }
  return pairs;
}

const countsOf = (words: readonly Word[]): ReadonlyMap<number, number> => {
  const counts = new Map<number, number>();
  for (const { cue } of words) counts.set(cue, (counts.get(cue) ?? 0) + 1);
  return counts;
};

/** The cues that share most words first; each is taken once. */
function pairCues(
  shared: ReadonlyMap<string, number>,
  old: readonly Cue[],
  heard: readonly Cue[],
  before: ReadonlyMap<number, number>,
  now: ReadonlyMap<number, number>,
): ReadonlyMap<number, Cue> {
  const found = [...shared]
    .map(([key, count]) => {
      const [one = 0, other = 0] = key.split(' ').map(Number);
      return { one, other, count, least: Math.min(before.get(one) ?? 0, now.get(other) ?? 0) };
    })
    .filter(({ count, least }) => count >= ENOUGH * least)
    .toSorted((a, b) => b.count - a.count || a.one - b.one);
  const same = new Map<number, Cue>();
  const taken = new Set<number>();
  for (const { one, other } of found) {
    const cue = old[one];
    if (!cue || !heard[other] || taken.has(one) || same.has(other)) continue;
    taken.add(one);
    same.set(other, cue);
  }
  return same;
}
