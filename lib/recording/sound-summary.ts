/**
 * What a waveform shows and where nobody speaks, from mono sound at 8,000
 * samples a second, 16 bit. Takes the sound in pieces of any size and keeps
 * five bytes per 50 ms: a three-hour recording needs about a megabyte.
 */
import type { Span } from '#lib/time/time.ts';

export const SUMMARY_SAMPLE_RATE = 8_000;
export const WINDOW_MS = 50;
const WINDOW_SAMPLES = (SUMMARY_SAMPLE_RATE * WINDOW_MS) / 1000;
/** A shorter gap is a breath or a consonant, not a pause; our choice. */
const SHORTEST_PAUSE_MS = 400;
/** Below this level there is silence whatever else is heard, dB of full scale; our choice. */
const SILENCE_DB = -60;
/** Sound whose loud and quiet parts differ by less has no pauses that could be told, dB; our choice. */
const LEAST_CONTRAST_DB = 12;
/** How far up from the quiet to the loud level a pause may reach; our choice. */
const PAUSE_SHARE = 0.3;
const FLOOR_DB = -100;

export interface SoundSummary {
  /** One byte per 50 ms: the window's largest absolute amplitude, 0 to 255. */
  readonly peaks: Uint8Array;
  /** Pauses of at least 400 ms, in order, cut to whole windows. */
  readonly pauses: readonly Span[];
  readonly durationMs: number;
}

export interface SoundListener {
  /** Takes the next bytes: signed 16-bit samples, little end first; a sample may be parted between two calls. */
  take(bytes: Uint8Array): void;
  /** The summary of all that was taken. A last, partial window counts as one. */
  finish(): SoundSummary;
}

export function listenToSound(): SoundListener {
  let peaks = new Uint8Array(4096);
  let levels = new Float32Array(4096);
  let windows = 0;
  let samples = 0;
  let inWindow = 0;
  let peak = 0;
  let energy = 0;
  /** Low byte of a sample whose high byte has not come yet; -1 for none. */
  let half = -1;

  const closeWindow = (): void => {
    if (windows === peaks.length) {
      peaks = grown(peaks, new Uint8Array(windows * 2));
      levels = grown(levels, new Float32Array(windows * 2));
    }
    peaks[windows] = Math.min(255, Math.round((peak * 255) / 32_767));
    const rms = Math.sqrt(energy / inWindow) / 32_768;
    levels[windows] = Math.max(FLOOR_DB, 20 * Math.log10(rms || 1e-9));
    windows += 1;
    inWindow = 0;
    peak = 0;
    energy = 0;
  };

  const takeSample = (low: number, high: number): void => {
    const value = ((high << 24) >> 16) | low;
    const size = value < 0 ? -value : value;
    if (size > peak) peak = size;
    energy += value * value;
    samples += 1;
    inWindow += 1;
    if (inWindow === WINDOW_SAMPLES) closeWindow();
  };

  return {
    take(bytes) {
      let at = 0;
      if (half >= 0 && bytes.length > 0) {
        takeSample(half, bytes[0] ?? 0);
        half = -1;
        at = 1;
      }
      for (; at + 1 < bytes.length; at += 2) takeSample(bytes[at] ?? 0, bytes[at + 1] ?? 0);
      if (at < bytes.length) half = bytes[at] ?? 0;
    },
    finish() {
      if (inWindow > 0) closeWindow();
      return {
        peaks: peaks.slice(0, windows),
        pauses: findPauses(levels.subarray(0, windows)),
        durationMs: Math.round((samples * 1000) / SUMMARY_SAMPLE_RATE),
      };
    },
  };
}

function grown<T extends Uint8Array | Float32Array>(from: T, into: T): T {
  into.set(from);
  return into;
}

/**
 * Pauses in levels of 50 ms, dB of full scale: what lies nearer to the
 * recording's own quiet than to its own loud, so that a humming room does not
 * hide them and a quiet speaker does not become one.
 */
export function findPauses(levels: Float32Array): readonly Span[] {
  if (levels.length === 0) return [];
  const ordered = Float32Array.from(levels).sort();
  const quiet = ordered[Math.floor(ordered.length * 0.05)] ?? FLOOR_DB;
  const loud = ordered[Math.floor(ordered.length * 0.95)] ?? FLOOR_DB;
  const contrast = loud - Math.max(quiet, SILENCE_DB);
  const threshold =
    contrast < LEAST_CONTRAST_DB ? SILENCE_DB : Math.max(quiet, SILENCE_DB) + contrast * PAUSE_SHARE;
  const pauses: Span[] = [];
  let start = -1;
  for (let index = 0; index <= levels.length; index++) {
    const level = levels[index];
    const isQuiet = level !== undefined && level <= threshold;
    if (isQuiet && start < 0) start = index;
    if (!isQuiet && start >= 0) {
      const span = { startMs: start * WINDOW_MS, endMs: index * WINDOW_MS };
      if (span.endMs - span.startMs >= SHORTEST_PAUSE_MS) pauses.push(span);
      start = -1;
    }
  }
  return pauses;
}
