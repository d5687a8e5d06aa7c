/** Chapter kinds on the screen: their word and a mark, so that colour is never the only sign. */
import type { ProposedChapter } from '#lib/chapters/propose-chapters.ts';
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

/** Why a chapter is proposed to be of its kind. */
export function kindReason({ kind, said, place }: Pick<ProposedChapter, 'kind' | 'said' | 'place'>): string {
  const stands = place === 'first' ? 'It comes first' : place === 'last' ? 'It comes last' : null;
  const quoted = said.map((words) => `“${words}”`);
  const last = quoted.at(-1);
  const says =
    last === undefined ? null : quoted.length === 1 ? last : `${quoted.slice(0, -1).join(', ')} and ${last}`;
  if (stands && says) return `${stands} and says ${says}.`;
  if (stands) return `${stands}.`;
  if (says) return `${chapterKindWords(kind)}, for it says ${says}.`;
  return `${chapterKindWords(kind)}, by its place between the others.`;
}

/** What is heard where a proposed chapter begins. */
export const placeReason = ({ silenceMs }: Pick<ProposedChapter, 'silenceMs'>): string =>
  silenceMs === 0 ? '' : `It begins after ${(silenceMs / 1000).toFixed(1)} s of silence.`;
