/**
 * Plain text whose lines or paragraphs begin with a time: `[1:02] words`,
 * `0:01:02 words`, `01:02.345 - words`, `(1:02)` alone on a line. What stands
 * behind a time belongs to it until the next one.
 */
import { parseTimeCode } from '#lib/time/time-code.ts';
import { type FoundCue, readingMs } from './found-cue.ts';
import { type Loss, lossOf } from './loss.ts';
import { normaliseLines } from './webvtt-read.ts';

// A bracket must close; behind the time there may be a dash or a colon; then space or the line's end.
const STAMP =
  /^\s*(?:\[\s*([\d:.,]+)\s*\]|\(\s*([\d:.,]+)\s*\)|((?:\d{1,3}:)?\d{1,3}:\d{2}(?:[.,]\d{1,3})?))(?:\s*[-–—:|](?=\s|$)|(?=\s|$))\s*(.*)$/;

/** The time that a line begins with, and what stands behind it; null where it begins with none. */
export function readStampedLine(line: string): { readonly atMs: number; readonly rest: string } | null {
  const match = STAMP.exec(line);
  if (!match) return null;
  const stamp = match[1] ?? match[2] ?? match[3] ?? '';
  // A number alone is no time: `[12]` is a note's mark.
  const atMs = stamp.includes(':') ? parseTimeCode(stamp) : null;
  return atMs === null ? null : { atMs, rest: match[4] ?? '' };
}

/**
 * The pieces of a stamped text. Each ends where the next in time begins; the
 * last ends with the recording, or, where its length is not known, when its
 * text is read. Texts with the same time become one piece.
 */
export function cuesOfStampedText(
  text: string,
  recordingMs: number | null,
): { readonly found: readonly FoundCue[]; readonly losses: readonly Loss[] } {
  const losses: Loss[] = [];
  const pieces: { line: number; atMs: number; lines: string[] }[] = [];
  const before: string[] = [];
  let beforeLine = 1;
  normaliseLines(text)
    .split('\n')
    .forEach((line, index) => {
      const stamped = readStampedLine(line);
      const current = pieces.at(-1);
      if (stamped && current?.atMs === stamped.atMs) current.lines.push(stamped.rest);
      else if (stamped) pieces.push({ line: index + 1, atMs: stamped.atMs, lines: [stamped.rest] });
      else if (current) current.lines.push(line.trim());
      else if (line.trim() !== '') {
        if (before.length === 0) beforeLine = index + 1;
        before.push(line.trim());
      }
    });
  if (before.length > 0) losses.push(lossOf('text-before-first-time', beforeLine, before.join('\n')));

  const starts = [...new Set(pieces.map((piece) => piece.atMs))].sort((a, b) => a - b);
  const following = new Map(starts.map((start, index) => [start, starts[index + 1]]));
  const found = pieces.map(({ line, atMs, lines }): FoundCue => {
    const said = lines.filter((one) => one !== '').join('\n');
    const last = recordingMs !== null && recordingMs > atMs ? recordingMs : atMs + readingMs(said);
    return { line, startMs: atMs, endMs: following.get(atMs) ?? last, text: said, settings: '' };
  });
  return { found, losses };
}
