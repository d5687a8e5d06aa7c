'use client';
/** What the check of the whole piece says, in one place; faults of a placement stand at the placement too. */
import { pieceFaultWords } from '#app/words/weave-words.ts';
import type { PieceCheck } from '#lib/weave/check-piece.ts';
import { SEQUENCE_PARTS } from '#lib/weave/placement.ts';
import { walkPiece } from '#lib/weave/walk.ts';
import { useDraft } from '../draft.client.tsx';

const REPEATS_TOLD = 4;

export function PieceState({ check }: { check: PieceCheck }) {
  const { content } = useDraft();
  const placed = SEQUENCE_PARTS.flatMap((part) =>
    content[part].map((placement, index) => ({ id: placement.id, name: `${part} ${index + 1}` })),
  );
  if (placed.length === 0) return null;
  const nameOf = (id: string): string => content.ringKinds.find((kind) => kind.id === id)?.name ?? '';
  const [first] = check.faults;
  if (first)
    return (
      <div className="notice alarm" role="status">
        <p>
          <strong>
            {check.faults.length === 1
              ? 'The piece cannot be made like this yet.'
              : `${check.faults.length} things speak against this piece; the first is the one to mend first.`}
          </strong>
        </p>
        <ul>
          {check.faults.map((fault) => {
            const at = placed.find(({ id }) => id === fault.placementId);
            const words = pieceFaultWords(fault, nameOf);
            return (
              <li key={`${words} ${fault.placementId}`}>
                {at && (
                  <>
                    <a href={`#${at.id}`}>{at.name}</a>:{' '}
                  </>
                )}
                {words}
              </li>
            );
          })}
        </ul>
      </div>
    );
  if (check.untold > 0)
    return (
      <p className="notice" role="status">
        {check.untold === 1 ? 'One placement does' : `${check.untold} placements do`} not say which rings are
        passed, so nobody can tell yet whether the piece holds. Counts and kits do not need it.
      </p>
    );
  const woven = walkPiece({ ...content, runs: [] }, REPEATS_TOLD);
  return (
    <p className="notice" role="status">
      It can be made as told: every ring that is passed is there, and nothing falls apart.{' '}
      {content.repeat.length > 0 ? `With ${REPEATS_TOLD} repeats` : 'The piece'}: {woven.rings.length}{' '}
      {woven.rings.length === 1 ? 'ring' : 'rings'}, {woven.links.length} links.
    </p>
  );
}
