/**
 * A raw transcript of forty minutes to a corrected, chaptered one: how many
 * decisions it takes. One decision is one thing that a teacher looks at and
 * answers: accept all, refuse one, move one, name another kind, set one that
 * is missing; take or leave a misheard word, the same words all alike at once.
 * Beside it stands the same work by hand: for each chapter its place, its
 * kind and its title, and each misheard place by itself.
 */
import { dictionary } from 'cmu-pronouncing-dictionary';
import { expect, test } from 'vitest';
import type { Chapter } from '#lib/chapters/chapter.ts';
import { NO_HABITS } from '#lib/chapters/openers.ts';
import { type ProposedChapter, proposeChapters } from '#lib/chapters/propose-chapters.ts';
import { prepareGlossary } from '#lib/glossary/glossary.ts';
import { findMisheard } from '#lib/glossary/misheard.ts';
import { createPronounce } from '#lib/glossary/spoken-word.ts';
import { TRADE_TERMS } from '#lib/glossary/trade-terms.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { readToldLesson } from '#tests/support/told-lessons.ts';

/** A beginning within this is the one that was meant; further off than a moment, it has to be moved. */
const SAME_WITHIN_MS = 45_000;
const RIGHT_WITHIN_MS = 3_000;

/** What whoever wrote the lesson put in on purpose, and what was meant. */
const MISHEARD: Readonly<Record<string, string>> = {
  'busy time': 'byzantine',
  gaze: 'gauge',
  'man drill': 'mandrel',
  analyzed: 'anodised',
  'lobster class': 'lobster clasp',
  players: 'pliers',
  'twist die': 'twist-tie',
};

interface Counted {
  readonly refused: number;
  readonly moved: number;
  readonly otherKind: number;
  readonly missing: number;
}

function chapterDecisions(proposed: readonly ProposedChapter[], meant: readonly Chapter[]): Counted {
  const open = new Set(meant);
  let [refused, moved, otherKind] = [0, 0, 0];
  for (const one of proposed) {
    const nearest = [...open].sort(
      (a, b) => Math.abs(a.startMs - one.startMs) - Math.abs(b.startMs - one.startMs),
    )[0];
    const off = nearest ? Math.abs(nearest.startMs - one.startMs) : Number.POSITIVE_INFINITY;
    if (!nearest || off > SAME_WITHIN_MS) {
      refused += 1;
      continue;
    }
    open.delete(nearest);
    if (off > RIGHT_WITHIN_MS) moved += 1;
    if (nearest.kind !== one.kind) otherKind += 1;
  }
  return { refused, moved, otherKind, missing: open.size };
}

/** Places that were put in on purpose, and how many different ones. */
function misheardByHand(cues: readonly Cue[]): { readonly places: number; readonly kinds: number } {
  const text = cues.map((cue) => cue.text.toLowerCase()).join(' ');
  const counts = Object.keys(MISHEARD).map((words) => text.split(words).length - 1);
  return { places: counts.reduce((sum, one) => sum + one, 0), kinds: counts.filter((one) => one > 0).length };
}

test('forty minutes, raw, to corrected and chaptered: fewer than half of the decisions by hand', () => {
  const told = readToldLesson('byzantine-forty-minutes');
  expect(told.durationMs).toBeGreaterThan(39 * 60_000);

  const proposals = proposeChapters({ ...told, chapters: [], refused: [], habits: NO_HABITS });
  const counted = chapterDecisions(proposals.forCount(proposals.suggested), told.chapters);
  // A chapter that is missing is set and given its kind.
  const chapters = 1 + counted.refused + counted.moved + counted.otherKind + 2 * counted.missing;

  const pronounce = createPronounce((word) => dictionary[word]);
  const suggestions = findMisheard(told.cues, prepareGlossary(TRADE_TERMS, pronounce), pronounce);
  const alike = new Map(
    suggestions.map(({ heard, instead }) => [`${heard.toLowerCase()} > ${instead.toLowerCase()}`, heard]),
  );
  const found = Object.keys(MISHEARD).filter((words) =>
    [...alike.values()].some((heard) => heard.toLowerCase().includes(words)),
  );
  const byHand = misheardByHand(told.cues);
  // What was not found is mended with one search and replacement.
  const words = alike.size + (byHand.kinds - found.length);

  const decisions = chapters + words;
  const all = 3 * told.chapters.length + byHand.places;
  console.log(
    [
      `40 minutes, ${told.cues.length} cues, ${told.chapters.length} chapters, ${byHand.places} misheard places of ${byHand.kinds} sorts`,
      `  chapters: accept all 1, refuse ${counted.refused}, move ${counted.moved}, other kind ${counted.otherKind}, set ${counted.missing} missing: ${chapters}`,
      `  words: ${suggestions.length} suggestions of ${alike.size} sorts, ${byHand.kinds - found.length} sorts not found: ${words}`,
      `  together ${decisions} decisions; by hand ${all}`,
    ].join('\n'),
  );
  expect(decisions).toBeLessThan(all / 2);
});
