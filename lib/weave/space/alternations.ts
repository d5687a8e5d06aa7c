/**
 * Which ways of mixing two sizes a two-row weave allows: rows of one size
 * each, or sizes taking turns along both rows, alike in both or against each
 * other; and how thick the wire may be for each.
 */
import type { Result } from '#lib/result.ts';
import { type RingMeasure, type ShapeFault, shapeOfWeave, type WeaveShape } from './shape-of-weave.ts';

/** Sizes of two cells of two rings each, in the order row A, row B, row A, row B. */
const ALTERNATIONS = {
  'row by row': [0, 1, 0, 1],
  'along the rows, alike': [0, 0, 1, 1],
  'along the rows, against each other': [0, 1, 1, 0],
} as const;
export type Alternation = keyof typeof ALTERNATIONS;
export const ALTERNATION_NAMES = Object.keys(ALTERNATIONS) as readonly Alternation[];

/** Weaves in space of two rows, in which two sizes can take turns. */
export const TWO_ROWS: readonly string[] = [
  'half-persian-3-in-1',
  'half-persian-4-in-1',
  'european-6-in-1-two-rows',
];

/** The taut shape of two cells in one alternation, or why there is none. */
export const alternationOf = (
  weave: string,
  alternation: Alternation,
  { large, small }: { readonly large: RingMeasure; readonly small: RingMeasure },
): Result<WeaveShape, ShapeFault> =>
  shapeOfWeave(
    weave,
    ALTERNATIONS[alternation].map((which) => (which === 0 ? large : small)),
  );

/** For every alternation the taut shape, or why there is none; for weaves with two rings a cell. */
export const alternationsOf = (
  weave: string,
  large: RingMeasure,
  small: RingMeasure,
): readonly { readonly alternation: Alternation; readonly shape: Result<WeaveShape, ShapeFault> }[] =>
  ALTERNATION_NAMES.map((alternation) => ({
    alternation,
    shape: alternationOf(weave, alternation, { large, small }),
  }));

/** Inner diameters of two sizes of ring. */
export interface TwoSizes {
  readonly large: number;
  readonly small: number;
}

const ofWire = ({ large, small }: TwoSizes, wire: number) => ({
  large: { inner: large, wire },
  small: { inner: small, wire },
});

/** Whether an alternation exists with both sizes of one wire, and how long two repeats are; all in one unit. */
export type AtWire =
  | { readonly wire: number; readonly state: 'exists'; readonly pitch: number }
  /** No shape was found, wires being too thick or for another reason. */
  | { readonly wire: number; readonly state: 'too-thick' | 'none-found' };

export function atWire(weave: string, alternation: Alternation, inner: TwoSizes, wire: number): AtWire {
  const shape = alternationOf(weave, alternation, ofWire(inner, wire));
  if (shape.ok) return { wire, state: 'exists', pitch: shape.value.cell.pitch };
  return { wire, state: shape.fault.code === 'wires-too-thick' ? 'too-thick' : 'none-found' };
}

/** Halvings between a wire that goes and one that does not: a sixteenth of what lay between them is left open. */
const HALVINGS = 4;

/** The thickest wire with which an alternation exists, closed in from one that goes and a thicker one that does not; on the safe side. */
export function thickestWire(
  weave: string,
  alternation: Alternation,
  inner: TwoSizes,
  between: readonly [goes: number, not: number],
): number {
  let [goes, not] = between;
  for (let n = 0; n < HALVINGS; n++) {
    const wire = (goes + not) / 2;
    if (atWire(weave, alternation, inner, wire).state === 'exists') goes = wire;
    else not = wire;
  }
  return goes;
}
