/**
 * Which kind each chapter of a lesson may be, from what is said in it and from
 * its place, with the words that speak for it. Chapters are judged together: a
 * lesson opens once, closes once, and mostly keeps the usual order.
 */
import { CHAPTER_KINDS, type ChapterKind } from './chapter.ts';
import { KIND_SIGNS } from './kind-signs.ts';

export interface ProposedKind {
  readonly kind: ChapterKind;
  /** Words of the chapter that speak for it, the strongest first; none where only its place does. */
  readonly said: readonly string[];
  /** Where its place speaks for it. */
  readonly place: 'first' | 'last' | null;
}

/** The usual order; materials and terms may come either way round. */
const RANK: Readonly<Record<ChapterKind, number>> = {
  opening: 0,
  materials: 1,
  terms: 1,
  setup: 2,
  'repeat unit': 3,
  finishing: 4,
  clasp: 5,
  variation: 6,
  closing: 7,
};
/** The first sentences of a chapter say what it is about. */
const FIRST_SENTENCES = 2;
const FIRST_COUNTS = 1.6;
/** What the teacher has given outweighs whatever is heard. */
const GIVEN_NATS = 1e6;
/** The most reasons that are named. */
const MOST_SAID = 3;

/**
 * `chapters` holds each chapter's sentences, in order of time; `known` the
 * kinds that the teacher has given already, null for the others.
 */
export function proposeKinds(
  chapters: readonly (readonly HeardSentence[])[],
  known: readonly (ChapterKind | null)[] = [],
): readonly ProposedKind[] {
  const heard = chapters.map(hear);
  const kinds = likeliest(heard, known);
  return kinds.map((kind, index) => ({
    kind,
    said: strongest(heard[index], kind),
    place:
      kind === 'opening' && index === 0
        ? 'first'
        : kind === 'closing' && index === chapters.length - 1
          ? 'last'
          : null,
  }));
}

interface Heard {
  /** What the words say for each kind, nats, in the order of CHAPTER_KINDS. */
  readonly nats: readonly number[];
  /** For each kind, wordings with what each told. */
  readonly said: readonly ReadonlyMap<string, number>[];
}

/** What one sentence says. */
export interface HeardSentence {
  /** For each kind, nats, in the order of CHAPTER_KINDS: the strongest wording of each counts. */
  readonly nats: readonly number[];
  /** The wordings found. */
  readonly said: readonly { readonly kind: ChapterKind; readonly words: string; readonly nats: number }[];
}

/** What a sentence says for kinds of chapter; `words` as `wordsOf` gives them. */
export function hearSentence(words: readonly string[]): HeardSentence {
  const text = ` ${words.join(' ')} `;
  const nats = CHAPTER_KINDS.map(() => 0);
  const said: HeardSentence['said'][number][] = [];
  for (const sign of KIND_SIGNS) {
    const found = text.match(sign.words);
    if (!found) continue;
    const at = CHAPTER_KINDS.indexOf(sign.kind);
    nats[at] = Math.max(nats[at] ?? 0, sign.nats);
    for (const one of found) said.push({ kind: sign.kind, words: one.trim(), nats: sign.nats });
  }
  return { nats, said };
}

/** Adds up what is said for each kind. In a long chapter a sentence tells less: their number is taken by the root. */
function hear(sentences: readonly HeardSentence[]): Heard {
  const said = CHAPTER_KINDS.map(() => new Map<string, number>());
  const nats = CHAPTER_KINDS.map(() => 0);
  sentences.forEach((sentence, index) => {
    const counts = index < FIRST_SENTENCES ? FIRST_COUNTS : 1;
    sentence.nats.forEach((one, kind) => {
      nats[kind] = (nats[kind] ?? 0) + one * counts;
    });
    for (const { kind, words, nats: one } of sentence.said) {
      const known = said[CHAPTER_KINDS.indexOf(kind)];
      known?.set(words, (known.get(words) ?? 0) + one * counts);
    }
  });
  const length = Math.sqrt(Math.max(1, sentences.length));
  return { nats: nats.map((sum) => sum / length), said };
}

/** The row of kinds that fits best what was heard, and the order of lessons (Viterbi). */
function likeliest(heard: readonly Heard[], known: readonly (ChapterKind | null)[]): readonly ChapterKind[] {
  const last = heard.length - 1;
  let former: readonly number[] = [];
  const back: number[][] = [];
  heard.forEach(({ nats }, index) => {
    const from: number[] = [];
    former = CHAPTER_KINDS.map((kind, at) => {
      const given = known[index] ?? kind;
      const own = (nats[at] ?? 0) + placeNats(kind, index, last) - (given === kind ? 0 : GIVEN_NATS);
      if (index === 0) return own;
      let best = Number.NEGATIVE_INFINITY;
      CHAPTER_KINDS.forEach((before, beforeAt) => {
        const sum = (former[beforeAt] ?? 0) + orderNats(before, kind);
        if (sum > best) {
          best = sum;
          from[at] = beforeAt;
        }
      });
      return own + best;
    });
    back.push(from);
  });
  const kinds: ChapterKind[] = [];
  let at = former.indexOf(Math.max(...former));
  for (let index = last; index >= 0; index--) {
    kinds.push(CHAPTER_KINDS[at] ?? 'setup');
    at = back[index]?.[at] ?? 0;
  }
  return kinds.reverse();
}

/** What a chapter's place says for a kind. */
function placeNats(kind: ChapterKind, index: number, last: number): number {
  if (kind === 'opening') return index === 0 ? 3 : -6;
  if (kind === 'closing') return index === last && last > 0 ? 3 : -5;
  return 0;
}

/** What the chapter before says for a kind: onward is usual, a step back is not, the same again is rare. */
function orderNats(before: ChapterKind, kind: ChapterKind): number {
  const steps = RANK[kind] - RANK[before];
  if (kind === before) return kind === 'repeat unit' || kind === 'setup' || kind === 'variation' ? -0.7 : -2;
  if (steps < 0) return -1.5;
  return steps > 2 ? -0.5 * (steps - 2) : 0;
}

function strongest(heard: Heard | undefined, kind: ChapterKind): readonly string[] {
  const said = heard?.said[CHAPTER_KINDS.indexOf(kind)] ?? new Map<string, number>();
  return [...said]
    .sort(([one, a], [other, b]) => b - a || (one < other ? -1 : 1))
    .slice(0, MOST_SAID)
    .map(([words]) => words);
}
