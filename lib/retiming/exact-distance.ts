/** To the sample, how far apart the same sound lies in two recordings: by cross-correlation. */
import { fourier } from './fourier.ts';
import { RATE, type SampleSource } from './samples.ts';

/** Length of the piece that is compared, and how far off it may lie, samples: 2 s and 48 ms. */
const PIECE = 2 * RATE;
const REACH = 384;
const SIZE = 32_768;
/** How far the best place must stand out above the rest (root mean square) to be believed. */
const STANDS_OUT = 6;

export interface Measured {
  /** Sample of the new recording at the piece's middle. */
  readonly at: number;
  /** Sample of the old recording less that of the new. */
  readonly distance: number;
}

/**
 * Measures the distance near `at` in the new recording, where it is known to
 * within 48 ms; null where the sound there tells nothing.
 */
export type Measure = (at: number, about: number) => Measured | null;

export function measureDistances(old: SampleSource, heard: SampleSource): Measure {
  const { transform, inverse } = fourier(SIZE);
  const real = new Float32Array(SIZE);
  const imaginary = new Float32Array(SIZE);
  return (at, about) => {
    const start = Math.max(0, Math.round(at - PIECE / 2));
    real.fill(0);
    imaginary.fill(0);
    heard.read(start, real.subarray(0, PIECE));
    old.read(start + about - REACH, imaginary.subarray(0, PIECE + 2 * REACH));
    // Two real signals in one transform: the new one as its real part, the old one as its imaginary part.
    transform(real, imaginary);
    for (let k = 0; k <= SIZE / 2; k++) {
      const other = (SIZE - k) % SIZE;
      const ar = ((real[k] as number) + (real[other] as number)) / 2;
      const ai = ((imaginary[k] as number) - (imaginary[other] as number)) / 2;
      const br = ((imaginary[k] as number) + (imaginary[other] as number)) / 2;
      const bi = ((real[other] as number) - (real[k] as number)) / 2;
      const r = ar * br + ai * bi;
      const i = ar * bi - ai * br;
      // Half way to phase alone: colour counts less, noise not too much.
      const weight = 1 / Math.sqrt(Math.hypot(r, i) + 1e-12);
      real[k] = r * weight;
      imaginary[k] = i * weight;
      real[other] = r * weight;
      imaginary[other] = -i * weight;
    }
    inverse(real, imaginary);
    let best = 0;
    let energy = 0;
    for (let lag = 0; lag <= 2 * REACH; lag++) {
      const value = real[lag] as number;
      energy += value * value;
      if (value > (real[best] as number)) best = lag;
    }
    const usual = Math.sqrt(energy / (2 * REACH + 1));
    if (usual === 0 || (real[best] as number) < STANDS_OUT * usual) return null;
    return { at: start + PIECE / 2, distance: about - REACH + best };
  };
}
