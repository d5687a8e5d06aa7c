/** How the ids of boxes begin that tell what a term means. */
export const TERM_BOX = 'term-';
