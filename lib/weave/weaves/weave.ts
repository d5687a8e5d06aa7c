/**
 * What a stored weave is, and short words to write one down with. Ring kinds
 * of a stored weave are roles (`large`, `small`); a lesson puts its own rings
 * in their place.
 */
import { endsOf } from '../ends.ts';
import type { Piece, Placement, RingRef, SequencePart, Side } from '../placement.ts';

export interface Weave {
  readonly id: string;
  /** The trade's name for it. */
  readonly name: string;
  readonly otherNames: string;
  /** What it is and how it is begun, in our own words. */
  readonly about: string;
  /** Whether it exists in a left and a right hand. */
  readonly hasHand: boolean;
  readonly roles: readonly { readonly id: string; readonly name: string }[];
  /** Shown where the structure is our reading of it and other readings exist; else empty. */
  readonly doubt: string;
  readonly piece: Required<Piece>;
}

type Pass = Placement['passes'][number];
type Carry = Placement['carries'][number];
type Unnamed = Omit<Placement, 'id' | 'sentence' | 'atMs' | 'pictureText'>;

/** The `nth` newest ring of a row. */
export const newest = (row: string, nth = 1): RingRef => ({ row, nth, from: 'newest' });

const passing =
  (from: Side) =>
  (row: string, ...nths: readonly number[]): readonly Pass[] =>
    nths.map((nth) => ({ from, ring: newest(row, nth) }));
/** Passes the named rings of a row (1: the newest) from their front. */
export const front = passing('front');
export const back = passing('back');

/** Closed rings picked up into a row, entered from a side. */
export const carry = (ringKind: string, row: string, from: Side, count = 1): Carry => ({
  ringKind,
  row,
  from,
  count,
});

/** Opens a ring into a row, through rings that are there, carrying closed ones. */
export const open = (
  opened: string,
  row: string,
  passes: readonly Pass[],
  carries: readonly Carry[] = [],
  lie: Pick<Unnamed, 'lie' | 'lays'> = { lie: 'as it falls' },
): Unnamed => ({ opened, row, passes, carries, ...lie });

/** Lays out closed rings: kind, row, how many. */
export const lay = (
  ...closed: readonly (readonly [ringKind: string, row: string, count: number])[]
): Unnamed => ({
  opened: null,
  carries: closed.map(([ringKind, row, count]) => ({ ringKind, row, count })),
  passes: [],
  lie: 'as it falls',
});

export interface WeaveWords extends Omit<Weave, 'piece' | 'doubt' | 'otherNames'> {
  readonly otherNames?: string;
  readonly doubt?: string;
  readonly start: readonly Unnamed[];
  readonly repeat: readonly Unnamed[];
  readonly finishing?: readonly Unnamed[];
  /** Which placement of the repeat, from 1, the finishing follows; absent: the last. */
  readonly endsAfter?: number;
}

/** The weave with ids (`start-1`, `repeat-2`) on its placements and its ends as they come out. */
export function weave({ start, repeat, finishing = [], endsAfter, ...words }: WeaveWords): Weave {
  const named = (part: SequencePart, placements: readonly Unnamed[]): readonly Placement[] =>
    placements.map((each, index) => ({
      ...each,
      id: `${part}-${index + 1}`,
      sentence: '',
      atMs: null,
      pictureText: '',
    }));
  const piece = {
    start: named('start', start),
    repeat: named('repeat', repeat),
    finishing: named('finishing', finishing),
    runs: [],
    endsAfter: endsAfter === undefined ? null : `repeat-${endsAfter}`,
  };
  return { otherNames: '', doubt: '', ...words, piece: { ...piece, ends: endsOf(piece) } };
}

export const ONE_KIND = [{ id: 'ring', name: 'ring' }] as const;
export const TWO_SIZES = [
  { id: 'large', name: 'large' },
  { id: 'small', name: 'small' },
] as const;
