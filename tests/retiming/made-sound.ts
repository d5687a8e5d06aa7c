/**
 * Sound made in code for tests of the comparison: voices that speak in no
 * language (pulses of a throat through resonances of a mouth, in syllables,
 * words and pauses), workshop noise, and music. All invented; the same seed
 * gives the same samples.
 */

import { randomFrom } from '#tests/faults/random.ts';

/** Samples a second of all made sound. */
export const MADE_RATE = 16_000;

export interface Voice {
  /** Pitch, Hz. */
  readonly pitch: number;
  /** Length of the mouth beside a grown man's: 0.85 is a woman's. */
  readonly mouth: number;
  readonly syllablesPerSecond: number;
}

export const VOICES: readonly Voice[] = [
  { pitch: 112, mouth: 1, syllablesPerSecond: 4.5 },
  { pitch: 205, mouth: 0.85, syllablesPerSecond: 5.2 },
  { pitch: 150, mouth: 0.93, syllablesPerSecond: 3.8 },
];

/** First three resonances of some vowels of a grown man, Hz (Peterson and Barney 1952, rounded). */
const VOWELS = [
  [270, 2290, 3010],
  [390, 1990, 2550],
  [530, 1840, 2480],
  [660, 1720, 2410],
  [730, 1090, 2440],
  [570, 840, 2410],
  [440, 1020, 2240],
  [300, 870, 2240],
  [640, 1190, 2390],
  [490, 1350, 1690],
] as const;

/** A voice that speaks for so long, with pauses between words and sentences. */
export function speak(voice: Voice, seconds: number, seed: number): Float32Array {
  const random = randomFrom(seed);
  const out = new Float32Array(Math.round(seconds * MADE_RATE));
  const consonant = consonants(random);
  const vowel = vowels(voice, random);
  let at = 0;
  while (at < out.length) {
    const words = 4 + Math.floor(random() * 9);
    for (let word = 0; word < words; word++) {
      const syllables = 1 + Math.floor(random() * 3);
      for (let syllable = 0; syllable < syllables; syllable++) {
        at = consonant(out, at);
        at = vowel(out, at, word / words);
      }
      at += Math.round((0.01 + random() * 0.09) * MADE_RATE);
    }
    at += Math.round((0.25 + random() * (random() < 0.15 ? 2.5 : 0.7)) * MADE_RATE);
  }
  return levelled(out, 0.3);
}

/** Short hisses at some height. Writes one from `at` on. @returns where it ends. */
function consonants(random: () => number): (out: Float32Array, at: number) => number {
  const hiss = resonance();
  return (out, at) => {
    const length = Math.round((0.03 + random() * 0.07) * MADE_RATE);
    const height = 1200 + random() * 4500;
    const strength = random() < 0.3 ? 0.01 : 0.03 + random() * 0.12;
    for (let k = 0; k < length && at + k < out.length; k++) {
      out[at + k] = hiss((random() * 2 - 1) * strength * Math.sin((Math.PI * k) / length), height, 900);
    }
    return at + length;
  };
}

/** Vowels that glide from one to the next, falling in pitch through the sentence. */
function vowels(voice: Voice, random: () => number): (out: Float32Array, at: number, said: number) => number {
  const mouth = [resonance(), resonance(), resonance()];
  let phase = 0;
  let shape: readonly number[] = VOWELS[8];
  return (out, at, said) => {
    const target = VOWELS[Math.floor(random() * VOWELS.length)] ?? VOWELS[0];
    const length = Math.round(((0.6 + random() * 0.8) / voice.syllablesPerSecond) * MADE_RATE);
    const pitch = voice.pitch * (1.12 - 0.25 * said + (random() - 0.5) * 0.12);
    for (let k = 0; k < length && at + k < out.length; k++) {
      const part = k / length;
      phase += (pitch * (1 + 0.04 * Math.sin(part * 3))) / MADE_RATE;
      const pulse = phase >= 1 ? 1 : 0;
      phase -= pulse;
      const throat = pulse + (random() - 0.5) * 0.02;
      const glide = Math.min(1, part * 2.5);
      let sound = 0;
      for (const [which, filter] of mouth.entries()) {
        const from = shape[which] ?? 500;
        const to = target[which] ?? 500;
        sound += filter(throat, (from + (to - from) * glide) / voice.mouth, 60 + 40 * which) / (1 + which);
      }
      out[at + k] = sound * 0.35 * Math.sin(Math.PI * part) ** 0.5;
    }
    shape = target;
    return at + length;
  };
}

/** A hum with overtones, a fan's rush, strokes of a file, and now and then a hammer. */
export function workshop(seconds: number, seed: number): Float32Array {
  const random = randomFrom(seed);
  const out = new Float32Array(Math.round(seconds * MADE_RATE));
  const rush = resonance();
  const scrape = resonance();
  let knock = 0;
  let knockAt = MADE_RATE;
  let stroke = 0;
  for (let at = 0; at < out.length; at++) {
    const t = at / MADE_RATE;
    const hum =
      Math.sin(2 * Math.PI * 100 * t) +
      0.5 * Math.sin(2 * Math.PI * 200 * t) +
      0.2 * Math.sin(2 * Math.PI * 300 * t);
    if (at % 12_000 === 0) stroke = random() < 0.5 ? 0 : random();
    if (at >= knockAt) {
      knock = 1;
      knockAt = at + Math.round((0.4 + random() * 3) * MADE_RATE);
    }
    knock *= 0.9985;
    const noise = random() * 2 - 1;
    out[at] =
      0.08 * hum +
      rush(noise * 0.1, 350, 600) +
      stroke * scrape(noise * 0.5, 2600, 1500) * Math.abs(Math.sin(2 * Math.PI * 1.6 * t)) +
      knock * 0.8 * noise;
  }
  return levelled(out, 0.1);
}

/** Plucked notes over slow chords; patterns come again, as music does. */
export function music(seconds: number, seed: number): Float32Array {
  const random = randomFrom(seed);
  const out = new Float32Array(Math.round(seconds * MADE_RATE));
  const scale = [0, 2, 4, 7, 9, 12, 14, 16];
  const beat = Math.round((0.28 + random() * 0.1) * MADE_RATE);
  const tune = Array.from({ length: 32 }, () => scale[Math.floor(random() * scale.length)] ?? 0);
  for (let start = 0, note = 0; start < out.length; start += beat, note++) {
    // The tune is varied here and there, so that no two rounds are quite the same.
    const step =
      random() < 0.2 ? (scale[Math.floor(random() * scale.length)] ?? 0) : (tune[note % tune.length] ?? 0);
    for (const [above, strength] of [
      [0, 1],
      [-12, note % 4 === 0 ? 0.9 : 0],
    ] as const) {
      if (strength === 0) continue;
      const hertz = 220 * 2 ** ((step + above) / 12);
      for (let k = 0; k < beat * 5 && start + k < out.length; k++) {
        const t = k / MADE_RATE;
        const fade = strength * Math.exp(-3.5 * t);
        const tone =
          Math.sin(2 * Math.PI * hertz * t) + 0.4 * Math.sin(4 * Math.PI * hertz * t) * Math.exp(-4 * t);
        out[start + k] = (out[start + k] ?? 0) + fade * tone;
      }
    }
  }
  return levelled(out, 0.15);
}

/** Sums sounds, each as loud as told; as long as the first. */
export function mix(...parts: readonly (readonly [sound: Float32Array, gain: number])[]): Float32Array {
  const out = new Float32Array(parts[0]?.[0].length ?? 0);
  for (const [sound, gain] of parts) {
    for (let at = 0; at < out.length; at++) out[at] = (out[at] ?? 0) + gain * (sound[at % sound.length] ?? 0);
  }
  return out;
}

/** With this root mean square where it sounds at all, and nothing beyond full scale. */
function levelled(sound: Float32Array, level: number): Float32Array {
  let energy = 0;
  let sounding = 0;
  for (const value of sound) {
    if (value === 0) continue;
    energy += value * value;
    sounding += 1;
  }
  const gain = level / 3 / Math.sqrt(energy / Math.max(1, sounding) || 1);
  return sound.map((value) => Math.max(-1, Math.min(1, value * gain)));
}

/** A resonance whose middle and width (Hz) may change from sample to sample. */
function resonance(): (input: number, middle: number, width: number) => number {
  let last = 0;
  let beforeLast = 0;
  return (input, middle, width) => {
    const radius = Math.exp((-Math.PI * width) / MADE_RATE);
    const turn = 2 * radius * Math.cos((2 * Math.PI * Math.min(middle, 7_500)) / MADE_RATE);
    const out = (1 - radius) * input * 2 + turn * last - radius * radius * beforeLast;
    beforeLast = last;
    last = out;
    return out;
  };
}
