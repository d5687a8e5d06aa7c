/** The sequences of a lesson that are none of the stored weaves, and that a shape can be sought for. */
import { unitsOf } from '#lib/weave/runs.ts';
import { type OwnSequence, ownKey, ownSequenceOf } from '#lib/weave/space/own-weave.ts';
import { pieceCell } from '#lib/weave/space/piece-cell.ts';
import { weaveOfPiece } from '#lib/weave/space/piece-in-space.ts';
import type { Pictured } from './pictured.ts';
import { unitAlone } from './unit-alone.ts';

/** By their keys; empty for most lessons. */
export function ownSequences(content: Pictured): ReadonlyMap<string, OwnSequence> {
  const units = content.repeat.length === 0 ? [''] : unitsOf(content);
  return new Map(
    units.flatMap((unit) => {
      const cell = pieceCell(unitAlone(content, unit));
      const sequence = cell && weaveOfPiece(cell) === null ? ownSequenceOf(cell) : null;
      return sequence?.ok ? [[ownKey(sequence.value), sequence.value] as const] : [];
    }),
  );
}
