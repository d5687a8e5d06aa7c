/** Spare rings by a stated rule, whole and exact. */
import type { SpareRule } from './making.ts';
import { multiplyDivide, withSpare } from './whole.ts';

/** How a line's spare came about. */
export interface SpareWorking {
  readonly rule: SpareRule;
  readonly net: number;
  readonly spare: number;
  /** Rings of all lines and the spare of them all, where the rule goes by the kit. */
  readonly kit: { readonly net: number; readonly spare: number } | null;
  /** Whether the least of the rule decided. */
  readonly least: boolean;
}

/**
 * Spare for each count of rings, in their order. By the kit, the whole spare
 * is shared out by count: each line gets the whole part of its share, and the
 * rest goes one by one to the largest remainders (the earlier line of two
 * alike). A kind of which none is needed gets none.
 */
export function spareOf(nets: readonly number[], rule: SpareRule): readonly SpareWorking[] {
  const { sparePercent, spareBy, spareLeast } = rule;
  const all = nets.reduce((sum, net) => sum + net, 0);
  const ofAll = withSpare(all, sparePercent) - all;
  const shares =
    spareBy === 'kit' ? sharedOut(ofAll, nets, all) : nets.map((net) => withSpare(net, sparePercent) - net);
  return nets.map((net, index) => {
    const share = shares[index] ?? 0;
    const least = net > 0 && spareLeast > share;
    return {
      rule,
      net,
      spare: least ? spareLeast : share,
      kit: spareBy === 'kit' ? { net: all, spare: ofAll } : null,
      least,
    };
  });
}

function sharedOut(whole: number, weights: readonly number[], all: number): readonly number[] {
  if (all === 0) return weights.map(() => 0);
  const shares = weights.map((weight) => multiplyDivide(whole, weight, all, 'down'));
  const remainders = weights.map((weight) => Number((BigInt(whole) * BigInt(weight)) % BigInt(all)));
  const left = whole - shares.reduce((sum, share) => sum + share, 0);
  const order = weights.map((_, index) => index);
  order.sort((a, b) => (remainders[b] ?? 0) - (remainders[a] ?? 0) || a - b);
  for (const index of order.slice(0, left)) shares[index] = (shares[index] ?? 0) + 1;
  return shares;
}
