/**
 * WebVTT's times. Reading follows "collect a WebVTT timestamp" and the timing
 * part of "collect WebVTT cue timings and settings" (W3C WebVTT, section 6.3).
 */
import type { Span } from '#lib/time/time.ts';

// Hours may have one digit here, or many: the reader is more lenient than the rules for writing.
const TIMESTAMP = /(?:(\d+):)?(\d{2}):(\d{2})\.(\d{3})/y;
const ARROW = /[ \t\f]*-->[ \t\f]*/y;
const SPACE = /[ \t\f]*/y;

/** Where a time was read, and what stands behind it. */
interface ReadTime {
  readonly ms: number;
  readonly next: number;
}

/** Reads one timestamp at `at`; null where there is none. Whole ms; hours are not limited. */
export function readTimestamp(text: string, at: number): ReadTime | null {
  const match = matchAt(TIMESTAMP, text, at);
  if (!match) return null;
  const minutes = Number(match[2]);
  const seconds = Number(match[3]);
  if (minutes > 59 || seconds > 59) return null;
  // A fourth digit, or one that runs on, is no timestamp.
  const next = at + match[0].length;
  const code = text.charCodeAt(next);
  if (code >= 48 && code <= 57) return null;
  const ms = ((Number(match[1] ?? 0) * 60 + minutes) * 60 + seconds) * 1000 + Number(match[4]);
  return { ms, next };
}

/** A line of times: `00:01.000 --> 00:02.500 align:start`; the rest as written, null where it cannot be read. */
export function readTimings(line: string): (Span & { readonly rest: string }) | null {
  const start = readTimestamp(line, skip(SPACE, line, 0));
  if (!start) return null;
  const arrow = matchAt(ARROW, line, start.next);
  if (!arrow) return null;
  const end = readTimestamp(line, start.next + arrow[0].length);
  if (!end) return null;
  return { startMs: start.ms, endMs: end.ms, rest: line.slice(end.next).trim() };
}

/** `00:01:02.003`: hours always, two digits or more, as every reader takes them. */
export function formatWebVttTime(ms: number): string {
  const part = (n: number, digits: number) => String(n).padStart(digits, '0');
  const hours = Math.floor(ms / 3_600_000);
  const minutes = Math.floor(ms / 60_000) % 60;
  const seconds = Math.floor(ms / 1000) % 60;
  return `${part(hours, 2)}:${part(minutes, 2)}:${part(seconds, 2)}.${part(ms % 1000, 3)}`;
}

function matchAt(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

function skip(pattern: RegExp, text: string, at: number): number {
  return at + (matchAt(pattern, text, at)?.[0].length ?? 0);
}
