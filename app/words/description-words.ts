/** Sentences about description texts. */
import type { PartKind } from '#lib/description/description-setup.ts';
import type { DescriptionWarning } from '#lib/description/description-text.ts';
import type { DescriptionFormat } from '#lib/description/write-description.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';

export const PART_WORDS: Readonly<Record<PartKind, string>> = {
  summary: 'Summary',
  page: 'Address of the lesson page',
  chapters: 'Chapters with their times',
  rings: 'Rings, with counts for each size',
  materials: 'Other materials',
  tools: 'Tools',
  links: 'Links',
  cautions: 'Cautions',
  corrections: 'Corrections',
  licence: 'Licence',
  house: 'Lines of the house',
};

export const FORMAT_WORDS: Readonly<Record<DescriptionFormat, string>> = {
  text: 'Plain text',
  markdown: 'Markdown',
  html: 'HTML',
};

export function descriptionWarningWords(warning: DescriptionWarning): string {
  switch (warning.code) {
    case 'too-long':
      return `Still ${warning.over.toLocaleString('en-GB')} ${warning.unit} too long, with all left out that may be. Let more parts be left out, or shorten those that are left.`;
    case 'chapters-not-from-nought':
      return `The first chapter begins at ${formatTimeCode(warning.startMs)}. Many places make chapters of these lines only where the first is 0:00.`;
    case 'too-few-chapters':
      return `There ${warning.chapters === 1 ? 'is 1 chapter' : `are ${warning.chapters} chapters`}; the place asks for at least ${warning.least}.`;
    case 'chapter-too-short':
      return `The chapter “${warning.title}” lasts ${(warning.lastsMs / 1000).toFixed(0)} s, which is shorter than the place takes.`;
    case 'same-second':
      return `Two chapters begin at ${warning.time}: the second is “${warning.title}”. Move one of them.`;
    case 'refused-characters':
      return `The text holds ${[...warning.characters].map((character) => `“${character}”`).join(', ')}, which the place refuses.`;
  }
}
