/** Longest time that is accepted: 100 hours, in ms. Far beyond any lesson. By itself, so that pages need not load schemas for it. */
export const LONGEST_MS = 100 * 3_600_000;
