'use client';
/** One placement: what is opened, picked up, passed and how it lies; its sentence and its moment. */
import { contradictionWords } from '#app/words/proof-words.ts';
import { pieceFaultWords } from '#app/words/weave-words.ts';
import { placementFacts } from '#lib/lesson/placement-words.ts';
import { proposeSentence } from '#lib/lesson/propose-sentence.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';
import type { PieceFault } from '#lib/weave/check-piece.ts';
import { ringsNear } from '#lib/weave/near-rings.ts';
import { LIES, type Placement, type SequencePart } from '#lib/weave/placement.ts';
import { useDraft } from '../draft.client.tsx';
import { ChoiceField } from './fields/choice-field.client.tsx';
import fieldStyles from './fields/fields.module.css';
import { TextField } from './fields/text-field.client.tsx';
import { ItemButtons } from './item-buttons.client.tsx';
import styles from './making.module.css';
import { MomentField } from './moment-field.client.tsx';
import { PlacementCarries } from './placement-carries.client.tsx';
import { PlacementLays, PlacementPasses } from './placement-passes.client.tsx';
import { PlacementFigure } from './ring-figure.tsx';
import type { ListDeeds } from './use-list.ts';
import { type Pictures, PlacementPicture } from './weave-pictures.client.tsx';

export interface PlacementCardProps {
  readonly placement: Placement;
  readonly part: SequencePart;
  readonly index: number;
  /** Rings that the piece has once this is done, one repeat counted. */
  readonly rings: number;
  readonly lessonId: string;
  readonly list: ListDeeds<SequencePart>;
  /** Faults of the whole piece that start here. */
  readonly faults: readonly PieceFault[];
  readonly pictures: Pictures;
  /** Names of rows and units that the piece has. */
  readonly rows: readonly string[];
  readonly units: readonly string[];
  readonly isOpen: boolean;
  readonly onToggle: () => void;
}

export const placementName = (part: SequencePart, index: number): string => `${part} ${index + 1}`;

export function PlacementCard(props: PlacementCardProps) {
  const { placement, part, index, rings, list, faults, pictures, isOpen, onToggle } = props;
  const { content, mayEdit } = useDraft();
  const called = placementName(part, index);
  // Where the sentence was made from the facts, they would be said twice.
  const facts =
    placement.sentence !== '' && placement.sentence === proposeSentence(content, placement)
      ? null
      : placementFacts(content, placement);
  const known = (id: string): boolean => content.ringKinds.some((kind) => kind.id === id);
  const unknown = [placement.opened, ...placement.carries.map((c) => c.ringKind)].some(
    (id) => id !== null && !known(id),
  );
  return (
    <li className={styles.card} id={placement.id}>
      <div className={styles.cardHead}>
        {pictures?.pictures[placement.id] ? (
          <PlacementPicture pictures={pictures} id={placement.id} />
        ) : (
          <PlacementFigure placement={placement} kinds={content.ringKinds} />
        )}
        <div className={styles.cardTitle}>
          <h4>
            {index + 1}. {placement.sentence || <span className="soft">No sentence for the pupil yet</span>}
          </h4>
          <p className="soft">
            {facts && (facts.length > 0 ? `${facts.join('; ')}. ` : 'Adds nothing yet. ')}
            <span className="label">
              {rings} {rings === 1 ? 'ring' : 'rings'} so far
            </span>{' '}
            {placement.atMs !== null && <span className="label">{formatTimeCode(placement.atMs)}</span>}
          </p>
          {placement.unit && <p className="soft">Unit: {placement.unit}</p>}
          {faults.map((fault) => (
            <p key={`${fault.code} ${'pass' in fault ? fault.pass : ''}`} className="fault">
              {pieceFaultWords(fault, (id) => content.ringKinds.find((kind) => kind.id === id)?.name ?? '')}
            </p>
          ))}
          {differing(pictures, placement.id).map((words) => (
            <p key={words} className="notice caution">
              {words}
            </p>
          ))}
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

/** What of the placement the shape of the weave contradicts. */
function differing(pictures: Pictures, placementId: string): readonly string[] {
  return (pictures?.proofs ?? []).flatMap(({ proof }) =>
    proof.state === 'differs'
      ? proof.contradictions
          .filter((each) => each.placementId === placementId)
          .map((each) => contradictionWords(each, proof.weave))
      : [],
  );
}

function PlacementFields({ placement, part, index, lessonId, list, rows, units }: PlacementCardProps) {
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
  const near = (moment: 'before' | 'after') =>
    ringsNear(content, placement.id, moment).map((ring) => ({
      ...ring,
      kindName: kinds.find(([id]) => id === ring.ringKind)?.[1] ?? '',
    }));
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
        {placement.opened !== null && (
          <TextField
            label="Joins row"
            hint="A letter or a word; empty where the piece has one row."
            value={placement.row ?? ''}
            maxLength={20}
            known={rows}
            onTake={(row, run) => put({ row }, 'row', run)}
          />
        )}
        <ChoiceField
          label="Lies"
          value={placement.lie}
          choices={LIES.map((lie) => [lie, lie] as const)}
          onTake={(lie) => put({ lie }, 'how it lies')}
        />
        {part === 'repeat' && (
          <TextField
            label="Belongs to unit"
            hint="Only where the piece has several units to repeat."
            value={placement.unit ?? ''}
            maxLength={20}
            known={units}
            onTake={(unit, run) => put({ unit }, 'unit', run)}
          />
        )}
      </div>
      <PlacementPasses placement={placement} near={near('before')} put={put} />
      <PlacementCarries
        placement={placement}
        place={place}
        kinds={kinds}
        withMissing={withMissing}
        rows={rows}
        put={put}
      />
      {placement.lie !== 'as it falls' && (
        <PlacementLays placement={placement} near={near('after')} put={put} />
      )}
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
        pictureId={`${placement.id}-picture`}
        addsRings
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
