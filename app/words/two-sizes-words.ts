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

/** One cell of the table: how long four rings are, or how much thinner the wires would have to be. */
export function atWireWords(found: AtWire): string {
  if (found.state === 'exists') return `yes, ${figure(found.pitch, 2)} mm for 4 rings`;
  return found.wiresBy === null
    ? 'none found'
    : `no, wires would have to be ${Math.max(1, Math.ceil((1 - found.wiresBy) * 100))} % thinner`;
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
