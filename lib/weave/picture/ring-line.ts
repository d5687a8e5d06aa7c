/** A line along a ring's wire: what tells it from rings of another kind where colour might not. */
export const RING_LINES = ['whole', 'dashed'] as const;
export type RingLine = (typeof RING_LINES)[number];
