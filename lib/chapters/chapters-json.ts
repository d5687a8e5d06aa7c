/**
 * JSON chapters, version 1.2 of the podcast namespace (CC0): starts in
 * seconds, a title, and things for which a lesson has no place.
 */
import { z } from 'zod';
import { type Loss, lossOf } from '#lib/transcript/loss.ts';
import type { Chapter } from './chapter.ts';
import { chapterSpans } from './chapter-rules.ts';
import type { FoundChapter } from './found-chapter.ts';

const seconds = z.union([
  z.number(),
  z
    .string()
    .regex(/^\s*-?\d+(\.\d+)?\s*$/)
    .transform(Number),
]);
const jsonChapter = z.looseObject({
  startTime: seconds,
  endTime: seconds.nullish().catch(null),
  title: z.string().nullish().catch(null),
  toc: z.boolean().nullish().catch(null),
});
const jsonChapters = z.looseObject({ chapters: z.array(z.unknown()) });

/** What a chapter may say beside its start, end and title. */
const EXTRA = ['img', 'url', 'location', 'value'] as const;

/** Whether a text begins as a JSON object or a list of them; a line may begin with `[0:00]` too. */
export const isJson = (text: string): boolean => /^\uFEFF?\s*(?:\{|\[\s*\{)/.test(text);

/** Reads JSON chapters; a bare list of them is taken too. Never throws. */
export function readChaptersJson(text: string): {
  readonly found: readonly FoundChapter[];
  readonly losses: readonly Loss[];
} {
  const file = listIn(text);
  if (!file) return { found: [], losses: [lossOf('json-unreadable', 1, text.trim())] };
  const found: FoundChapter[] = [];
  const losses: Loss[] = [...file.losses];
  const lines = linesOf(text, '"startTime"');
  file.list.forEach((item, index) => {
    const line = lines[index] ?? 1;
    const read = jsonChapter.safeParse(item);
    if (!read.success) {
      losses.push(lossOf('time-unreadable', line, JSON.stringify(item) ?? ''));
      return;
    }
    const { startTime, endTime, title, toc } = read.data;
    const said = title ?? '';
    if (toc === false) {
      losses.push(lossOf('chapter-hidden', line, said));
      return;
    }
    const extra = EXTRA.filter((name) => read.data[name] !== undefined);
    if (extra.length > 0) losses.push(lossOf('chapter-extra', line, `${said} (${extra.join(', ')})`));
    const endMs = endTime === null || endTime === undefined ? null : Math.round(endTime * 1000);
    found.push({ line, startMs: Math.round(startTime * 1000), endMs, title: said });
  });
  return { found, losses };
}

function listIn(
  text: string,
): { readonly list: readonly unknown[]; readonly losses: readonly Loss[] } | null {
  let json: unknown;
  try {
    json = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return null;
  }
  if (Array.isArray(json)) return { list: json, losses: [] };
  const file = jsonChapters.safeParse(json);
  if (!file.success) return null;
  const said = ['title', 'author', 'podcastName', 'description', 'fileName']
    .filter((name) => typeof file.data[name] === 'string')
    .map((name) => `${name}: ${file.data[name]}`);
  const losses = said.length > 0 ? [lossOf('header-text', 1, said.join('\n'))] : [];
  return { list: file.data.chapters, losses };
}

/** Lines on which a text stands, from 1, in order. */
function linesOf(text: string, sought: string): readonly number[] {
  return text.split('\n').flatMap((line, index) => Array(line.split(sought).length - 1).fill(index + 1));
}

/**
 * A JSON chapters file. A chapter without a title goes by its kind; one that
 * starts together with the next has no time of its own and is left out.
 */
export function writeChaptersJson(chapters: readonly Chapter[], title: string): string {
  const list = chapterSpans(chapters, null)
    .filter(({ startMs, endMs }) => endMs === null || endMs > startMs)
    .map((chapter) => ({ startTime: chapter.startMs / 1000, title: chapterTitle(chapter) }));
  const file = { version: '1.2.0', ...(title.trim() === '' ? {} : { title: title.trim() }), chapters: list };
  return `${JSON.stringify(file, null, 2)}\n`;
}

/** A chapter's title on one line; its kind where it has none. */
export const chapterTitle = ({ title, kind }: Pick<Chapter, 'title' | 'kind'>): string =>
  title.replace(/\s+/g, ' ').trim() || kind;
