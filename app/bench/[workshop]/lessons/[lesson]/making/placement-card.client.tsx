'use client';
/** One placement: what is opened, picked up, passed and how it lies; its sentence and its moment. */
import { placementFacts } from '#lib/lesson/placement-words.ts';
import { proposeSentence } from '#lib/lesson/propose-sentence.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';
import { LIES, type Placement, type SequencePart, type Side } from '#lib/weave/placement.ts';
import { useDraft } from '../draft.client.tsx';
import { ChoiceField } from './fields/choice-field.client.tsx';
import fieldStyles from './fields/fields.module.css';
import { NumberField } from './fields/number-field.client.tsx';
import { TextField } from './fields/text-field.client.tsx';
import { ItemButtons } from './item-buttons.client.tsx';
import styles from './making.module.css';
import { MomentField } from './moment-field.client.tsx';
import { PlacementFigure } from './ring-figure.tsx';
import type { ListDeeds } from './use-list.ts';

export interface PlacementCardProps {
  readonly placement: Placement;
  readonly part: SequencePart;
  readonly index: number;
  /** Rings that the piece has once this is done, one repeat counted. */
  readonly rings: number;
  readonly lessonId: string;
  readonly list: ListDeeds<SequencePart>;
  readonly isOpen: boolean;
  readonly onToggle: () => void;
}

export const placementName = (part: SequencePart, index: number): string => `${part} ${index + 1}`;

export function PlacementCard(props: PlacementCardProps) {
  const { placement, part, index, rings, list, isOpen, onToggle } = props;
  const { content, mayEdit } = useDraft();
  const called = placementName(part, index);
  const facts = placementFacts(content, placement);
  const known = (id: string): boolean => content.ringKinds.some((kind) => kind.id === id);
  const unknown = [placement.opened, ...placement.carries.map((c) => c.ringKind)].some(
    (id) => id !== null && !known(id),
  );
  return (
    <li className={styles.card} id={placement.id}>
      <div className={styles.cardHead}>
        <PlacementFigure placement={placement} kinds={content.ringKinds} />
        <div className={styles.cardTitle}>
          <h4>
            {index + 1}. {placement.sentence || <span className="soft">No sentence for the pupil yet</span>}
          </h4>
          <p className="soft">
            {facts.length > 0 ? `${facts.join('; ')}. ` : 'Adds nothing yet. '}
            <span className="label">
              {rings} {rings === 1 ? 'ring' : 'rings'} so far
            </span>{' '}
            {placement.atMs !== null && <span className="label">{formatTimeCode(placement.atMs)}</span>}
          </p>
          {unknown && (
            <p className="fault">A ring kind of this placement was taken out. Choose another one.</p>
          )}
        </div>
      </div>
      {mayEdit && (
        <div className={styles.cardFoot}>
          <button type="button" className="quiet" aria-expanded={isOpen} onClick={onToggle}>
            {isOpen ? 'Done' : 'Change'}
            <span className="unseen"> {called}</span>
          </button>
          <ItemButtons
            name={called}
            index={index}
            count={list.items.length}
            onMove={(by) => list.move(placement.id, by)}
            onDuplicate={() => list.add({ ...placement, id: crypto.randomUUID() }, index + 1)}
            onRemove={() => list.remove(placement.id)}
          />
        </div>
      )}
      {isOpen && <PlacementFields {...props} />}
    </li>
  );
}

const otherSide = (side: Side): Side => (side === 'front' ? 'back' : 'front');

function PlacementFields({ placement, part, index, lessonId, list }: PlacementCardProps) {
  const { content } = useDraft();
  const place = `${lessonId}/${placement.id}`;
  const called = placementName(part, index);
  const put = (over: Partial<Placement>, what: string, run?: string) =>
    list.put({ ...placement, ...over }, what, run);
  const proposed = proposeSentence(content, placement);
  const kinds = content.ringKinds.map((kind, at) => [kind.id, kind.name || `ring kind ${at + 1}`] as const);
  const withMissing = (id: string | null) =>
    id === null || kinds.some(([known]) => known === id)
      ? kinds
      : [...kinds, [id, 'taken out: choose another'] as const];
  return (
    <div className={styles.fields}>
      <div className={fieldStyles.grid}>
        <ChoiceField
          id={`${placement.id}-opened`}
          label="Opens"
          value={placement.opened ?? ''}
          choices={[['', 'no ring (closed ones are laid out)'] as const, ...withMissing(placement.opened)]}
          onTake={(id) => put({ opened: id === '' ? null : id }, 'opened ring')}
        />
        <ChoiceField
          label="Lies"
          value={placement.lie}
          choices={LIES.map((lie) => [lie, lie] as const)}
          onTake={(lie) => put({ lie }, 'how it lies')}
        />
      </div>
      <fieldset>
        <legend>Closed rings it picks up</legend>
        {placement.carries.map((carry, at) => {
          const replace = (over: Partial<typeof carry>, run?: string) =>
            put({ carries: placement.carries.with(at, { ...carry, ...over }) }, 'carried rings', run);
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: a carry is its place in the order
            <div key={at} className={styles.carry}>
              <NumberField
                label="How many"
                place={`${place}/carry-${at}`}
                value={carry.count}
                places={0}
                least={1}
                most={1000}
                onTake={(count, run) => replace({ count: count ?? 1 }, run)}
              />
              <ChoiceField
                label="of"
                value={carry.ringKind}
                choices={withMissing(carry.ringKind)}
                onTake={(ringKind) => replace({ ringKind })}
              />
              <button
                type="button"
                className="bare"
                onClick={() => put({ carries: placement.carries.toSpliced(at, 1) }, 'carried rings')}
              >
                Take out<span className="unseen"> these closed rings</span>
              </button>
            </div>
          );
        })}
        {kinds[0] && placement.carries.length < 20 ? (
          <button
            type="button"
            className="quiet"
            onClick={() =>
              put(
                { carries: [...placement.carries, { ringKind: kinds[0]?.[0] ?? '', count: 1 }] },
                'carried rings',
              )
            }
          >
            Add closed rings
          </button>
        ) : (
          kinds.length === 0 && <p className="hint">Describe a ring kind first.</p>
        )}
      </fieldset>
      <fieldset>
        <legend>Rings it passes, in order</legend>
        <div className={styles.passes}>
          {placement.passes.map((pass, at) => (
            <button
              // biome-ignore lint/suspicious/noArrayIndexKey: a pass is its place in the order
              key={at}
              type="button"
              className="quiet"
              onClick={() =>
                put({ passes: placement.passes.with(at, { from: otherSide(pass.from) }) }, 'passed rings')
              }
            >
              <span className="unseen">Ring </span>
              {at + 1}: from the {pass.from}
              <span className="unseen">; turn to the {otherSide(pass.from)}</span>
            </button>
          ))}
          {placement.passes.length === 0 && <span className="soft">None yet.</span>}
        </div>
        <div className="row">
          {(['front', 'back'] as const).map((from) => (
            <button
              key={from}
              type="button"
              className="quiet"
              aria-disabled={placement.passes.length >= 50}
              onClick={() =>
                placement.passes.length < 50 &&
                put({ passes: [...placement.passes, { from }] }, 'passed rings')
              }
            >
              Pass one from the {from}
            </button>
          ))}
          {placement.passes.length > 0 && (
            <button
              type="button"
              className="bare"
              onClick={() => put({ passes: placement.passes.slice(0, -1) }, 'passed rings')}
            >
              Take the last one out
            </button>
          )}
        </div>
      </fieldset>
      <TextField
        id={`${placement.id}-sentence`}
        label="Sentence for the pupil"
        rows={2}
        value={placement.sentence}
        onTake={(sentence, run) => put({ sentence }, 'sentence', run)}
      />
      {proposed !== '' && proposed !== placement.sentence && (
        <div className={`notice ${styles.proposed}`}>
          <p>{proposed}</p>
          <button type="button" className="quiet" onClick={() => put({ sentence: proposed }, 'sentence')}>
            Take this sentence
          </button>
        </div>
      )}
      <MomentField
        id={`${placement.id}-moment`}
        place={place}
        called={called}
        atMs={placement.atMs}
        pictureText={placement.pictureText}
        onMoment={(atMs, run) => put({ atMs }, 'moment', run)}
        onPictureText={(pictureText, run) => put({ pictureText }, 'picture', run)}
      />
    </div>
  );
}
