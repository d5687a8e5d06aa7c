/**
 * Chapters in a text that people read: `0:00 Opening`, `(1:02:03) Clasp`,
 * `3. 12:05 – Repeat unit`, `Opening — 0:00`, as they stand under many
 * recordings. Lines without a time are no chapters.
 */
import { parseTimeCode } from '#lib/time/time-code.ts';
import { type Loss, lossOf } from '#lib/transcript/loss.ts';
import { normaliseLines } from '#lib/transcript/webvtt-read.ts';
import type { FoundChapter } from './found-chapter.ts';

const TIME = String.raw`((?:\d{1,3}:)?\d{1,3}:\d{2}(?:[.,]\d{1,3})?)`;
const FIRST = new RegExp(
  String.raw`^\s*(?:[-–—•*·▶►>#]\s*){0,10}(?:\d{1,3}[.)]\s+)?[\[(]?\s*${TIME}\s*[\])]?(?:\s*(?:[-–—]|to)\s*[\[(]?${TIME}[\])]?)?(?=\s|[-–—:|.]|$)\s*(?:[-–—:|.]\s*){0,3}(.*)$`,
  'u',
);
const LAST = new RegExp(
  String.raw`^\s*(?:[-–—•*·▶►>#]\s*){0,10}(.*?\S)[\s.…\-–—:|]*[\s.[(]${TIME}\s*[\])]?\s*$`,
  'u',
);
/** A longer line is a paragraph. */
const LONGEST_LINE = 500;

interface Stamped {
  readonly line: number;
  readonly written: string;
  readonly atMs: number | null;
  readonly endMs: number | null;
  readonly title: string;
}

/** The chapters of a text, and the lines that are none. Never throws. */
export function readChapterLines(text: string): {
  readonly found: readonly FoundChapter[];
  readonly losses: readonly Loss[];
} {
  const lines = normaliseLines(text).split('\n');
  const first = lines.map((written, index) => timeFirst(written, index + 1));
  const last = lines.map((written, index) => timeLast(written, index + 1));
  const count = (list: readonly Stamped[]) => list.filter(({ atMs }) => atMs !== null).length;
  // A text has its times all before the titles, or all behind them.
  const stamped = count(first) >= count(last) ? first : last;

  const found: FoundChapter[] = [];
  const losses: Loss[] = [];
  let awaitsTitle = false;
  for (const { line, written, atMs, endMs, title } of stamped) {
    if (written.trim() === '') continue;
    const before = found.at(-1);
    if (atMs !== null) found.push({ line, startMs: atMs, endMs, title });
    else if (awaitsTitle && before) found[found.length - 1] = { ...before, title: written.trim() };
    else losses.push(lossOf('text-without-time', line, written.trim()));
    awaitsTitle = atMs !== null && title === '';
  }
  return { found, losses };
}

function timeFirst(written: string, line: number): Stamped {
  const match = written.length <= LONGEST_LINE ? FIRST.exec(written) : null;
  const atMs = match ? parseTimeCode(match[1] ?? '') : null;
  const endMs = match?.[2] === undefined ? null : parseTimeCode(match[2]);
  return { line, written, atMs, endMs, title: (match?.[3] ?? '').trim() };
}

function timeLast(written: string, line: number): Stamped {
  const match = written.length <= LONGEST_LINE ? LAST.exec(written) : null;
  const atMs = match ? parseTimeCode(match[2] ?? '') : null;
  return {
    line,
    written,
    atMs,
    endMs: null,
    title: (match?.[1] ?? '').replace(/[\s.…\-–—:|]+$/u, '').trim(),
  };
}
