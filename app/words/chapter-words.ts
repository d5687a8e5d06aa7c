/** Chapter kinds on the screen: their word and a mark, so that colour is never the only sign. */
import type { Chapter } from '#lib/lesson/content.ts';

export function chapterMark(kind: Chapter['kind']): string {
  switch (kind) {
    case 'opening':
      return '◐';
    case 'materials':
      return '▤';
    case 'terms':
      return '¶';
    case 'setup':
      return '△';
    case 'repeat unit':
      return '↻';
    case 'finishing':
      return '■';
    case 'clasp':
      return '∞';
    case 'variation':
      return '≈';
    case 'closing':
      return '◑';
  }
}

export const chapterKindWords = (kind: Chapter['kind']): string =>
  kind.charAt(0).toUpperCase() + kind.slice(1);
