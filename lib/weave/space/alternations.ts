/**
 * Which ways of mixing two sizes a two-row weave allows: rows of one size
 * each, or sizes taking turns along both rows, alike in both or against each
 * other.
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

/** For every alternation the taut shape, or why there is none; for weaves with two rings a cell. */
export const alternationsOf = (
  weave: string,
  large: RingMeasure,
  small: RingMeasure,
): readonly { readonly alternation: Alternation; readonly shape: Result<WeaveShape, ShapeFault> }[] =>
  (Object.keys(ALTERNATIONS) as Alternation[]).map((alternation) => ({
    alternation,
    shape: shapeOfWeave(
      weave,
      ALTERNATIONS[alternation].map((which) => (which === 0 ? large : small)),
    ),
  }));
