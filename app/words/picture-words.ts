/** What the marks in a step's picture mean; said once beside them, on the page and on paper. */
export const PICTURE_MARKS =
  'Black number: the ring of this step. Number in a box: a closed ring that it carries. Dotted number: a ring that it enters. An arrow goes the way the ring goes, through the rings whose numbers stand at its foot; a dot there means from the back, a cross from the front.';
