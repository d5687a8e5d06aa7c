/**
 * Texts whose parts others have set: joined news and stories (Choi 2000),
 * lectures, and spoken recipes with the steps that people marked. Read from
 * beside the repository; where they have no times, every word takes 0.4 s.
 */
import type { Unit } from '#lib/chapters/boundaries.ts';
import { outsideText } from './outside-cases.ts';
import { boundaryF1, lengthsOf, pk, windowDiff } from './segmentation-metrics.ts';

const WORD_MS = 400;

export interface SegmentedText {
  readonly units: readonly Unit[];
  /** Index of the first unit of each part. */
  readonly starts: readonly number[];
}

interface Row {
  readonly sents: readonly string[];
  readonly starts: readonly number[];
  /** When each sentence begins, s; only where it is known. */
  readonly t0?: readonly number[];
}

export const readSegmentedTexts = (name: string): readonly SegmentedText[] =>
  outsideText(`segmentation/${name}.jsonl`)
    .trim()
    .split('\n')
    .map((line) => textOf(JSON.parse(line) as Row));

function textOf({ sents, starts, t0 }: Row): SegmentedText {
  let at = 0;
  const units = sents.map((text, index) => {
    const spokenMs = text.split(/\s+/).length * WORD_MS;
    const startMs = t0 ? Math.round((t0[index] ?? 0) * 1_000) : at;
    const nextMs = t0?.[index + 1];
    at = startMs + spokenMs;
    return {
      text,
      startMs,
      endMs: nextMs === undefined ? at : Math.max(startMs, Math.round(nextMs * 1_000)),
    };
  });
  return { units, starts };
}

export type Parting = (text: SegmentedText) => readonly number[];

export interface Score {
  readonly pk: number;
  readonly windowDiff: number;
  /** Boundaries within two units, as F1. */
  readonly f1: number;
  /** Mean number of parts. */
  readonly parts: number;
}

/** Means over all texts. */
export function scoreOf(texts: readonly SegmentedText[], parting: Parting): Score {
  const scores = texts.map((text) => {
    const ours = lengthsOf(parting(text), text.units.length);
    const theirs = lengthsOf(text.starts, text.units.length);
    return {
      pk: pk(ours, theirs),
      windowDiff: windowDiff(ours, theirs),
      f1: boundaryF1(ours, theirs, 2).f1,
      parts: ours.length,
    };
  });
  const mean = (of: (score: Score) => number) =>
    scores.reduce((sum, one) => sum + of(one), 0) / scores.length;
  return {
    pk: mean((s) => s.pk),
    windowDiff: mean((s) => s.windowDiff),
    f1: mean((s) => s.f1),
    parts: mean((s) => s.parts),
  };
}

/** What anyone reaches without reading: no boundary, equal parts, parts at random (a fixed seed). */
export const PLAIN_ROWS: readonly (readonly [string, Parting])[] = [
  ['none', () => [0]],
  [
    'equal',
    ({ units, starts }) => starts.map((_, index) => Math.round((index * units.length) / starts.length)),
  ],
  ['random', randomParting()],
];

function randomParting(): Parting {
  // Mulberry32, so that the row is the same in every run.
  let seed = 20_26;
  const random = (): number => {
    seed = (seed + 0x6d2b79f5) | 0;
    let mixed = Math.imul(seed ^ (seed >>> 15), 1 | seed);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  return ({ units, starts }) => {
    const chosen = new Set([0]);
    while (chosen.size < starts.length) chosen.add(1 + Math.floor(random() * (units.length - 1)));
    return [...chosen].sort((a, b) => a - b);
  };
}

export const printScores = (title: string, rows: readonly (readonly [string, Score])[]): void => {
  console.log(`${title.padEnd(34)}    Pk    WD   F1±2  parts`);
  for (const [name, { pk: p, windowDiff: wd, f1, parts }] of rows)
    console.log(
      `  ${name.padEnd(32)} ${p.toFixed(3)} ${wd.toFixed(3)} ${f1.toFixed(3)} ${parts.toFixed(1).padStart(6)}`,
    );
};
