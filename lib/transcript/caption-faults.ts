/** What in captions a profile finds hard to read. */
import type { CaptionProfile } from './caption-profile.ts';
import type { Cue } from './cue.ts';
import { wordsOf } from './word-breaks.ts';

export const CAPTION_FAULTS = [
  'line-long',
  'lines-many',
  'fast',
  'words-fast',
  'short',
  'long',
  'gap-small',
  'overlap',
] as const;
export type CaptionFaultCode = (typeof CAPTION_FAULTS)[number];

export interface CaptionFault {
  readonly code: CaptionFaultCode;
  readonly cueId: string;
  readonly level: 'error' | 'warning';
  /** What it is, and what it should be at most or at least: characters, lines, characters a second, words a minute, or ms. */
  readonly is: number;
  readonly limit: number;
}

type Bounds = { readonly warn: number | null; readonly error: number | null };

/** Every fault of every caption, in order of time. Cues without words show nothing and have none. */
export function captionFaults(cues: readonly Cue[], profile: CaptionProfile): readonly CaptionFault[] {
  const shown = cues.filter((cue) => cue.text !== '');
  return shown.flatMap((cue, at) => faultsOf(cue, shown[at + 1] ?? null, profile));
}

/** The faults of one caption, and of the break before the next one. */
function faultsOf(cue: Cue, next: Cue | null, profile: CaptionProfile): readonly CaptionFault[] {
  const faults: CaptionFault[] = [];
  const add = (code: CaptionFaultCode, level: CaptionFault['level'], is: number, limit: number) =>
    faults.push({ code, cueId: cue.id, level, is, limit });
  const atMost = (code: CaptionFaultCode, is: number, { warn, error }: Bounds) => {
    if (error !== null && is > error) add(code, 'error', is, error);
    else if (warn !== null && is > warn) add(code, 'warning', is, warn);
  };
  const lines = cue.text.split('\n');
  const ms = cue.endMs - cue.startMs;
  atMost('line-long', Math.max(...lines.map(lengthOf)), profile.lineLength);
  atMost('lines-many', lines.length, { warn: null, error: profile.mostLines });
  atMost('fast', round(lengthOf(cue.text) / (ms / 1000)), profile.speed);
  atMost('words-fast', round(wordsOf(cue.text).length / (ms / 60_000)), profile.wordsAMinute);
  atMost('long', ms, profile.longestMs);
  const { warn: shortest, error: tooShort } = profile.shortestMs;
  if (tooShort !== null && ms < tooShort) add('short', 'error', ms, tooShort);
  else if (shortest !== null && ms < shortest) add('short', 'warning', ms, shortest);
  if (next) {
    const gapMs = next.startMs - cue.endMs;
    if (gapMs < 0) add('overlap', 'error', -gapMs, 0);
    else if (gapMs > 0 && gapMs < profile.leastGapMs) add('gap-small', 'warning', gapMs, profile.leastGapMs);
  }
  return faults;
}

const round = (value: number): number => Math.round(value * 10) / 10;

/** Characters as people count them. */
export const lengthOf = (text: string): number =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: all of ASCII is meant, where length and count are the same
  /^[\u0000-\u007f]*$/.test(text) ? text.length : Array.from(text).length;
