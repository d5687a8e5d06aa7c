/**
 * From what a reader found in a file to cues of a lesson: plain text, in order
 * of time, each with an id, ending after it starts, and within the limits of
 * lib/transcript/cue.ts. What has to give way is listed.
 */
import { LONGEST_MS } from '#lib/time/longest-time.ts';
import { type Cue, compareCues } from './cue.ts';
import { type FoundCue, readingMs } from './found-cue.ts';
import { type Loss, lossOf } from './loss.ts';
import { partLongText, shareTime, tidyCueText } from './tidy-text.ts';

const LONGEST_SETTINGS = 500;
/** No cue may begin in the last minute of the longest time, so that its end can be moved. */
const LATEST_START_MS = LONGEST_MS - 60_000;

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
    const texts = parts.map((part) => ({ text: part }));
    for (const part of shareTime(texts, { startMs: one.startMs, endMs }))
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
