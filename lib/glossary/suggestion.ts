/** What may stand wrongly in a transcript, and what would stand there instead; for a person to decide. */

/** A stretch of one cue and what would stand there instead. */
export interface SuggestedPart {
  readonly cueId: string;
  readonly start: number;
  readonly end: number;
  readonly instead: string;
}

export const REASONS = [
  /** It sounds like the term. */
  'sound',
  /** The glossary lists the words as a mishearing of the term. */
  'known confusion',
  /** Taken in this workshop before. */
  'taken before',
  /** Such a gauge is not made, but its like-sounding number is. */
  'no such gauge',
  /** A weave's number of links run together: `41` for `4-in-1`. */
  'links run together',
  /** Too large for a ring: the point was lost. */
  'point lost',
  /** The kit has the number that sounds alike. */
  'kit says otherwise',
] as const;
export type Reason = (typeof REASONS)[number];

export interface Suggestion {
  /** The same for the same words at the same place. */
  readonly id: string;
  /** As it stands, in one line. */
  readonly heard: string;
  readonly instead: string;
  /** The glossary's term; the same as `instead` for numbers. */
  readonly term: string;
  readonly reason: Reason;
  /** Share of the sounds that differ, 0 to 1. */
  readonly distance: number;
  /** One stretch; two where the words run over from one cue into the next. */
  readonly parts: readonly SuggestedPart[];
}

/** What tells suggestions of the same kind: the same words for the same term. */
export const alikeKey = ({ heard, instead }: Pick<Suggestion, 'heard' | 'instead'>): string =>
  `${plainWords(heard)} > ${plainWords(instead)}`;

/** Words alone, small, one space between. */
export const plainWords = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[\s-]+/g, ' ')
    .trim();
