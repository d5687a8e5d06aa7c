/**
 * How much like the old recording the new one sounds, piece by short piece, at
 * a given distance: what tells to a few hundredths of a second where an edit
 * lies.
 */
import type { Line } from './line.ts';
import type { SampleSource } from './samples.ts';

/** From one short piece to the next, and the length of each, samples: 10 ms and 40 ms. */
export const PIECE_STEP = 80;
const PIECE = 320;
/** Sound so far below the loud parts weighs nothing, dB. */
const QUIET_BELOW = 40;

export interface Likeness {
  /** -1 to 1: correlation of the waves, the best of the lags tried. */
  readonly correlation: number;
  /** 0 where both are silent, 1 where one is loud. */
  readonly weight: number;
}

export interface Loudness {
  /** Level of each recording's loud parts, dB of full scale. */
  readonly old: number;
  readonly heard: number;
}

/** Compares the piece of the new recording around `at` with the old one, so far along `line`. */
export type Compare = (at: number, line: Line) => Likeness;

/** @param lags how many samples either way the waves may be off: a few, more where a kept pitch made them uneven. */
export function compareWaves(old: SampleSource, heard: SampleSource, loud: Loudness, lags: number): Compare {
  const mine = new Float32Array(PIECE);
  const theirs = new Float32Array(PIECE + 2 * lags);
  return (at, line) => {
    heard.read(at - PIECE / 2, mine);
    old.read(Math.round(line(at)) - PIECE / 2 - lags, theirs);
    const own = energyOf(mine, 0);
    let best = -1;
    const step = lags > 16 ? 2 : 1;
    for (let lag = 0; lag <= 2 * lags; lag += step) best = Math.max(best, correlate(mine, theirs, lag, own));
    const level = Math.max(decibels(own) - loud.heard, decibels(energyOf(theirs, lags)) - loud.old);
    return { correlation: best, weight: Math.min(1, Math.max(0, 1 + level / QUIET_BELOW)) };
  };
}

function energyOf(samples: Float32Array, from: number): number {
  let energy = 0;
  for (let k = from; k < from + PIECE; k++) energy += (samples[k] as number) ** 2;
  return energy;
}

function correlate(mine: Float32Array, theirs: Float32Array, lag: number, own: number): number {
  let product = 0;
  let other = 0;
  for (let k = 0; k < PIECE; k++) {
    const value = theirs[k + lag] as number;
    product += (mine[k] as number) * value;
    other += value * value;
  }
  return product / Math.sqrt(own * other + 1e-12);
}

const decibels = (energy: number): number => 10 * Math.log10(energy / PIECE + 1e-10);
