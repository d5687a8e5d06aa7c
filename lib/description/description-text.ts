/**
 * The text that goes beside the recording wherever it is hosted: composed from
 * a workshop's parts, shortened to what the place takes, and with what a place
 * may stumble over said.
 */
import { chaptersInOrder } from '#lib/chapters/chapter-rules.ts';
import type { Content } from '#lib/lesson/content.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';
import { type DescriptionPart, descriptionParts } from './description-parts.ts';
import type { DescriptionLimits, DescriptionSetup, PartKind } from './description-setup.ts';
import { type DescriptionFormat, writeDescription } from './write-description.ts';

export type DescriptionWarning =
  /** All that may be left out is, and it is still too long. */
  | { readonly code: 'too-long'; readonly over: number; readonly unit: 'characters' | 'bytes' }
  | { readonly code: 'chapters-not-from-nought'; readonly startMs: number }
  | { readonly code: 'too-few-chapters'; readonly chapters: number; readonly least: number }
  | { readonly code: 'chapter-too-short'; readonly title: string; readonly lastsMs: number }
  /** Two chapters begin within the same second, which is all that a line of text says. */
  | { readonly code: 'same-second'; readonly title: string; readonly time: string }
  | { readonly code: 'refused-characters'; readonly characters: string };

export interface Lengths {
  readonly characters: number;
  readonly bytes: number;
}

export interface DescriptionText extends Lengths {
  readonly text: string;
  /** Kinds of the parts that were left out because the text was too long, the first first. */
  readonly leftOut: readonly PartKind[];
  readonly warnings: readonly DescriptionWarning[];
}

export interface Asked {
  readonly content: Content;
  readonly setup: DescriptionSetup;
  /** Of the lesson page, or null where it has none yet. */
  readonly lessonAddress: string | null;
  /** Of the recording, for the length of the last chapter; null where there is none yet. */
  readonly durationMs: number | null;
  readonly format: DescriptionFormat;
}

/** Composes a lesson's text. Whole parts are left out where it is too long, never a line of one. */
export function composeDescription({
  content,
  setup,
  lessonAddress,
  durationMs,
  format,
}: Asked): DescriptionText {
  const { limits } = setup;
  let parts = descriptionParts(content, lessonAddress, setup);
  let text = writeDescription(parts, format);
  const leftOut: PartKind[] = [];
  for (const kind of setup.leaveOut) {
    if (fits(lengthsOf(text), limits)) break;
    if (!parts.some((part) => part.kind === kind)) continue;
    parts = parts.filter((part) => part.kind !== kind);
    leftOut.push(kind);
    text = writeDescription(parts, format);
  }
  const lengths = lengthsOf(text);
  const warnings = [
    ...lengthWarnings(lengths, limits),
    ...chapterWarnings(content, parts, limits, durationMs),
    // In the other formats such characters are the format's own.
    ...(format === 'text' ? refusedWarnings(text, limits) : []),
  ];
  return { text, ...lengths, leftOut, warnings };
}

/** Length of a text in characters as people count them (code points), and in UTF-8 bytes: hosts limit one or the other. */
export const lengthsOf = (text: string): Lengths => ({
  characters: [...text].length,
  bytes: new TextEncoder().encode(text).length,
});

const fits = (lengths: Lengths, limits: DescriptionLimits): boolean =>
  lengthWarnings(lengths, limits).length === 0;

const lengthWarnings = (lengths: Lengths, limits: DescriptionLimits): DescriptionWarning[] =>
  (['characters', 'bytes'] as const).flatMap((unit) => {
    const over = lengths[unit] - (limits[unit] ?? Number.POSITIVE_INFINITY);
    return over > 0 ? [{ code: 'too-long', over, unit }] : [];
  });

function chapterWarnings(
  content: Content,
  parts: readonly DescriptionPart[],
  limits: DescriptionLimits,
  durationMs: number | null,
): DescriptionWarning[] {
  if (!parts.some(({ kind }) => kind === 'chapters')) return [];
  const chapters = chaptersInOrder(content.chapters);
  const warnings: DescriptionWarning[] = [];
  const first = chapters[0];
  if (limits.chaptersFromNought && first && first.startMs >= 1000) {
    warnings.push({ code: 'chapters-not-from-nought', startMs: first.startMs });
  }
  if (chapters.length < limits.leastChapters) {
    warnings.push({ code: 'too-few-chapters', chapters: chapters.length, least: limits.leastChapters });
  }
  for (const [index, chapter] of chapters.entries()) {
    const next = chapters[index + 1];
    const endMs = next?.startMs ?? durationMs;
    const time = formatTimeCode(chapter.startMs);
    if (next && formatTimeCode(next.startMs) === time) {
      warnings.push({ code: 'same-second', title: next.title, time });
    } else if (endMs !== null && endMs - chapter.startMs < limits.leastChapterMs) {
      warnings.push({
        code: 'chapter-too-short',
        title: chapter.title,
        lastsMs: Math.max(0, endMs - chapter.startMs),
      });
    }
  }
  return warnings;
}

function refusedWarnings(text: string, limits: DescriptionLimits): DescriptionWarning[] {
  const there = [...new Set(limits.refused)].filter((character) => text.includes(character)).join('');
  return there === '' ? [] : [{ code: 'refused-characters', characters: there }];
}
