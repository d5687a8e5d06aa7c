/**
 * Landmarks of sound: pairs of spectral peaks, each pair one number that says
 * two pitches and the time between them (Wang, "An industrial-strength audio
 * search algorithm", 2003). They survive coding, equalisers and noise, and
 * stand where they stood when sound is moved.
 */
import { fourier } from './fourier.ts';
import type { SampleSource } from './samples.ts';

/** Samples from one frame to the next, 16 ms; and in one frame, 64 ms. */
export const HOP = 128;
const FRAME = 512;
const BINS = FRAME / 2;
/** Below 94 Hz there is hum, at the top the filter of every resampler. */
const LOWEST_BIN = 6;
const HIGHEST_BIN = 248;
/** A peak is the highest point so many frames and bins around. */
const FRAMES_AROUND = 5;
const BINS_AROUND = 7;
/** 1, 2 and 4 bins on, then 7 more: together the 15 bins around one. */
const STRIDES = [1, 2, 4, BINS_AROUND] as const;
/** How slowly the picture of steady sound follows, frames (4 s): it is taken off, so that hum and colour do not count. */
const STEADY_FRAMES = 250;
/** Later peaks that one is paired with, how late at most (frames) and how far at most (bins). */
const PAIRS = 6;
const LONGEST_PAIR = 63;
const WIDEST_PAIR = 31;
/** Power that a frame must have somewhere to have peaks: below is the noise of 16-bit samples. */
const SILENT_POWER = 2 ** -22;
/** What stands for no sound, log2 of power. */
const NOTHING = -1000;
/** How far above the steady sound a peak stands, log2 of power. */
const PEAK_ABOVE = 1;

/** Numbers of landmarks are below this. */
export const KEYS = 1 << 20;

export interface Landmarks {
  /** How many there are; the arrays may be longer. */
  readonly count: number;
  /** What each says; see `keyOf`. */
  readonly keys: Uint32Array;
  /** The frame at which each begins, in rising order. */
  readonly frames: Uint32Array;
  /** Frames of the whole sound. */
  readonly length: number;
  /** Loudness of each frame, dB of full scale. */
  readonly levels: Float32Array;
}

export const keyOf = (bin: number, rise: number, wait: number): number =>
  (bin << 12) | ((rise + WIDEST_PAIR) << 6) | wait;

/** Frames between two pauses of the generators in this folder: about half a minute of sound. */
const FRAMES_A_TURN = 2_000;

/**
 * Finds the landmarks of a sound, or of `length` of its frames from `first`
 * on. Yields how much is done, 0 to 1.
 */
export function* findLandmarks(
  source: SampleSource,
  first = 0,
  length = Math.max(0, Math.floor((source.length - FRAME) / HOP) + 1),
): Generator<number, Landmarks> {
  const levels = new Float32Array(length);
  const spectrum = spectrumOf(source);
  const pairs = pairPeaks(length);
  const peaks = findPeaks(pairs.take);
  for (let frame = 0; frame < length; frame++) {
    if (frame % FRAMES_A_TURN === 0) yield frame / length;
    levels[frame] = spectrum.read((first + frame) * HOP);
    peaks.take(spectrum.power, spectrum.bits);
  }
  peaks.finish();
  const { count, keys, frames } = pairs.finish();
  return { count, keys, frames, length, levels };
}

/** The power spectrum of one frame after another. */
function spectrumOf(source: SampleSource) {
  const { transform } = fourier(BINS);
  const samples = new Float32Array(FRAME);
  const real = new Float32Array(BINS);
  const imaginary = new Float32Array(BINS);
  const window = Float32Array.from(samples, (_, k) => 0.5 - 0.5 * Math.cos((2 * Math.PI * k) / FRAME));
  const turns = halfTurns();
  const power = new Float32Array(BINS);
  return {
    power,
    bits: new Int32Array(power.buffer),
    /** Reads the frame that begins at a sample. @returns its level, dB of full scale. */
    read(at: number): number {
      source.read(at, samples);
      let energy = 0;
      for (let k = 0; k < BINS; k++) {
        const even = samples[2 * k] as number;
        const odd = samples[2 * k + 1] as number;
        energy += even * even + odd * odd;
        real[k] = even * (window[2 * k] as number);
        imaginary[k] = odd * (window[2 * k + 1] as number);
      }
      transform(real, imaginary);
      powerOfReal(real, imaginary, turns, power);
      return 10 * Math.log10(energy / FRAME + 1e-10);
    },
  };
}

/** Finds peaks in spectra that come in order of time, and tells each as soon as what follows is known. */
function findPeaks(found: (frame: number, bin: number) => void) {
  const RING = 2 * FRAMES_AROUND + 1;
  // The last spectra above what is steady, and the highest value around each of their bins.
  const rows = Array.from({ length: RING }, () => new Float32Array(BINS).fill(NOTHING));
  const crests = Array.from({ length: RING }, () => new Float32Array(BINS).fill(NOTHING));
  const steady = new Float32Array(BINS);
  let frame = 0;

  const look = (): void => {
    const middle = frame - FRAMES_AROUND;
    frame += 1;
    if (middle < 0) return;
    const row = rows[middle % RING] as Float32Array;
    const crest = crests[middle % RING] as Float32Array;
    for (let bin = LOWEST_BIN; bin < HIGHEST_BIN; bin++) {
      const value = row[bin] as number;
      if (value < PEAK_ABOVE || value < (crest[bin] as number)) continue;
      let isHighest = true;
      for (let k = 0; k < RING && isHighest; k++)
        isHighest = value >= ((crests[k] as Float32Array)[bin] as number);
      if (isHighest) found(middle, bin);
    }
  };

  return {
    /** @param bits the same numbers as `power`, as they stand in memory. */
    take(power: Float32Array, bits: Int32Array): void {
      const row = rows[frame % RING] as Float32Array;
      let loudest = 0;
      for (let bin = LOWEST_BIN; bin < HIGHEST_BIN; bin++) {
        loudest = Math.max(loudest, power[bin] as number);
        // The exponent and the mantissa of a float, read as one number, are its log2 but for 0.09.
        const log2 = (bits[bin] as number) * 1.1920929e-7 - 127;
        const usual = frame === 0 ? log2 - 2 : (steady[bin] as number);
        const next = usual + (log2 - usual) / STEADY_FRAMES;
        steady[bin] = next;
        row[bin] = log2 - next;
      }
      if (loudest < SILENT_POWER) row.fill(NOTHING);
      raise(row, crests[frame % RING] as Float32Array);
      look();
    },
    finish(): void {
      for (let k = 0; k < FRAMES_AROUND; k++) {
        (rows[frame % RING] as Float32Array).fill(NOTHING);
        (crests[frame % RING] as Float32Array).fill(NOTHING);
        look();
      }
    },
  };
}

/** The highest value within `BINS_AROUND` (7) of each bin: of 2, 4, 8 and at last 15 bins side by side. */
function raise(row: Float32Array, crest: Float32Array): void {
  crest.set(row);
  for (const next of STRIDES) {
    for (let bin = 0; bin + next < BINS; bin++) {
      const other = crest[bin + next] as number;
      if (other > (crest[bin] as number)) crest[bin] = other;
    }
  }
  // Each now holds the highest of itself and the 14 above it; it belongs in their middle.
  crest.copyWithin(BINS_AROUND, 0);
}

const halfTurns = (): { readonly c: Float32Array; readonly s: Float32Array } => ({
  c: Float32Array.from({ length: BINS }, (_, k) => Math.cos((Math.PI * k) / BINS)),
  s: Float32Array.from({ length: BINS }, (_, k) => -Math.sin((Math.PI * k) / BINS)),
});

/** Power of a real signal's bins, from the transform of its even samples (real) and odd ones (imaginary). */
function powerOfReal(
  real: Float32Array,
  imaginary: Float32Array,
  { c, s }: ReturnType<typeof halfTurns>,
  power: Float32Array,
): void {
  for (let k = 1; k < BINS; k++) {
    const zr = real[k] as number;
    const zi = imaginary[k] as number;
    const mr = real[BINS - k] as number;
    const mi = -(imaginary[BINS - k] as number);
    const er = (zr + mr) / 2;
    const ei = (zi + mi) / 2;
    const or = (zi - mi) / 2;
    const oi = (mr - zr) / 2;
    const tr = c[k] as number;
    const ti = s[k] as number;
    const r = er + or * tr - oi * ti;
    const i = ei + or * ti + oi * tr;
    power[k] = r * r + i * i + 1e-12;
  }
}

/** Pairs each peak with the next few; peaks come in order of time. */
function pairPeaks(length: number) {
  let keys = new Uint32Array(Math.max(1024, length * 3));
  let frames = new Uint32Array(keys.length);
  let count = 0;
  const waiting: { readonly frame: number; readonly bin: number; pairs: number }[] = [];
  const write = (key: number, frame: number): void => {
    if (count === keys.length) {
      keys = grown(keys);
      frames = grown(frames);
    }
    keys[count] = key;
    frames[count] = frame;
    count += 1;
  };
  return {
    take(frame: number, bin: number): void {
      let out = 0;
      while (out < waiting.length && frame - (waiting[out]?.frame ?? 0) > LONGEST_PAIR) out += 1;
      if (out > 0) waiting.splice(0, out);
      for (const peak of waiting) {
        const wait = frame - peak.frame;
        const rise = bin - peak.bin;
        if (wait === 0 || peak.pairs === PAIRS || Math.abs(rise) > WIDEST_PAIR) continue;
        peak.pairs += 1;
        write(keyOf(peak.bin, rise, wait), peak.frame);
      }
      waiting.push({ frame, bin, pairs: 0 });
    },
    finish: () => ({ count, ...inOrder(keys, frames, count, length) }),
  };
}

/** Pairs are found when their later peak comes; this puts them in the order of their first. */
function inOrder(keys: Uint32Array, frames: Uint32Array, count: number, length: number) {
  const next = new Uint32Array(length + 1);
  for (let k = 0; k < count; k++)
    next[(frames[k] as number) + 1] = (next[(frames[k] as number) + 1] as number) + 1;
  for (let frame = 0; frame < length; frame++)
    next[frame + 1] = (next[frame + 1] as number) + (next[frame] as number);
  const ordered = { keys: new Uint32Array(count), frames: new Uint32Array(count) };
  for (let k = 0; k < count; k++) {
    const frame = frames[k] as number;
    const place = next[frame] as number;
    next[frame] = place + 1;
    ordered.keys[place] = keys[k] as number;
    ordered.frames[place] = frame;
  }
  return ordered;
}

function grown(from: Uint32Array): Uint32Array<ArrayBuffer> {
  const into = new Uint32Array(from.length * 2);
  into.set(from);
  return into;
}
