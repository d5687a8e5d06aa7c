/**
 * Files of a revision that take long to make: the worker makes them after it
 * is published, and keeps them as long as the revision. Text files are written
 * whenever they are asked for (text-files.ts).
 */
import type { Revision } from './revision.ts';

/** Names of the files, with their media types (RFC 9559 for Matroska). */
export const MADE_FILES = {
  'recording.mp4': 'video/mp4',
  'recording.mkv': 'video/matroska',
  /** Stands for the lesson where somebody links to it. */
  'card.png': 'image/png',
  /** The poster as the player shows it, light enough for a telephone on a slow line. */
  'poster.webp': 'image/webp',
} as const;
export type MadeFileName = keyof typeof MADE_FILES;

export const isMadeFile = (name: string): name is MadeFileName => Object.hasOwn(MADE_FILES, name);

export const MADE_FILE_FAULTS = ['converter-missing', 'disk-full', 'gave-up'] as const;
export type MadeFileFault = (typeof MADE_FILE_FAULTS)[number];

/** How far the making of a file is. */
export type MadeFile = { readonly name: MadeFileName } & (
  | { readonly state: 'waiting' }
  /** Percent, 0 to 100. */
  | { readonly state: 'making'; readonly percent: number }
  | { readonly state: 'ready'; readonly storageKey: string; readonly sizeBytes: number }
  | { readonly state: 'failed'; readonly fault: MadeFileFault }
);

/** Of the card, pixels: usual for pictures of links. Common practice, from memory. */
export const CARD_SIZE = { width: 1200, height: 630 } as const;

/** What is to be made of a revision. A copy of a recording needs captions or chapters to put into it. */
export function filesToMake({
  recording,
  cues,
  content,
}: Pick<Revision, 'recording' | 'cues' | 'content'>): readonly MadeFileName[] {
  const carries = recording !== null && cues.length + content.chapters.length > 0;
  return [
    'card.png',
    ...(recording?.posterKey ? (['poster.webp'] as const) : []),
    ...(carries ? (['recording.mp4', 'recording.mkv'] as const) : []),
  ];
}
