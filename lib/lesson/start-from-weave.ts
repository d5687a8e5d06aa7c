/** What a lesson takes from a stored weave: placements with sentences, and ends; as changes, so that one undo takes it back. */
import type { Weave } from '#lib/weave/weaves/weave.ts';
import type { Change } from './change.ts';
import { type Content, type Placement, SEQUENCE_PARTS } from './content.ts';
import { proposeSentence } from './propose-sentence.ts';

/** Ring kind of the lesson that plays each role of the weave, by the role's id. */
export type Cast = Readonly<Record<string, string>>;

/**
 * Replaces the ring sequence by the weave's. Runs go, since they are runs of
 * the old one; the name of the weave is taken where the lesson has none yet.
 *
 * @param newId makes ids for life
 */
export function startFromWeave(
  content: Content,
  weave: Weave,
  cast: Cast,
  newId: () => string,
): readonly Change[] {
  const kindOf = (role: string): string => cast[role] ?? role;
  const ids = new Map<string, string>();
  const taken = (placement: Placement): Placement => {
    const id = newId();
    ids.set(placement.id, id);
    const own: Placement = {
      ...placement,
      id,
      opened: placement.opened === null ? null : kindOf(placement.opened),
      carries: placement.carries.map((carry) => ({ ...carry, ringKind: kindOf(carry.ringKind) })),
    };
    return { ...own, sentence: proposeSentence(content, own) };
  };
  const old = [...SEQUENCE_PARTS, 'runs' as const].flatMap((list) =>
    content[list].map(({ id }): Change => ({ kind: 'remove', list, id })),
  );
  const placed = SEQUENCE_PARTS.flatMap((list) =>
    weave.piece[list].map((placement): Change => ({ kind: 'put', list, item: { ...taken(placement) } })),
  );
  const { endsAfter, ends } = weave.piece;
  const castEnds = ends && {
    first: ends.first.map((ring) => ({ ...ring, ringKind: ring.ringKind && kindOf(ring.ringKind) })),
    last: ends.last.map((ring) => ({ ...ring, ringKind: ring.ringKind && kindOf(ring.ringKind) })),
  };
  return [
    ...old,
    ...placed,
    { kind: 'set', field: 'endsAfter', value: endsAfter === null ? null : (ids.get(endsAfter) ?? null) },
    { kind: 'set', field: 'ends', value: castEnds },
    ...(content.weave.trim() === ''
      ? ([{ kind: 'set', field: 'weave', value: weave.name }] satisfies Change[])
      : []),
  ];
}
