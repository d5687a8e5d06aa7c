/** A weave with shapes that were worked out beforehand: a stored one, or one derived from a teacher's own sequence. */
import { findSettledWeave } from './known-shape.ts';
import type { SettledWeave } from './settled-weave.ts';
import { findWeaveInSpace, type WeaveInSpace } from './weave-in-space.ts';

export interface KnownWeave {
  readonly weave: Pick<WeaveInSpace, 'id' | 'links' | 'rings' | 'kind' | 'twist' | 'freeTwist'>;
  readonly settled: SettledWeave;
}

/** The stored weave with this id; null where there is none. */
export function findKnownWeave(id: string): KnownWeave | null {
  const [weave, settled] = [findWeaveInSpace(id), findSettledWeave(id)];
  return weave && settled ? { weave, settled } : null;
}
