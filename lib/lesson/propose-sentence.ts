/** A sentence for the pupil, made from what a placement says; the teacher takes it or writes her own. */
import type { Content, Placement } from './content.ts';
import { placementFacts } from './placement-words.ts';

/** `Open one copper ring, pick up two ..., go through ..., and close it.`; empty where the placement says nothing. */
export function proposeSentence(content: Pick<Content, 'ringKinds'>, placement: Placement): string {
  const laid = placementFacts(content, { ...placement, opened: null, carries: [], passes: [] });
  const done = placementFacts(content, { ...placement, lie: 'as it falls' });
  const deeds = placement.opened === null ? done : [...done, 'close it'];
  const last = deeds.at(-1);
  if (last === undefined) return laid.map(asSentence).join(' ');
  const first = deeds.length === 1 ? last : `${deeds.slice(0, -1).join(', ')} and ${last}`;
  return [first, ...laid].map(asSentence).join(' ');
}

const asSentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
