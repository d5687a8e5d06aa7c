/** Which words of a passage were sought, to be marked on the screen. */
import { stemOf } from '#lib/chapters/content-words.ts';
import type { Sought } from './sought.ts';

/** A piece of the text; all pieces together are the text. */
export interface MarkedPiece {
  readonly text: string;
  readonly sought: boolean;
}

/** Parts a text at the words that have a stem in common with a term. */
export function markSought(text: string, { terms }: Sought): readonly MarkedPiece[] {
  const stems = new Set(terms.map(stemOf));
  const pieces: MarkedPiece[] = [];
  for (const [piece] of text.matchAll(/\d+(?:[.,]\d+)+|[\p{L}\p{N}]+(?:['’]\p{L}+)*|[^\p{L}\p{N}]+/gu)) {
    const word = piece.toLowerCase().replaceAll('’', "'");
    const sought = stems.has(stemOf(word)) || terms.includes(word);
    const last = pieces.at(-1);
    if (last && !last.sought && !sought) pieces[pieces.length - 1] = { text: last.text + piece, sought };
    else pieces.push({ text: piece, sought });
  }
  return pieces;
}
