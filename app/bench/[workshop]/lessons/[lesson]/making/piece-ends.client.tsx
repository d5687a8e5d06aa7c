'use client';
/** How the piece ends: where in a repeat the finishing comes, and what shows at both ends. */
import { endWords } from '#app/words/weave-words.ts';
import { endsOf } from '#lib/weave/ends.ts';
import type { EndRing } from '#lib/weave/placement.ts';
import { useDraft } from '../draft.client.tsx';
import { ChoiceField } from './fields/choice-field.client.tsx';
import fieldStyles from './fields/fields.module.css';
import styles from './making.module.css';

export function PieceEndsFields() {
  const { content, change, mayEdit } = useDraft();
  const { repeat, ends, endsAfter } = content;
  if (repeat.length === 0) return null;
  const nameOf = (id: string): string => content.ringKinds.find((kind) => kind.id === id)?.name ?? '';
  const state = (value: typeof ends, words: string) => change([{ kind: 'set', field: 'ends', value }], words);
  return (
    <section className={styles.part} aria-labelledby="piece-ends">
      <h3 id="piece-ends">Ends</h3>
      <p className="soft">
        A piece can end in the middle of a repeat, so that a certain ring comes last. What shows at the ends
        can be stated; then a finishing that was forgotten is noticed.
      </p>
      {repeat.length > 1 && (
        <div className={fieldStyles.grid}>
          <ChoiceField<string>
            label="The finishing follows"
            value={endsAfter ?? ''}
            choices={[
              ['', 'a whole repeat'],
              ...repeat
                .slice(0, -1)
                .map(
                  (placement, index) => [placement.id, `placement ${index + 1} of one more repeat`] as const,
                ),
            ]}
            onTake={(id) =>
              change([{ kind: 'set', field: 'endsAfter', value: id === '' ? null : id }], 'where it ends')
            }
          />
        </div>
      )}
      {ends ? (
        <dl className={styles.ends}>
          <EndList title="It begins with" rings={ends.first} nameOf={nameOf} />
          <EndList title="It ends with" rings={ends.last} nameOf={nameOf} />
        </dl>
      ) : (
        <p>The ends are not stated.</p>
      )}
      {mayEdit && (
        <div className="row">
          <button type="button" className="quiet" onClick={() => state(endsOf(content), 'state the ends')}>
            State the ends as they come out now
          </button>
          {ends && (
            <button type="button" className="bare" onClick={() => state(null, 'forget the ends')}>
              State nothing about the ends
            </button>
          )}
        </div>
      )}
    </section>
  );
}

function EndList({
  title,
  rings,
  nameOf,
}: {
  title: string;
  rings: readonly EndRing[];
  nameOf: (id: string) => string;
}) {
  return (
    <div>
      <dt>{title}</dt>
      {rings.map((ring) => (
        <dd key={`${ring.row} ${ring.nth}`}>{endWords(ring, nameOf)}</dd>
      ))}
    </div>
  );
}
