/**
 * How much a sentence sounds like the first one of something new: by the words
 * it opens with, by what it refers back to, and by how long nobody spoke
 * before it. A chapter of a lesson at the bench often goes on with the same
 * words as the one before, so how it is opened tells more than what it is about.
 */
import type { Span } from '#lib/time/time.ts';

/** A sentence with its words as `wordsOf` gives them. */
export interface Said extends Span {
  readonly words: readonly string[];
  readonly text: string;
}

/** How a workshop opens its chapters, counted in chapters that its teachers set. */
export interface Habits {
  /** How many chapters were looked at. */
  readonly chapters: number;
  /** Opening words (one to three, parted by spaces) and how many of the chapters open with them. */
  readonly openings: ReadonlyMap<string, number>;
  /** The workshop's usual length of a chapter, ms; null where it has too few. */
  readonly usualMs: number | null;
}

export const NO_HABITS: Habits = { chapters: 0, openings: new Map(), usualMs: null };

/** How many opening words a sentence is judged by. */
const HEAD = 6;
/** Sounds before the sentence proper. */
const FILLERS = new Set(['so', 'and', 'okay', 'ok', 'well', 'alright', 'um', 'uh', 'er', 'oh']);

/**
 * Signs with what they add, in nats, beside a sentence without any. Rounded
 * log odds of first sentences against all others, seen alike in step-by-step
 * recordings and in lectures (tests/standards/segmentation.test.ts reads half of them).
 */
const SIGNS: readonly { readonly nats: number; readonly when: (said: Head) => boolean }[] = [
  { nats: 0.7, when: ({ first }) => first === 'now' },
  {
    nats: 0.4,
    when: ({ first, phrase }) =>
      /^(?:next|finally|last|second|third)$/.test(first) || phrase.includes(' next '),
  },
  { nats: 0.4, when: ({ phrase }) => phrase.includes(' first ') },
  { nats: 0.4, when: ({ phrase }) => / (?:let's|let us|let me) /.test(phrase) },
  { nats: 0.4, when: ({ phrase }) => /^ (?:okay|ok|alright|all right) /.test(phrase) },
  { nats: 0.3, when: ({ first }) => /^(?:once|after|when|while|before)$/.test(first) },
  {
    nats: 0.5,
    when: ({ phrase }) =>
      / (?:going to|gonna|want to|i'll|we'll|i will|we will|go ahead|ready to|time to) /.test(phrase),
  },
  { nats: 0.4, when: ({ phrase }) => / (?:start|starting|begin) /.test(phrase) },
  { nats: 0.2, when: ({ first }) => first === 'then' },
  {
    nats: -0.7,
    when: ({ first, phrase }) =>
      /^(?:it|it's|its|that|that's|this|these|those|they|they're|he|she|because|but|or|if|yes|no|yeah|really|actually|just|which)$/.test(
        first,
      ) || /^ (?:(?:so|and) )?(?:you can|you could|you know|i think|i mean|i hope|thank you) /.test(phrase),
  },
  { nats: -0.4, when: ({ words }) => words[0] === 'and' },
  { nats: -0.3, when: ({ words }) => words.length < 5 },
  { nats: -0.3, when: ({ text }) => /\?\s*$/.test(text) },
];

interface Head {
  readonly words: readonly string[];
  readonly text: string;
  /** The first word that is no filler. */
  readonly first: string;
  /** The first six words, with a space before, between and behind. */
  readonly phrase: string;
}

/** Time that a word takes in easy speech, and that a sentence takes beside its words, ms. */
const WORD_MS = 330;
const SENTENCE_MS = 800;

/**
 * For each sentence, how much it sounds like a beginning, in nats; the first
 * one of all gets 0. `habits` are the workshop's own.
 */
export function openingNats(said: readonly Said[], habits: Habits): readonly number[] {
  const usual = habitNats(said, habits);
  return said.map((one, index) => {
    const before = said[index - 1];
    if (!before) return 0;
    const head = headOf(one);
    const signs = SIGNS.reduce((sum, { nats, when }) => (when(head) ? sum + nats : sum), 0);
    return 0.7 + signs + 0.3 * Math.log(1 + one.words.length) + restNats(before, one) + usual(one);
  });
}

function headOf({ words, text }: Said): Head {
  let at = 0;
  while (at < 2 && FILLERS.has(words[at] ?? '')) at += 1;
  return { words, text, first: words[at] ?? '', phrase: ` ${words.slice(0, HEAD).join(' ')} ` };
}

/** What the time since the former sentence began tells, beyond what its words take. */
function restNats(before: Said, now: Said): number {
  const sinceMs = Math.max(500, now.startMs - before.startMs);
  const wantedMs = before.words.length * WORD_MS + SENTENCE_MS;
  return 0.5 * Math.min(2, Math.max(-1, Math.log(sinceMs / wantedMs)));
}

/** Opening words of a sentence: its first one, two and three that are no fillers. */
export function openingsOf(words: readonly string[]): readonly string[] {
  let at = 0;
  while (at < 2 && FILLERS.has(words[at] ?? '')) at += 1;
  return [1, 2, 3]
    .filter((count) => at + count <= words.length)
    .map((count) => words.slice(at, at + count).join(' '));
}

/** The most that a habit adds, nats. */
const HABIT_AT_MOST = 3;
/** Fewer chapters tell nothing about a habit. */
const CHAPTERS_FOR_HABITS = 4;

/**
 * What the workshop's habits add: how much more often its chapters open with
 * these words than sentences of this transcript do. The strongest opening counts.
 */
function habitNats(said: readonly Said[], habits: Habits): (one: Said) => number {
  if (habits.chapters < CHAPTERS_FOR_HABITS) return () => 0;
  const here = new Map<string, number>();
  for (const { words } of said)
    for (const opening of openingsOf(words)) here.set(opening, (here.get(opening) ?? 0) + 1);
  return ({ words }) =>
    openingsOf(words).reduce((most, opening) => {
      const chapters = habits.openings.get(opening) ?? 0;
      if (chapters < 2) return most;
      const share = (chapters + 0.25) / (habits.chapters + 1);
      const usualShare = ((here.get(opening) ?? 0) + 0.5) / (said.length + 1);
      return Math.max(most, Math.min(HABIT_AT_MOST, Math.log(share / usualShare)));
    }, 0);
}
