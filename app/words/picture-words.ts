import type { NoWholeLength } from '#lib/lesson/fits-a-picture.ts';

/** What the marks in a step's picture mean; said once beside them, on the page and on paper. */
export const PICTURE_MARKS =
  'Black number: the ring of this step. Number in a box: a closed ring that it carries. Dotted number: a ring that it enters. An arrow goes the way the ring goes, through the rings whose numbers stand at its foot; a dot there means from the back, a cross from the front.';

/** Why a lesson shows no picture of the whole length. */
export function noWholeLength(why: NoWholeLength): string {
  switch (why) {
    case 'weaves-differ':
      return 'The whole length is not drawn: its units are different weaves, and how one goes over into the next is not worked out.';
    case 'sizes-differ':
      return 'The whole length is not drawn: in some repeats rings of another size stand in, and how they pull the weave in is not worked out.';
    case 'too-many-rings':
      return 'The whole length is not drawn: it has more rings than a picture can show.';
  }
}
