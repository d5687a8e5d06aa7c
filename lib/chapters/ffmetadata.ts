/**
 * ffmetadata, the text form in which ffmpeg gives and takes what a media file
 * says of itself, chapters among it (ffmpeg's documentation of its formats).
 * `=`, `;`, `#`, `\` and a line's end stand behind a `\`.
 */
import { type Loss, lossOf } from '#lib/transcript/loss.ts';
import type { Chapter } from './chapter.ts';
import { chapterSpans } from './chapter-rules.ts';
import { chapterTitle } from './chapters-json.ts';
import type { FoundChapter } from './found-chapter.ts';

export const isFfmetadata = (text: string): boolean => /^\uFEFF?;FFMETADATA/.test(text);

interface Entry {
  readonly line: number;
  readonly key: string;
  readonly value: string;
}

/** Reads the chapters of an ffmetadata file. Never throws. */
export function readFfmetadata(text: string): {
  readonly found: readonly FoundChapter[];
  readonly losses: readonly Loss[];
} {
  const sections: { readonly name: string; readonly line: number; readonly entries: Entry[] }[] = [
    { name: '', line: 1, entries: [] },
  ];
  const losses: Loss[] = [];
  for (const { line, written } of logicalLines(text)) {
    if (written === '' || /^[;#]/.test(written)) continue;
    const section = /^\[(.*)\]\s*$/.exec(written);
    if (section) {
      sections.push({ name: (section[1] ?? '').toUpperCase(), line, entries: [] });
      continue;
    }
    const equals = firstBare(written, '=');
    if (equals < 0) losses.push(lossOf('text-without-time', line, bare(written)));
    else {
      const key = bare(written.slice(0, equals));
      sections.at(-1)?.entries.push({ line, key, value: bare(written.slice(equals + 1)) });
    }
  }
  const found = sections.flatMap((section) => {
    if (section.name !== 'CHAPTER') {
      for (const { line, key, value } of section.entries)
        losses.push(lossOf('header-text', line, `${key}: ${value}`));
      return [];
    }
    return chapterOf(section.entries, section.line, losses);
  });
  return { found, losses };
}

function chapterOf(entries: readonly Entry[], line: number, losses: Loss[]): readonly FoundChapter[] {
  const said = new Map(entries.map(({ key, value }) => [key.toLowerCase(), value]));
  const base = /^\s*(\d{1,12})\s*\/\s*(\d{1,12})\s*$/.exec(said.get('timebase') ?? '1/1000000000');
  // What ffmpeg counts in where nothing is said.
  const tickMs = base ? (Number(base[1]) / Number(base[2])) * 1000 : Number.NaN;
  const ms = (name: string): number => {
    const written = said.get(name);
    return written !== undefined && /^\s*-?\d{1,19}\s*$/.test(written)
      ? Math.round(Number(written) * tickMs)
      : Number.NaN;
  };
  const [startMs, endMs] = [ms('start'), ms('end')];
  const title = said.get('title') ?? '';
  if (!Number.isFinite(startMs)) {
    losses.push(lossOf('time-unreadable', line, title));
    return [];
  }
  const extra = entries.filter(({ key }) => !KNOWN.has(key.toLowerCase()));
  if (extra.length > 0)
    losses.push(lossOf('chapter-extra', line, extra.map(({ key, value }) => `${key}: ${value}`).join('\n')));
  return [{ line, startMs, endMs: Number.isFinite(endMs) ? endMs : null, title }];
}

const KNOWN = new Set(['timebase', 'start', 'end', 'title']);

/** Lines, each with the line that it begins on; one whose end is escaped goes on. */
function* logicalLines(text: string): Generator<{ readonly line: number; readonly written: string }> {
  const lines = text.replace(/^\uFEFF/, '').split(/\r?\n/);
  for (let at = 0; at < lines.length; at += 1) {
    const line = at + 1;
    const parts = [lines[at] ?? ''];
    while (/(?<!\\)(?:\\\\)*\\$/.test(parts.at(-1) ?? '') && at + 1 < lines.length) {
      at += 1;
      parts.push(lines[at] ?? '');
    }
    yield { line, written: parts.join('\n') };
  }
}

/** Where a sign stands that no `\` stands before; -1 where it does not. */
function firstBare(text: string, sign: string): number {
  for (let at = 0; at < text.length; at += 1) {
    if (text[at] === '\\') at += 1;
    else if (text[at] === sign) return at;
  }
  return -1;
}

const bare = (text: string): string => text.replace(/\\([\s\S])/g, '$1');

/** ffmpeg 5 takes the end of a line behind any `\` for escaped, be that itself escaped or not: a space keeps them apart. */
const escaped = (text: string): string => text.replace(/[=;#\\\n]/g, '\\$&').replace(/\\$/, '\\ ');

/**
 * An ffmetadata file with a lesson's title and its chapters, for ffmpeg to put
 * into a media file. Arguments as those of the WebVTT chapters.
 */
export function writeFfmetadata(chapters: readonly Chapter[], title: string, endMs: number): string {
  const sections = chapterSpans(chapters, null)
    .map((chapter) => ({ ...chapter, endMs: chapter.endMs ?? Math.max(endMs, chapter.startMs + 1_000) }))
    .filter((chapter) => chapter.endMs > chapter.startMs)
    .map(
      (chapter) =>
        `[CHAPTER]\nTIMEBASE=1/1000\nSTART=${chapter.startMs}\nEND=${chapter.endMs}\ntitle=${escaped(chapterTitle(chapter))}\n`,
    );
  const name = title.replace(/\s+/g, ' ').trim();
  return `;FFMETADATA1\n${name === '' ? '' : `title=${escaped(name)}\n`}${sections.join('')}`;
}
