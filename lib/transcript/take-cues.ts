/**
 * From what a reader found in a file to cues of a lesson: plain text, in order
 * of time, each with an id, ending after it starts, and within the limits of
 * lib/transcript/cue.ts. What has to give way is listed.
 */
import { LONGEST_MS } from '#lib/time/time.ts';
import { type Cue, compareCues } from './cue.ts';
import { LONGEST_TEXT } from './edit-cues.ts';
import { type Loss, lossOf } from './loss.ts';

/** One timed piece of a file, its text already plain. */
export interface FoundCue {
  readonly line: number;
  readonly startMs: number;
  readonly endMs: number;
  readonly text: string;
  readonly settings: string;
}

const LONGEST_SETTINGS = 500;
/** No cue may begin in the last minute of the longest time, so that its end can be moved. */
const LATEST_START_MS = LONGEST_MS - 60_000;

/** Time that a text takes to be read, ms: 15 characters a second, a second at least (common practice). */
export const readingMs = (text: string): number => Math.max(1_000, Math.ceil((text.length * 1_000) / 15));

/** Text as a cue holds it: lines parted by `\n`, none of them blank, no NUL. */
export const tidyCueText = (text: string): string =>
  text
    .replace(/\r\n?/g, '\n')
    .replaceAll('\0', '\uFFFD')
    .split('\n')
    .filter((line) => line.trim() !== '')
    .join('\n');

/**
 * Makes cues of what was found. A cue that ends before it starts gets the time
 * that its text takes to be read, at most until the next one starts.
 */
export function takeCues(
  found: readonly FoundCue[],
  newId: () => string,
): { readonly cues: readonly Cue[]; readonly losses: readonly Loss[] } {
  const losses: Loss[] = [];
  const cues: Cue[] = [];
  let latest = 0;
  const starts = found.map((one) => one.startMs).sort((a, b) => a - b);
  for (const one of found) {
    const text = tidyCueText(one.text);
    if (text === '') {
      losses.push(lossOf('cue-empty', one.line, ''));
      continue;
    }
    if (one.startMs > LATEST_START_MS || one.endMs > LONGEST_MS) {
      losses.push(lossOf('time-too-late', one.line, text));
      continue;
    }
    if (one.startMs < latest) losses.push(lossOf('out-of-order', one.line, text));
    latest = Math.max(latest, one.startMs);
    let { endMs } = one;
    if (endMs <= one.startMs) {
      losses.push(lossOf('end-before-start', one.line, text));
      endMs = Math.min(one.startMs + readingMs(text), nextStart(starts, one.startMs));
    }
    let { settings } = one;
    if (settings.length > LONGEST_SETTINGS) {
      losses.push(lossOf('setting', one.line, settings));
      settings = '';
    }
    const parts = partLongText(text);
    if (parts.length > 1) losses.push(lossOf('long-cue-parted', one.line, text));
    for (const part of timeParts(parts, one.startMs, Math.max(endMs, one.startMs + parts.length)))
      cues.push({ id: newId(), ...part, settings });
  }
  return { cues: cues.sort(compareCues), losses };
}

/** First start after a moment; far away where there is none. `starts` is sorted. */
function nextStart(starts: readonly number[], afterMs: number): number {
  let low = 0;
  let high = starts.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((starts[middle] ?? 0) <= afterMs) low = middle + 1;
    else high = middle;
  }
  return starts[low] ?? LONGEST_MS;
}

/** Parts of at most the longest length, broken at a space where one is near. */
function partLongText(text: string): readonly string[] {
  const parts: string[] = [];
  let rest = text;
  while (rest.length > LONGEST_TEXT) {
    const space = Math.max(rest.lastIndexOf(' ', LONGEST_TEXT), rest.lastIndexOf('\n', LONGEST_TEXT));
    // A pair of surrogates is one character and stays together.
    const pair = /[\uD800-\uDBFF]/.test(rest.charAt(LONGEST_TEXT - 1)) ? 1 : 0;
    const at = space > LONGEST_TEXT / 2 ? space : LONGEST_TEXT - pair;
    parts.push(rest.slice(0, at));
    rest = rest.slice(space === at ? at + 1 : at);
  }
  return [...parts, rest];
}

/** Shares a span among texts by their length; each gets a millisecond at least, which the span must hold. */
function timeParts(parts: readonly string[], startMs: number, endMs: number) {
  const last = parts.length - 1;
  const total = parts.reduce((sum, part) => sum + part.length, 0);
  let from = startMs;
  let said = 0;
  return parts.map((text, index) => {
    said += text.length;
    const share = startMs + Math.round(((endMs - startMs) * said) / total);
    const to = index === last ? endMs : Math.min(Math.max(share, from + 1), endMs - (last - index));
    const timed = { startMs: from, endMs: to, text };
    from = to;
    return timed;
  });
}
