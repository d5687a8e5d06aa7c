/**
 * Where a transcript may hold a misheard term. Nothing is ever changed here:
 * what comes out are suggestions, each with its reason, for a person to take
 * or leave. How much a place may differ in sound is decided in belief.ts.
 */
import type { Cue } from '#lib/transcript/cue.ts';
import { roomFor, widestAt } from './belief.ts';
import type { Glossary } from './glossary.ts';
import { findRight, type HeardWord, type RightAt } from './right-words.ts';
import { inOneBreath, type Pronounce } from './spoken-word.ts';
import type { Reason, SuggestedPart, Suggestion } from './suggestion.ts';
import { type Hit, soundText } from './term-index.ts';
import { talkAround } from './trade-talk.ts';

interface Candidate {
  readonly from: number;
  readonly to: number;
  readonly term: number;
  readonly written: string;
  readonly reason: Reason;
  readonly distance: number;
  /** Room left under the limit; the more, the better. */
  readonly room: number;
  /** Words of the term. */
  readonly explains: number;
}

/** Words that run over between cues have to follow each other this closely, ms. */
const RUN_OVER_MS = 2_000;

/** Suggestions in order of time. Linear in the length of the transcript. */
export function findMisheard(
  cues: readonly Pick<Cue, 'id' | 'text' | 'startMs' | 'endMs'>[],
  glossary: Glossary,
  pronounce: Pronounce,
): readonly Suggestion[] {
  const words = inOneBreath(
    cues.flatMap(({ text }, cue) => pronounce(text).map((word): HeardWord => ({ ...word, cue }))),
  );
  const rightAt = findRight(words, glossary);
  const talk = talkAround(words.length, rightAt, glossary.weights);
  const candidates = [
    ...bySound(words, cues, glossary, rightAt, talk),
    ...byConfusion(words, glossary, rightAt),
  ];
  return withoutOverlap(candidates).flatMap((one) => asSuggestion(one, words, cues, glossary) ?? []);
}

function bySound(
  words: readonly HeardWord[],
  cues: readonly Pick<Cue, 'text' | 'startMs' | 'endMs'>[],
  glossary: Glossary,
  rightAt: RightAt,
  talk: Float64Array,
): readonly Candidate[] {
  const text = soundText(words);
  const candidateOf = (from: number, { entry: at, to, cost }: Hit): Candidate | null => {
    const entry = glossary.index.entries[at];
    if (!entry || to - from > entry.words.length + 3) return null;
    const sounds = (text.begins[to] ?? 0) - (text.begins[from] ?? 0);
    const distance = cost / Math.max(entry.sounds.length, sounds);
    const here = words.slice(from, to);
    if (!mayBeWrong(rightAt, here, from, entry.term, entry.words) || !runsTogether(here, cues)) return null;
    const room = roomFor(here, entry, distance, talk[from] ?? 0);
    if (room < 0) return null;
    const { term, written } = entry;
    return { from, to, term, written, reason: 'sound', distance, room, explains: entry.words.length };
  };
  return words.flatMap((_, from) => {
    const best = new Map<number, Candidate>();
    for (const hit of glossary.index.hitsAt(text, from, widestAt(talk[from] ?? 0))) {
      const one = candidateOf(from, hit);
      const known = best.get(hit.to);
      if (one && !(known && known.distance <= one.distance)) best.set(hit.to, one);
    }
    return [...best.values()];
  });
}

/**
 * Words that are right as they stand are left alone: a name of several words
 * is not cut into, and a right word may only be part of a longer term.
 */
function mayBeWrong(
  rightAt: RightAt,
  here: readonly HeardWord[],
  from: number,
  term: number,
  wanted: readonly string[],
): boolean {
  const rights = here.map((_, at) => rightAt[from + at]);
  if (rights.every((right) => right)) return false;
  return rights.every(
    (right, at) =>
      !right || (right.term !== term && right.to - right.from === 1 && wanted.includes(here[at]?.word ?? '')),
  );
}

/** No sentence ends inside, and what runs over into the next cue follows at once. */
function runsTogether(
  here: readonly HeardWord[],
  cues: readonly Pick<Cue, 'text' | 'startMs' | 'endMs'>[],
): boolean {
  return here.slice(1).every((word, at) => {
    const former = here[at];
    const [one, other] = [cues[former?.cue ?? 0], cues[word.cue]];
    if (!former || !one || !other) return false;
    const between =
      former.cue === word.cue
        ? other.text.slice(former.end, word.start)
        : one.text.slice(former.end) + other.text.slice(0, word.start);
    return (
      !/[.!?;:]/.test(between) &&
      (former.cue === word.cue || (word.cue === former.cue + 1 && other.startMs - one.endMs <= RUN_OVER_MS))
    );
  });
}

function byConfusion(
  words: readonly HeardWord[],
  glossary: Glossary,
  rightAt: RightAt,
): readonly Candidate[] {
  const wordsOfTerm = (term: number): readonly string[] =>
    (glossary.terms[term]?.term ?? '').toLowerCase().split(/[\s-]+/);
  return words.flatMap((first, from) =>
    (glossary.confusions.get(first.word) ?? [])
      .filter((one) => {
        const to = from + one.words.length;
        const around = (at: number): string => words[at]?.word ?? '';
        return (
          one.words.every((word, at) => around(from + at) === word) &&
          mayBeWrong(rightAt, words.slice(from, to), from, one.term, wordsOfTerm(one.term)) &&
          (one.after.size === 0 || one.after.has(around(from - 1))) &&
          (one.before.size === 0 || one.before.has(around(to))) &&
          (one.near.size === 0 ||
            words.slice(Math.max(0, from - 12), to + 12).some(({ word }) => one.near.has(word)))
        );
      })
      .map((one) => ({
        from,
        to: from + one.words.length,
        term: one.term,
        written: one.taken ?? glossary.terms[one.term]?.term ?? '',
        reason: one.taken === null ? ('known confusion' as const) : ('taken before' as const),
        distance: 0,
        room: one.taken === null ? 0.1 : 0.2,
        explains: one.words.length,
      })),
  );
}

/** The surer the better, and of equally sure ones the one that explains more words. */
const merit = ({ room, from, to, explains }: Candidate): number =>
  room + 0.02 * Math.min(explains, to - from);

/** The best of those that lie over each other, in order of place. */
function withoutOverlap(candidates: readonly Candidate[]): readonly Candidate[] {
  const taken = new Set<number>();
  const kept: Candidate[] = [];
  const best = candidates.toSorted((a, b) => merit(b) - merit(a) || a.distance - b.distance);
  for (const one of best) {
    const places = Array.from({ length: one.to - one.from }, (_, at) => one.from + at);
    if (places.some((at) => taken.has(at))) continue;
    for (const at of places) taken.add(at);
    kept.push(one);
  }
  return kept.sort((a, b) => a.from - b.from);
}

function asSuggestion(
  { from, to, term, written, reason, distance }: Candidate,
  words: readonly HeardWord[],
  cues: readonly Pick<Cue, 'id' | 'text'>[],
  glossary: Glossary,
): Suggestion | null {
  const here = words.slice(from, to);
  const instead = withCase(written, here, cues);
  const parts = partsOf(here, instead, cues);
  if (!parts) return null;
  const heard = parts
    .map(({ start, end }, at) => cues[(here[0]?.cue ?? 0) + at]?.text.slice(start, end) ?? '')
    .join(' ')
    .replace(/\s+/g, ' ');
  return {
    id: `${parts[0]?.cueId} ${parts[0]?.start} ${heard} ${instead}`,
    heard,
    instead,
    term: glossary.terms[term]?.term ?? '',
    reason,
    distance,
    parts,
  };
}

/** A capital where the sentence begins. */
function withCase(written: string, here: readonly HeardWord[], cues: readonly Pick<Cue, 'text'>[]): string {
  const first = here[0];
  const letter = first ? (cues[first.cue]?.text.charAt(first.start) ?? '') : '';
  const small = letter === letter.toLowerCase();
  return small ? written : written.charAt(0).toUpperCase() + written.slice(1);
}

/** One stretch; two where it runs over and the words can be shared out one to one; else null. */
function partsOf(
  here: readonly HeardWord[],
  instead: string,
  cues: readonly Pick<Cue, 'id'>[],
): readonly SuggestedPart[] | null {
  const [first, last] = [here[0], here.at(-1)];
  if (!first || !last) return null;
  const stretch = (words: readonly HeardWord[], text: string): SuggestedPart => ({
    cueId: cues[words[0]?.cue ?? 0]?.id ?? '',
    start: words[0]?.start ?? 0,
    end: words.at(-1)?.end ?? 0,
    instead: text,
  });
  if (first.cue === last.cue) return [stretch(here, instead)];
  const told = instead.split(/(?<=-)|\s+/);
  if (told.length !== here.length) return null;
  const before = here.filter(({ cue }) => cue === first.cue);
  const joined = (pieces: readonly string[]): string => pieces.join(' ').replaceAll('- ', '-');
  return [
    stretch(before, joined(told.slice(0, before.length)).replace(/-$/, '')),
    stretch(here.slice(before.length), joined(told.slice(before.length))),
  ];
}
