/** Words for how two sizes of ring can take turns in a weave of two rows. */
import type { Alternation, AtWire, TwoSizes } from '#lib/weave/space/alternations.ts';
import { figure } from './ring-words.ts';

export function alternationWords(alternation: Alternation): {
  readonly title: string;
  readonly about: string;
} {
  switch (alternation) {
    case 'row by row':
      return { title: 'One size a row', about: 'all large rings in one row, all small ones in the other' };
    case 'along the rows, alike':
      return { title: 'In step', about: 'large and small take turns along both rows, large beside large' };
    case 'along the rows, against each other':
      return {
        title: 'Against each other',
        about: 'large and small take turns along both rows, large beside small',
      };
  }
}

/**
 * One cell of the table: how long four rings are, or by how much the wire is too thick.
 *
 * @param thickest closed in on; null while it is not known, and where no wire of the table goes
 */
export function atWireWords(found: AtWire, thickest: number | null): string {
  switch (found.state) {
    case 'exists':
      return `yes, ${figure(found.pitch, 2)}\u00a0mm for 4 rings`;
    case 'none-found':
      return 'none found';
    case 'too-thick': {
      if (thickest === null) return 'no, the wire is too thick';
      const by = Math.max(1, Math.ceil((1 - thickest / found.wire) * 100));
      return `no, the wire is ${by}\u00a0% too thick`;
    }
  }
}

const ratios = ({ large, small }: TwoSizes, wire: number): string =>
  `aspect ratios ${figure(large / wire, 2)} and ${figure(small / wire, 2)}`;

/** What holds of one alternation over all wires. @param thickest closed in on; null while it is not known */
export function alternationSummary(
  alternation: Alternation,
  found: readonly AtWire[],
  { inner, thickest }: { readonly inner: TwoSizes; readonly thickest: number | null },
): string {
  const { title } = alternationWords(alternation);
  const goes = found.filter(({ state }) => state === 'exists');
  const last = goes.at(-1)?.wire;
  if (found.length === 0) return '';
  if (last === undefined)
    return `${title}: with none of these wires. Even at ${figure(found[0]?.wire ?? 0, 2)} mm (${ratios(inner, found[0]?.wire ?? 1)}) neighbours lie in each other's way.`;
  if (goes.length === found.length) return `${title}: with all of these wires.`;
  const most = Math.floor((thickest ?? last) * 100) / 100;
  return `${title}: with wire up to ${figure(most, 2)} mm (${ratios(inner, most)}). With thicker wire the rings that pass each other have no room left.`;
}
