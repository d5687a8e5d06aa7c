/** The parts of a ring sequence. By themselves, so that counting one in a pupil's browser loads no schemas. */
export const SEQUENCE_PARTS = ['start', 'repeat', 'finishing'] as const;
export type SequencePart = (typeof SEQUENCE_PARTS)[number];
