/**
 * Sound as the comparison reads it: mono, 8,000 samples a second, by place.
 * Where it lies (memory, a file) is the reader's matter, so that two hours of
 * it need not be in memory at once.
 */

/** Samples a second of all sound in this folder. */
export const RATE = 8_000;

export const msOf = (samples: number): number => Math.round((samples * 1000) / RATE);

export interface SampleSource {
  /** How many samples there are. */
  readonly length: number;
  /** Fills `into` with the samples from `from` on, -1 to 1; zero where there are none. */
  read(from: number, into: Float32Array): void;
}

/** Sound that lies in memory, 16 bits a sample. */
export function samplesInMemory(samples: Int16Array): SampleSource {
  return {
    length: samples.length,
    read(from, into) {
      for (let k = 0; k < into.length; k++) into[k] = (samples[from + k] ?? 0) / 32_768;
    },
  };
}

/**
 * The same sound played `speed` times as fast or as slow, so that both
 * recordings run alike. With `'moves'` it is resampled: pitch moves with speed,
 * as on a tape. With `'stays'` only the places are moved and each short piece
 * is read as it is: for sound whose speed was changed under a kept pitch.
 */
export function atSpeed(source: SampleSource, speed: number, pitch: 'moves' | 'stays'): SampleSource {
  const length = Math.floor(source.length / speed);
  if (pitch === 'stays') {
    return { length, read: (from, into) => source.read(Math.round(from * speed), into) };
  }
  let buffer = new Float32Array(1024);
  return {
    length,
    read(from, into) {
      const first = Math.floor(from * speed) - 1;
      const needed = Math.ceil(into.length * speed) + 5;
      if (buffer.length < needed) buffer = new Float32Array(needed * 2);
      const held = buffer.subarray(0, needed);
      source.read(first, held);
      for (let k = 0; k < into.length; k++) {
        const at = (from + k) * speed - first;
        const whole = Math.floor(at);
        into[k] = between(held, whole, at - whole);
      }
    },
  };
}

/** Cubic interpolation (Catmull-Rom) between `whole` and `whole + 1`. */
function between(held: Float32Array, whole: number, part: number): number {
  const before = held[whole - 1] ?? 0;
  const here = held[whole] ?? 0;
  const next = held[whole + 1] ?? 0;
  const after = held[whole + 2] ?? 0;
  const slope = (next - before) / 2;
  const slopeNext = (after - here) / 2;
  const rise = next - here;
  return (
    here + part * (slope + part * (3 * rise - 2 * slope - slopeNext + part * (slope + slopeNext - 2 * rise)))
  );
}
