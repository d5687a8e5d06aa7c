/**
 * Reads SRT. There is no standard for it; a line of times is what makes a cue
 * here, with or without a number above it. Kinder than most players: missing
 * numbers, short times and blank lines inside a text are taken and listed.
 * Never throws.
 */
import type { Span } from '#lib/time/time.ts';
import { type Loss, lossOf } from './loss.ts';
import { normaliseLines } from './webvtt-read.ts';

/** A cue as it stands in the file; its end may lie before its start. */
export interface SrtCue {
  /** Line of its times, from 1. */
  readonly line: number;
  readonly startMs: number;
  readonly endMs: number;
  /** Text as written; lib/transcript/shown-text.ts reads its tags. */
  readonly text: string;
}

const TIME = String.raw`(?:(\d{1,6})\s*:\s*)?(\d{1,3})\s*:\s*(\d{1,3})(?:\s*[.,](\s*\d{1,9}))?`;
const TIMES = new RegExp(String.raw`^\s*${TIME}\s*-->\s*${TIME}(?![\d:])(.*)$`);
const NUMBER = /^\s*\d+\s*$/;

/** Whether a line is one of times. */
export const isSrtTimes = (line: string): boolean => line.includes('-->') && TIMES.test(line);

/** Reads an SRT file from decoded text. */
export function readSrt(text: string): {
  readonly cues: readonly SrtCue[];
  readonly losses: readonly Loss[];
} {
  const lines = normaliseLines(text).split('\n');
  const cues: SrtCue[] = [];
  const losses: Loss[] = [];
  let at = 0;
  while (at < lines.length) {
    if (isBlank(lines[at])) {
      at += 1;
      continue;
    }
    const head = headAt(lines, at);
    if (head.kind === 'text') {
      at = takeStray(lines, at, cues, losses);
      continue;
    }
    const end = endOfText(lines, head.textAt);
    const text = lines.slice(head.textAt, end);
    if (head.kind === 'unreadable') {
      const code = /(?:^|>)\s*-\d/.test(head.written) ? 'time-negative' : 'time-unreadable';
      losses.push(lossOf(code, head.textAt, [head.written, ...text].join('\n')));
    } else {
      if (!head.numbered) losses.push(lossOf('number-missing', head.textAt, head.written));
      if (head.oddFraction) losses.push(lossOf('fraction-digits', head.textAt, head.written));
      if (head.rest !== '') losses.push(lossOf('place', head.textAt, head.rest));
      cues.push({ line: head.textAt, startMs: head.startMs, endMs: head.endMs, text: text.join('\n') });
    }
    at = end;
  }
  return { cues, losses };
}

/** What begins at a line: a cue, a cue whose times cannot be read, or words. `textAt` is also the line of the times, from 1. */
type Head =
  | ({
      readonly kind: 'cue';
      readonly numbered: boolean;
      readonly textAt: number;
      readonly written: string;
    } & Times)
  | { readonly kind: 'unreadable'; readonly textAt: number; readonly written: string }
  | { readonly kind: 'text' };

type Times = Span & { readonly rest: string; readonly oddFraction: boolean };

function headAt(lines: readonly string[], at: number): Head {
  const first = lines[at] ?? '';
  const numbered = NUMBER.test(first);
  const written = numbered ? (lines[at + 1] ?? '') : first;
  if (!written.includes('-->')) return { kind: 'text' };
  const textAt = numbered ? at + 2 : at + 1;
  const times = readTimes(written);
  return times
    ? { kind: 'cue', numbered, textAt, written, ...times }
    : { kind: 'unreadable', textAt, written };
}

/** Text runs to a blank line, or to the next cue where the blank line is missing. */
function endOfText(lines: readonly string[], from: number): number {
  let at = from;
  while (at < lines.length && !isBlank(lines[at]) && !isSrtTimes(lines[at] ?? '')) {
    if (NUMBER.test(lines[at] ?? '') && isSrtTimes(lines[at + 1] ?? '')) break;
    at += 1;
  }
  return at;
}

/**
 * Words to which no time belongs. Behind a blank line inside a cue they go on
 * with it; under a number of their own, or before any cue, they are listed.
 */
function takeStray(lines: readonly string[], at: number, cues: SrtCue[], losses: Loss[]): number {
  const end = endOfText(lines, at);
  const text = lines.slice(at, end).join('\n');
  const before = cues.at(-1);
  if (before && !NUMBER.test(lines[at] ?? '')) {
    losses.push(lossOf('blank-line-in-cue', at + 1, text));
    cues[cues.length - 1] = { ...before, text: `${before.text}\n${text}` };
  } else {
    losses.push(lossOf('text-without-time', at + 1, text));
  }
  return end;
}

function readTimes(line: string): Times | null {
  const match = TIMES.exec(line);
  if (!match) return null;
  const fractions = [match[4], match[8]];
  return {
    startMs: toMs(match[1], match[2], match[3], match[4]),
    endMs: toMs(match[5], match[6], match[7], match[8]),
    rest: (match[9] ?? '').trim(),
    oddFraction: fractions.some((digits) => digits !== undefined && digits.length !== 3),
  };
}

/** A fraction of one or two digits is tenths or hundredths; spaces before digits stand for noughts. */
function toMs(hours = '0', minutes = '0', seconds = '0', fraction = ''): number {
  const digits = fraction.replace(/\s/g, '0').padEnd(3, '0').slice(0, 3);
  return ((Number(hours) * 60 + Number(minutes)) * 60 + Number(seconds)) * 1000 + Number(digits);
}

const isBlank = (line: string | undefined): boolean => line === undefined || line.trim() === '';
