/** A correction in plain sentences. */
import type { Correction } from '#lib/lesson/content.ts';

/** What was wrong, what is right, whom it concerns, and whether kits change. */
export const correctionSentences = ({ wrong, right, affects, kitsChange }: Correction): readonly string[] => [
  `Wrong: ${wrong.trim()}`,
  `Right: ${right.trim()}`,
  ...(affects.trim() === '' ? [] : [concernsWords(affects)]),
  kitsChange ? 'Kits change: see your kit on the lesson page.' : 'Kits stay as they are.',
];

/** Whom it concerns, with the full stop that is seldom typed: sentences follow. */
export const closed = (affects: string): string =>
  affects.trim() === '' ? '' : affects.trim().replace(/(?<![.!?…。]["'”’»)]*)$/, '.');

/** `Concerns: everyone.`; empty where nothing is said. */
export const concernsWords = (affects: string): string =>
  affects.trim() === '' ? '' : `Concerns: ${closed(affects)}`;
