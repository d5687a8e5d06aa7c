/** Words about files that are made of a published revision. */
import type { MadeFileFault, MadeFileName } from '#lib/lesson/made-files.ts';
import type { Revision } from '#lib/lesson/revision.ts';

/** What a file is. */
export function madeFileTitle(name: MadeFileName): string {
  switch (name) {
    case 'card.png':
      return 'Picture for links, PNG';
    case 'poster.webp':
      return 'Poster of the player, WebP';
    case 'recording.mp4':
      return 'Recording, MP4';
    case 'recording.mkv':
      return 'Recording, Matroska';
  }
}

/** What the recordings to take along carry: `captions and chapters`. */
export const carriedWords = ({ cues, content }: Pick<Revision, 'cues' | 'content'>): string =>
  [cues.length > 0 ? 'captions' : '', content.chapters.length > 0 ? 'chapters' : '']
    .filter((word) => word !== '')
    .join(' and ');

export function madeFileFaultWords(fault: MadeFileFault): string {
  switch (fault) {
    case 'converter-missing':
      return 'could not be made: ffmpeg is missing on this server.';
    case 'disk-full':
      return 'could not be made: the server’s disk is full. Make room, then try again.';
    case 'gave-up':
      return 'could not be made, although it was tried several times.';
  }
}

/** A file's size as a list shows it: `840 kB`, `12.3 MB` (decimal multiples, as in ISO/IEC 80000-13). */
export function fileSizeWords(bytes: number): string {
  if (bytes < 999_500) return `${Math.max(1, Math.round(bytes / 1_000))} kB`;
  if (bytes < 999_500_000) return `${inPlaces(bytes / 1_000_000)} MB`;
  return `${inPlaces(bytes / 1_000_000_000)} GB`;
}

const inPlaces = (number: number): string => (number < 99.95 ? number.toFixed(1) : number.toFixed(0));
