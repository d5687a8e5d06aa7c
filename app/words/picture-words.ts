import type { NotDrawn } from '#lib/lesson/whole-picture.ts';
import { shapeFaultWords } from './shape-words.ts';

/** What the marks in a step's picture mean; said once beside them, on the page and on paper. */
export const PICTURE_MARKS =
  'Black number: the ring of this step. Number in a box: a closed ring that it carries. Dotted number: a ring that it enters. An arrow goes the way the ring goes, through the rings whose numbers stand at its foot; a dot there means from the back, a cross from the front.';

/** Said beside pictures whose shape was derived. */
export const DERIVED_PICTURE =
  'Its shape is computed from which ring goes through which, and from which side; your piece may lie a little otherwise.';

/** Why a lesson shows no picture of the whole length. */
export const TOO_MANY_RINGS = 'The whole length is not drawn: it has more rings than a picture can show.';

/** Parts of a piece that are left empty in the picture of its whole length, each with its reason; empty where none is. */
export const notDrawnWords = (
  notDrawn: readonly NotDrawn[],
  ringKinds: readonly { readonly id: string; readonly name: string }[],
): readonly string[] => {
  const nameOf = (id: string): string => ringKinds.find((kind) => kind.id === id)?.name ?? '';
  return notDrawn.map(({ label, fault }) => `Not drawn: ${label}. ${shapeFaultWords(fault, nameOf)}`);
};
