/**
 * Whether the new recording runs faster or slower than the old one, and
 * whether its pitch moved with it: looked for in a few pieces spread over it.
 */
import { findLandmarks, HOP, type Landmarks } from './landmarks.ts';
import { eachMatch, type LandmarkIndex, placeOfFrame } from './matches.ts';
import { atSpeed, type SampleSource } from './samples.ts';

/** How the new recording runs: in the time of one sample of the old one, it goes on by `factor` samples. */
export interface Speed {
  readonly factor: number;
  readonly pitch: 'moves' | 'stays';
}

/** Pieces that are looked at, and the length of each, frames (30 s). */
const PIECES = 6;
const PIECE = 1_875;
/** Fewer and shorter ones (12 s), where each must be heard anew at many speeds. */
const FEW_PIECES = 4;
const SHORT_PIECE = 750;
/** Slopes that are tried where sound is recognised as it is: 2.5 % either way. */
const SLOPES = around(10, 0.002_5);
const NEAR_SLOPES = around(3, 0.001_25);
/** The last look: two minutes at a time, where a ten-thousandth more or less shows. */
const LONG_PIECE = 7_500;
const FINE_SLOPES = around(12, 0.0001);
/** Speeds that are tried where nothing is recognised: up to a fifth slower or faster. */
const FACTORS = around(26, 0.0075)
  .map((part) => 1 + part)
  .filter((factor) => Math.abs(factor - 1) > 0.01);
/** How many more landmarks must agree at a slope than at none. */
const CLEARLY = 1.1;
/** A piece in which fewer landmarks agree, for each of its frames, is not recognised: a third of that is chance. */
const RECOGNISED = 0.03;
/** A few seconds of speech have more landmarks. */
const FEWEST_LANDMARKS = 500;
/** Speeds closer to 1 than this are those of two clocks. */
const LEAST_CHANGE = 0.000_2;

interface Heard {
  readonly landmarks: Landmarks;
  readonly index: LandmarkIndex;
  readonly oldLength: number;
}

/** The speed; null where both run alike, or where nothing is recognised at any speed. Yields how much is done. */
export function* findSpeed(source: SampleSource, heard: Heard): Generator<number, Speed | null> {
  // Where hardly anything is heard, there is nothing to recognise.
  if (Math.min(heard.landmarks.count, heard.index.places.length) < FEWEST_LANDMARKS) return null;
  const pieces = spread(heard.landmarks.length, PIECES, PIECE).map((start) =>
    pairsOf(heard.landmarks, start, start + PIECE, heard),
  );
  const asItIs = bestSlope(pieces, SLOPES);
  yield 0.3;
  // At the steepest slope more would agree if it could be steeper still.
  const isWithin = Math.abs(asItIs.slope) < Math.max(...SLOPES);
  const isRecognised = isWithin && asItIs.recognised >= Math.max(1, pieces.length / 3);
  if (isRecognised && (asItIs.slope === 0 || asItIs.votes < CLEARLY * bestSlope(pieces, [0]).votes))
    return null;
  const factors = isRecognised ? [1 / (1 + asItIs.slope)] : FACTORS;
  let best: { readonly speed: Speed; readonly slope: number; readonly votes: number } | null = null;
  for (const [k, factor] of factors.entries()) {
    for (const pitch of ['moves', 'stays'] as const) {
      const anew = hearPieces(source, { factor, pitch }, heard, FEW_PIECES, SHORT_PIECE);
      const { slope, votes, recognised } = bestSlope(anew, NEAR_SLOPES);
      if (recognised >= Math.max(1, anew.length / 2) && votes > (best?.votes ?? 0)) {
        best = { speed: { factor, pitch }, slope, votes };
      }
    }
    yield 0.3 + (0.6 * (k + 1)) / factors.length;
  }
  if (!best) return null;
  const { pitch } = best.speed;
  const near = best.speed.factor / (1 + best.slope);
  const { slope } = bestSlope(
    hearPieces(source, { factor: near, pitch }, heard, FEW_PIECES, LONG_PIECE),
    FINE_SLOPES,
  );
  const factor = near / (1 + slope);
  return Math.abs(factor - 1) < LEAST_CHANGE ? null : { factor, pitch };
}

/** Frames of the new recording, from the piece's start, with those of the old one that share a landmark. */
interface Pairs {
  readonly frames: readonly number[];
  readonly oldFrames: readonly number[];
  /** Frames of the piece. */
  readonly length: number;
  readonly oldLength: number;
}

function pairsOf(landmarks: Landmarks, start: number, end: number, { index, oldLength }: Heard): Pairs {
  const frames: number[] = [];
  const oldFrames: number[] = [];
  eachMatch(
    landmarks,
    placeOfFrame(landmarks, start),
    placeOfFrame(landmarks, end),
    index,
    (frame, oldFrame) => {
      frames.push(frame - start);
      oldFrames.push(oldFrame);
    },
  );
  return { frames, oldFrames, length: end - start, oldLength };
}

function hearPieces(
  source: SampleSource,
  { factor, pitch }: Speed,
  heard: Heard,
  pieces: number,
  length: number,
): readonly Pairs[] {
  const warped = atSpeed(source, factor, pitch);
  const frames = Math.max(0, Math.floor(warped.length / HOP) - 4);
  return spread(frames, pieces, length).map((start) => {
    const own = Math.min(length, frames - start);
    const steps = findLandmarks(warped, start, own);
    let step = steps.next();
    while (!step.done) step = steps.next();
    return pairsOf(step.value, 0, own, heard);
  });
}

/** The slope at which most landmarks agree, how many, and in how many pieces they are enough. */
function bestSlope(pieces: readonly Pairs[], slopes: readonly number[]) {
  let best = { slope: 0, votes: -1, recognised: 0 };
  // The slope of nothing first: where several are as good, it is taken.
  for (const slope of slopes.toSorted((one, other) => Math.abs(one) - Math.abs(other))) {
    const each = pieces.map((pairs) => agreement(pairs, slope));
    const votes = each.reduce((sum, one) => sum + one, 0);
    const recognised = each.filter((one, k) => one >= RECOGNISED * (pieces[k]?.length ?? 0)).length;
    if (votes > best.votes) best = { slope, votes, recognised };
  }
  return best;
}

/** How many pairs lie at one distance that grows by `slope` a frame. */
function agreement({ frames, oldFrames, length, oldLength }: Pairs, slope: number): number {
  // Distances run from one that lies before the old recording's start to its end, with some room for the slope.
  const reach = length + 64;
  const counts = new Uint16Array(oldLength + 2 * reach);
  let best = 0;
  for (const [k, frame] of frames.entries()) {
    const at = Math.round((oldFrames[k] as number) - frame * (1 + slope)) + reach;
    const count = (counts[at] as number) + 1;
    counts[at] = count;
    const pooled = count + (counts[at - 1] as number) + (counts[at + 1] as number);
    if (pooled > best) best = pooled;
  }
  return best;
}

/** Where pieces begin, spread evenly. */
function spread(frames: number, pieces: number, length: number): readonly number[] {
  const count = Math.max(1, Math.min(pieces, Math.floor(frames / length)));
  return Array.from({ length: count }, (_, k) =>
    Math.floor((Math.max(0, frames - length) * (k + 0.5)) / count),
  );
}

function around(steps: number, step: number): readonly number[] {
  return Array.from({ length: 2 * steps + 1 }, (_, k) => (k - steps) * step);
}
