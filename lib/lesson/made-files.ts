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

/** What is to be made of a revision. A copy of a recording needs captions or chapters to put into it. */
export function filesToMake({
  recording,
  cues,
  content,
}: Pick<Revision, 'recording' | 'cues' | 'content'>): readonly MadeFileName[] {
  return recording && cues.length + content.chapters.length > 0 ? ['recording.mp4', 'recording.mkv'] : [];
}
