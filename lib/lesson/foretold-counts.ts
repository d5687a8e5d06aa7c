/** How many repeats and rings each size takes, foretold from the rings before a sample is made; and what a sample then says to it. */

import { targetOf } from '#lib/kit/length.ts';
import type { Size } from '#lib/kit/making.ts';
import type { Run } from '#lib/weave/placement.ts';
import { unitOf } from '#lib/weave/runs.ts';
import { ringsAdded } from '#lib/weave/sequence.ts';
import type { Content } from './content.ts';
import type { OneRepeat } from './foretell.ts';
import { measuresOf } from './measures.ts';

/** Fewest as when pulled taut, most as when pushed together; ends and clasp are not reckoned in. */
export interface SizeForetold {
  readonly size: Size;
  readonly repeats: readonly [fewest: number, most: number];
  /** Of the repeats alone. */
  readonly rings: readonly [fewest: number, most: number];
}

type Counted = Pick<Content, 'repeat' | 'sizes' | 'kitRules' | 'sample' | 'runs' | 'ringKinds'>;

/** Empty where runs are of another unit than the main one, or in rings of another size, since then no one repeat tells the length. */
export function countsForetold(content: Counted, { tautMm, pushedMm }: OneRepeat): readonly SizeForetold[] {
  const { sizes, kitRules, runs } = content;
  const measures = measuresOf(content);
  const isSameSize = ({ ringKind, by }: Run['swaps'][number]): boolean => {
    const [own, other] = [measures.get(ringKind), measures.get(by)];
    return own?.inner === other?.inner && own?.wire === other?.wire;
  };
  if (runs.some(({ unit, swaps }) => unit !== '' || !swaps.every(isSameSize))) return [];
  const ringsARepeat = unitOf(content, '').reduce((sum, placement) => sum + ringsAdded(placement), 0);
  return sizes.flatMap((size) => {
    const target = targetOf(size.bodyMm, kitRules);
    if (!target.ok) return [];
    const repeats = [tautMm, pushedMm].map((mm) => Math.max(1, Math.ceil(target.value.targetMm / mm - 1e-9)));
    const [fewest = 1, most = 1] = repeats;
    return [{ size, repeats: [fewest, most], rings: [fewest * ringsARepeat, most * ringsARepeat] }];
  });
}

/** Beyond this part longer than taut a sample was not made of such rings, or is read wrong: rings spring and sizes are rounded. */
const LONGER_BY = 0.03;

/** What a sample says to what was foretold; null without one. */
export function sampleAgainst({ sample }: Counted, { tautMm, pushedMm }: OneRepeat) {
  if (!sample) return null;
  const { perRepeatMm } = sample;
  if (perRepeatMm > tautMm * (1 + LONGER_BY)) return 'longer than taut' as const;
  return perRepeatMm < pushedMm * (1 - LONGER_BY) ? ('shorter than pushed' as const) : ('within' as const);
}
