/**
 * Places outside where something of a lesson stands: the host's fields for its
 * title, text, captions and chapters, the recording there, sheets that were
 * handed out, batches of kits. What stands in a place is reckoned for the
 * revision that was last taken there and for the latest one; where the two
 * differ, it is to be pasted again.
 */
import { kitCsv } from '#lib/kit/kit-csv.ts';
import { kitFor } from '#lib/kit/kit-list.ts';
import type { Revision } from '#lib/lesson/revision.ts';
import { writeTextFile } from '#lib/lesson/text-files.ts';
import { changedLines } from './changed-lines.ts';
import type { DescriptionSetup } from './description-setup.ts';
import { composeDescription } from './description-text.ts';
import type { DescriptionFormat } from './write-description.ts';

export const PLACES = [
  'recording',
  'title',
  'description-text',
  'description-markdown',
  'description-html',
  'captions',
  'chapters',
  'kit-sheets',
] as const;
export type Place = (typeof PLACES)[number];

/** Texts are kept as they were copied, not as a revision gives them. */
export const COPIED_FORMATS: Readonly<Partial<Record<Place, DescriptionFormat>>> = {
  'description-text': 'text',
  'description-markdown': 'markdown',
  'description-html': 'html',
};

/** Files that are kept as they were taken out of a draft, where no revision says the same. */
export const DRAFT_FILES = ['captions', 'chapters'] as const satisfies readonly Place[];
export type DraftFile = (typeof DRAFT_FILES)[number];
export const isDraftFile = (place: string): place is DraftFile => DRAFT_FILES.some((file) => file === place);

/** How the workshop words what is composed. */
export interface Wording {
  readonly setup: DescriptionSetup;
  /** Of the lesson page, whole. */
  readonly lessonAddress: string;
}

type Standing = Pick<Revision, 'content' | 'cues' | 'recording'>;

/** What stands in a place once a revision was taken there; empty where the revision has nothing for it. */
export function standsIn(place: Place, { content, cues, recording }: Standing, wording: Wording): string {
  const durationMs = recording?.durationMs ?? null;
  switch (place) {
    case 'recording':
      return recording?.id ?? '';
    case 'title':
      return content.title;
    case 'description-text':
    case 'description-markdown':
    case 'description-html': {
      const format = COPIED_FORMATS[place] ?? 'text';
      return composeDescription({ content, durationMs, format, ...wording }).text;
    }
    case 'captions':
      return cues.length === 0 ? '' : writeTextFile('captions.vtt', { content, cues, durationMs });
    case 'chapters':
      return content.chapters.length === 0
        ? ''
        : writeTextFile('chapters.vtt', { content, cues, durationMs });
    case 'kit-sheets':
      return content.sizes
        .map(({ name, bodyMm }) => {
          const kit = kitFor(content, bodyMm);
          return kit.ok ? `${name} ${bodyMm}\n${kitCsv(kit.value)}` : '';
        })
        .join('');
  }
}

export type PlaceState =
  /** Nothing was ever taken there, as far as is known. */
  | { readonly is: 'unknown' }
  /** `lines`: how many of its lines differ; null where it has no lines. */
  | { readonly is: 'stale'; readonly lines: number | null }
  /** What was taken along is still right; nobody said that it is in its place. */
  | { readonly is: 'taken' }
  | { readonly is: 'in place' };

/** Places whose text a person looks at line by line. */
const LINED: ReadonlySet<Place> = new Set<Place>([
  'description-text',
  'description-markdown',
  'description-html',
  'captions',
  'chapters',
]);

/** @param then what was last taken there; null where nothing is known @param now what should stand there */
export function placeState(place: Place, then: string | null, now: string, ticked: boolean): PlaceState {
  if (then === null) return { is: 'unknown' };
  if (then === now) return ticked ? { is: 'in place' } : { is: 'taken' };
  if (!LINED.has(place)) return { is: 'stale', lines: null };
  const lines = changedLines(then, now).filter(({ is }) => is !== 'same').length;
  return { is: 'stale', lines: lines === 0 ? null : lines };
}
