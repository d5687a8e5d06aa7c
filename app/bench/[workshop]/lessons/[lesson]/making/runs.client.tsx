'use client';
/** Runs of repeats: other colours or another unit along the piece, and how they fall over its length. */
import { useState } from 'react';
import { TOO_MANY_RINGS } from '#app/words/picture-words.ts';
import { hasTooManyRings } from '#lib/lesson/fits-a-picture.ts';
import type { Run } from '#lib/weave/placement.ts';
import { unitOf, unitsOf } from '#lib/weave/runs.ts';
import { useDraft } from '../draft.client.tsx';
import { ChoiceField } from './fields/choice-field.client.tsx';
import fieldStyles from './fields/fields.module.css';
import { NumberField } from './fields/number-field.client.tsx';
import { focusAdded } from './focus-added.ts';
import { ItemButtons } from './item-buttons.client.tsx';
import styles from './making.module.css';
import { RunsPreview } from './runs-preview.tsx';
import { type ListDeeds, useList } from './use-list.ts';
import { useWholeLength, WholeLengthPicture } from './weave-pictures.client.tsx';

const aRun = (over: Partial<Run>): Run => ({
  id: crypto.randomUUID(),
  unit: '',
  repeats: null,
  swaps: [],
  ...over,
});

export function Runs({ lessonId, picturesAddress }: { lessonId: string; picturesAddress: string }) {
  const runs = useList('runs', 'run of repeats');
  const { content, mayEdit, change } = useDraft();
  const [previewed, setPreviewed] = useState(24);
  const picture = useWholeLength(picturesAddress, previewed);
  if (content.repeat.length === 0) return null;
  const add = (...made: readonly Run[]) => {
    change(
      made.map((item) => ({ kind: 'put', list: 'runs', item: { ...item } })),
      'add runs of repeats',
    );
    const [first] = made;
    if (first) focusAdded(first.id);
  };
  return (
    <section className={styles.part} aria-labelledby="runs">
      <h3 id="runs">Runs of repeats</h3>
      <p className="soft">
        Without runs the repeat is made as often as the length asks, always in the same rings. Runs follow one
        another: so many repeats in other colours, or of another unit. A run without a number takes what the
        length leaves; two such runs share it, so that what stands between them is in the middle.
      </p>
      <ol className={styles.cards}>
        {runs.items.map((run, index) => (
          <RunCard key={run.id} run={run} index={index} lessonId={lessonId} runs={runs} />
        ))}
      </ol>
      {(runs.items.length > 0 || picture) && (
        <>
          {picture && <WholeLengthPicture picture={picture} />}
          {hasTooManyRings(content, previewed) && <p className="soft">{TOO_MANY_RINGS}</p>}
          {picture?.isInParts || (
            <RunsPreview content={content} repeats={previewed} hasPicture={picture !== null} />
          )}
          <NumberField
            label="Shown for a piece of"
            unit="repeats"
            place={`${lessonId}/runs-preview`}
            value={previewed}
            places={0}
            least={1}
            most={400}
            onTake={(repeats) => setPreviewed(repeats ?? 24)}
          />
        </>
      )}
      {mayEdit && (
        <div className="row">
          <button type="button" className="quiet" onClick={() => add(aRun({ repeats: 5 }))}>
            Add a run
          </button>
          {runs.items.length === 0 && (
            <button
              type="button"
              className="quiet"
              onClick={() => add(aRun({}), aRun({ repeats: 3 }), aRun({}))}
            >
              Put a motif in the middle
            </button>
          )}
        </div>
      )}
    </section>
  );
}

function RunCard({
  run,
  index,
  lessonId,
  runs,
}: {
  run: Run;
  index: number;
  lessonId: string;
  runs: ListDeeds<'runs'>;
}) {
  const { content, mayEdit } = useDraft();
  const units = unitsOf(content);
  const used = new Set(
    unitOf(content, run.unit).flatMap(({ opened, carries }) => [
      ...(opened === null ? [] : [opened]),
      ...carries.map(({ ringKind }) => ringKind),
    ]),
  );
  const names = content.ringKinds.map((kind, at) => [kind.id, kind.name || `ring kind ${at + 1}`] as const);
  const put = (over: Partial<Run>, what: string, typing?: string) =>
    runs.put({ ...run, ...over }, what, typing);
  return (
    <li className={styles.card} id={run.id}>
      <h4>Run {index + 1}</h4>
      <div className={fieldStyles.grid}>
        <NumberField
          label="Repeats"
          place={`${lessonId}/${run.id}`}
          hint="Empty: as many as the length leaves."
          value={run.repeats}
          places={0}
          least={1}
          most={10_000}
          mayBeEmpty
          onTake={(repeats, typing) => put({ repeats }, 'how often', typing)}
        />
        {units.length > 1 && (
          <ChoiceField<string>
            label="of the unit"
            value={run.unit}
            choices={units.map((unit) => [unit, unit === '' ? 'main' : unit] as const)}
            onTake={(unit) => put({ unit }, 'unit')}
          />
        )}
        {names
          .filter(([id]) => used.has(id))
          .map(([id, name]) => (
            <ChoiceField<string>
              key={id}
              label={`In place of ${name}`}
              value={run.swaps.find((swap) => swap.ringKind === id)?.by ?? ''}
              choices={[['', 'stays'] as const, ...names.filter(([other]) => other !== id)]}
              onTake={(by) =>
                put(
                  {
                    swaps: [
                      ...run.swaps.filter((swap) => swap.ringKind !== id),
                      ...(by === '' ? [] : [{ ringKind: id, by }]),
                    ],
                  },
                  'rings',
                )
              }
            />
          ))}
      </div>
      {mayEdit && (
        <ItemButtons
          name={`run ${index + 1}`}
          index={index}
          count={runs.items.length}
          onMove={(by) => runs.move(run.id, by)}
          onDuplicate={() => runs.add({ ...run, id: crypto.randomUUID() }, index + 1)}
          onRemove={() => runs.remove(run.id)}
        />
      )}
    </li>
  );
}
