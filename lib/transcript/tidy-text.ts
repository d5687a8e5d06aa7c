/** Text as a cue may hold it, and what becomes of a text that is too long for one. */
import type { Span } from '#lib/time/time.ts';

/** Longest text that a cue holds, characters. */
export const LONGEST_TEXT = 5_000;

/** Text with its lines parted by `\n`, no blank line, no space around lines, no NUL. Nothing else of it is changed. */
export const tidyCueText = (text: string): string =>
  text
    .replace(/\r\n?/g, '\n')
    .replaceAll('\0', '\uFFFD')
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '')
    .join('\n');

/** A text in parts of at most the longest length, broken at a space where one is near; one part where it fits. */
export function partLongText(text: string): readonly string[] {
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

/**
 * Shares a span among texts by their length. Each gets a millisecond at least:
 * a span with fewer milliseconds than texts is made longer.
 */
export function shareTime<T extends { readonly text: string }>(
  texts: readonly T[],
  { startMs, endMs: until }: Span,
): readonly (T & Span)[] {
  const endMs = Math.max(until, startMs + texts.length);
  const last = texts.length - 1;
  const total = texts.reduce((sum, { text }) => sum + text.length, 0) || 1;
  let from = startMs;
  let said = 0;
  return texts.map((one, index) => {
    said += one.text.length;
    const share = startMs + Math.round(((endMs - startMs) * said) / total);
    const to = index === last ? endMs : Math.min(Math.max(share, from + 1), endMs - (last - index));
    const timed = { ...one, startMs: from, endMs: to };
    from = to;
    return timed;
  });
}
