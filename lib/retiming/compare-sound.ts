/**
 * Compares the sound of a re-edited recording with the old one: which
 * stretches of the old are heard in the new, where, and at what speed. The
 * work is parted in short turns, so that whoever runs it stays reachable and
 * can leave off.
 */
import { type EditPoint, findEditPoint, type Side } from './edit-point.ts';
import { type Measure, type Measured, measureDistances } from './exact-distance.ts';
import { findLandmarks, HOP, type Landmarks } from './landmarks.ts';
import { type Compare, compareWaves, type Loudness } from './likeness.ts';
import { driftOf, type Line, lineThrough, median } from './line.ts';
import { findDistances, indexLandmarks, type LandmarkIndex } from './matches.ts';
import { BLOCK, findPath, type Stretch } from './path.ts';
import { atSpeed, RATE, type SampleSource } from './samples.ts';
import { findSpeed, type Speed } from './speed.ts';
import { AROUND, findUnlike } from './unlike.ts';

/** A stretch that both have, in samples; it runs evenly from its starts to its ends. */
export interface Shared {
  readonly oldStart: number;
  readonly oldEnd: number;
  readonly newStart: number;
  readonly newEnd: number;
}

export interface SoundComparison {
  /** In the order of the new recording; they do not overlap there. */
  readonly shared: readonly Shared[];
  /** Null where both run alike. */
  readonly speed: Speed | null;
  readonly oldLength: number;
  readonly newLength: number;
}

/** What is going on, and how far it is, 0 to 1. */
export interface Turn {
  readonly at: 'old sound' | 'new sound' | 'speed' | 'matching' | 'edit points';
  readonly done: number;
}

/** Lags tried where waves are compared, samples: half a millisecond, or 12 where a kept pitch made them uneven. */
const LAGS = 4;
const UNEVEN_LAGS = 96;
/** Drift beyond which the sound is evened anew: 3 ms a minute. */
const MOST_DRIFT = 0.000_05;
/** Speeds closer to 1 than this are those of two clocks, and not told. */
const ALIKE = 0.000_2;
/** Lines that differ by less where one follows the other are one line, samples (30 ms). */
const SAME_LINE = 240;
/** How far into a stretch its edit point is looked for, samples (6 s): a short insert may have gone unnoticed before. */
const LOOK = 6 * RATE;
/** Shared stretches shorter than this are chance, samples (0.7 s). */
const SHORTEST = 0.7 * RATE;
/** So alike is chance sound, where the best of some lags is taken. */
const CHANCE = 0.35;

export function* compareSound(old: SampleSource, heard: SampleSource): Generator<Turn, SoundComparison> {
  const oldMarks = yield* told('old sound', findLandmarks(old));
  const known: Known = { old, oldMarks, index: indexLandmarks(oldMarks) };
  const asItIs = yield* told('new sound', findLandmarks(heard));
  const { index } = known;
  let speed = yield* told(
    'speed',
    findSpeed(heard, { landmarks: asItIs, index, oldLength: oldMarks.length }),
  );
  let found = yield* match(known, speed ? yield* evened(heard, speed) : { even: heard, marks: asItIs });
  if (Math.abs(found.drift) > MOST_DRIFT) {
    // Two clocks that ran apart: what the distances say is more exact than any look at pieces.
    speed = { factor: (speed?.factor ?? 1) / (1 + found.drift), pitch: speed?.pitch ?? 'moves' };
    found = yield* match(known, yield* evened(heard, speed));
  }
  const shared = yield* cutOut(known, found, speed);
  const factor = (speed?.factor ?? 1) / (1 + found.drift);
  const runsAlike = Math.abs(factor - 1) < ALIKE;
  return {
    shared: shared.map(({ oldStart, oldEnd, newStart, newEnd }) => ({
      oldStart,
      oldEnd,
      newStart,
      newEnd: Math.min(heard.length, newEnd),
    })),
    speed: runsAlike ? null : { factor, pitch: speed?.pitch ?? 'moves' },
    oldLength: old.length,
    newLength: heard.length,
  };
}

interface Known {
  readonly old: SampleSource;
  readonly oldMarks: Landmarks;
  readonly index: LandmarkIndex;
}

/** The new recording at the old one's speed. */
interface Evened {
  readonly even: SampleSource;
  readonly marks: Landmarks;
}

interface Matched extends Evened {
  readonly runs: readonly Run[];
  readonly drift: number;
}

function* evened(heard: SampleSource, { factor, pitch }: Speed): Generator<Turn, Evened> {
  const even = atSpeed(heard, factor, pitch);
  return { even, marks: yield* told('new sound', findLandmarks(even)) };
}

/** Which stretches of the old are heard where, to about a frame, each with exact points on it. */
function* match({ old, oldMarks, index }: Known, { even, marks }: Evened): Generator<Turn, Matched> {
  const distances = yield* told('matching', findDistances(marks, oldMarks, index));
  const path = yield* told('matching', findPath(marks, index, distances));
  const measure = measureDistances(old, even);
  const runs: Run[] = [];
  for (const [k, stretch] of path.entries()) {
    yield { at: 'edit points', done: k / path.length / 2 };
    if (stretch.distance !== null) runs.push(runOf(stretch, stretch.distance, measure, even.length));
  }
  return { even, marks, runs, drift: driftOf(runs.map(({ points }) => points)) };
}

/** The stretches with their exact ends, in samples of both recordings as they are. */
function* cutOut(
  { old, oldMarks }: Known,
  { even, marks, runs, drift }: Matched,
  speed: Speed | null,
): Generator<Turn, readonly Shared[]> {
  const loud: Loudness = { old: loudOf(oldMarks), heard: loudOf(marks) };
  const compare = compareWaves(old, even, loud, speed?.pitch === 'stays' ? UNEVEN_LAGS : LAGS);
  const lined = joinRuns(runs, drift)
    .map((run): Lined => ({ ...run, line: lineThrough(run.points, run.about, drift) }))
    .map((run) => ({ run, likeness: likenessOf(run, compare) }))
    .filter(({ likeness }) => likeness > CHANCE)
    // A noisy copy is less like its original: what is asked for is a good half of what the run has.
    .map(({ run, likeness }) => ({ ...run, least: Math.min(0.7, 0.6 * likeness) }));
  const factor = speed?.factor ?? 1;
  const shared: Shared[] = [];
  // Under a kept pitch waves are too uneven to tell what was said anew in place.
  const parts = cutRuns(lined, compare, even.length, speed?.pitch !== 'stays');
  for (const part of parts) {
    yield { at: 'edit points', done: 0.5 + part.from / even.length / 2 };
    const { from, to } = clip(part, old.length);
    if (to - from < SHORTEST) continue;
    shared.push({
      oldStart: Math.round(part.line(from)),
      oldEnd: Math.round(part.line(to)),
      newStart: Math.round(from * factor),
      newEnd: Math.round(to * factor),
    });
  }
  return shared;
}

function* told<T>(at: Turn['at'], work: Generator<number, T>): Generator<Turn, T> {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
    yield { at, done: step.value };
  }
}

/** Level of the loud parts: nine tenths of all frames are softer. */
function loudOf({ levels }: Landmarks): number {
  const ordered = Float32Array.from(levels).sort();
  return ordered[Math.floor(ordered.length * 0.9)] ?? 0;
}

/** Samples of the new recording (evened) along one line of the old. */
interface Run {
  readonly from: number;
  readonly to: number;
  readonly points: readonly Measured[];
  readonly about: number;
}

function runOf({ first, end }: Stretch, about: number, measure: Measure, length: number): Run {
  const from = first * BLOCK * HOP;
  const to = Math.min(length, end * BLOCK * HOP);
  const count = Math.min(24, Math.max(3, Math.ceil((to - from) / (12 * RATE))));
  const points: Measured[] = [];
  for (let k = 0; k < count; k++) {
    const found = measure(from + ((to - from) * (k + 0.5)) / count, about * HOP);
    if (found) points.push(found);
  }
  return { from, to, points, about: about * HOP };
}

/** A run with its line. */
interface Lined extends Run {
  readonly line: Line;
}

/** Runs that go on along the same line are one: what lay between is looked at when it is cut out. */
function joinRuns(runs: readonly Run[], drift: number): readonly Run[] {
  const joined: Run[] = [];
  for (const run of runs) {
    const last = joined.at(-1);
    if (last && last.to === run.from && goesOn(last, run, drift)) {
      joined[joined.length - 1] = { ...last, to: run.to, points: [...last.points, ...run.points] };
    } else joined.push(run);
  }
  return joined;
}

/** Whether the end of one line meets the beginning of the other. */
const goesOn = (one: Run, other: Run, drift: number): boolean => {
  const end = lineThrough(one.points.slice(-4), one.about, drift);
  const start = lineThrough(other.points.slice(0, 4), other.about, drift);
  return Math.abs(end(other.from) - start(other.from)) < SAME_LINE;
};

interface Part {
  readonly from: number;
  readonly to: number;
  readonly line: Line;
}

/** Finds the exact ends of each run. */
function* cutRuns(
  runs: readonly (Run & Side)[],
  compare: Compare,
  length: number,
  looksInside: boolean,
): Generator<Part> {
  let from = 0;
  for (const [k, run] of runs.entries()) {
    if (k === 0) from = findEditPoint(compare, 0, Math.min(run.to, run.from + LOOK), null, run).start;
    const next = runs[k + 1];
    const lookFrom = Math.max(from, run.to - LOOK);
    const point: EditPoint = next
      ? findEditPoint(compare, lookFrom, Math.min(next.to, next.from + LOOK), run, next)
      : findEditPoint(compare, lookFrom, length, run, null);
    const part = { from, to: point.end, line: run.line };
    if (looksInside) yield* withoutUnlike(part, run, compare);
    else yield part;
    from = point.start;
  }
}

/** The part, less what was said anew in place. */
function* withoutUnlike(part: Part, side: Side, compare: Compare): Generator<Part> {
  let { from } = part;
  for (const unlike of findUnlike(compare, part.from, part.to, side)) {
    const start = Math.max(from, unlike.from - AROUND);
    const point = findEditPoint(compare, start, Math.min(part.to, unlike.to + AROUND), side, side);
    if (point.start === point.end) continue;
    yield { ...part, from, to: point.end };
    from = point.start;
  }
  yield { ...part, from };
}

/** How alike a run sounds to where its line leads: the median of places spread over it. */
function likenessOf(run: Lined, compare: Compare): number {
  const found: number[] = [];
  const places = 120;
  for (let k = 0; k < places; k++) {
    const at = Math.round(run.from + ((run.to - run.from) * (k + 0.5)) / places);
    const { correlation, weight } = compare(at, run.line);
    if (weight > 0.5) found.push(correlation);
  }
  return median(found);
}

/** Without what would lie before the old recording's start or after its end. */
function clip({ from, to, line }: Part, oldLength: number): { readonly from: number; readonly to: number } {
  const before = Math.max(0, -line(from));
  const after = Math.max(0, line(to) - oldLength);
  return { from: from + Math.round(before), to: to - Math.round(after) };
}
