'use client';
/** What a repeat of each run adds, where runs differ: another unit, or rings of another size. */
import { Fragment } from 'react';
import type { Sample } from '#lib/kit/making.ts';
import { useDraft } from '../draft.client.tsx';
import fieldStyles from './fields/fields.module.css';
import { LengthField, NumberField } from './fields/number-field.client.tsx';

type RunLength = Sample['runs'][number];

export interface RunLengthsProps {
  readonly lessonId: string;
  readonly sample: Sample;
  readonly onTake: (part: Partial<Sample>, run?: string) => void;
}

export function RunLengths({ lessonId, sample, onTake }: RunLengthsProps) {
  const { content } = useDraft();
  if (content.runs.length === 0) return null;
  const lengthOf = (run: string) => sample.runs.find((one) => one.run === run);
  const put = (run: string, length: Omit<RunLength, 'run'> | null, typing: string) => {
    const others = sample.runs.filter((one) => one.run !== run);
    onTake({ runs: length === null ? others : [...others, { run, ...length }] }, typing);
  };
  return (
    <>
      <h3>Runs of another length</h3>
      <p className="hint">
        Where rings of another size, or another unit, make a repeat longer or shorter. Empty: as one repeat
        adds.
      </p>
      <div className={fieldStyles.grid}>
        {content.runs.map((run, index) => {
          const length = lengthOf(run.id);
          const overRepeats = length?.overRepeats ?? null;
          return (
            <Fragment key={run.id}>
              <LengthField
                label={`A repeat of run ${index + 1} adds`}
                place={`${lessonId}/run-length/${run.id}`}
                mm={length?.perRepeatMm ?? null}
                leastMm={0.01}
                mostMm={10_000}
                mayBeEmpty
                onTake={(mm, typing) =>
                  put(run.id, mm === null ? null : { perRepeatMm: mm, overRepeats }, typing)
                }
              />
              {length && (
                <NumberField
                  label={`Run ${index + 1} was measured over`}
                  unit="repeats"
                  place={`${lessonId}/run-over/${run.id}`}
                  value={overRepeats}
                  places={0}
                  least={1}
                  most={10_000}
                  mayBeEmpty
                  hint="How many of its repeats lay on the ruler; kits then tell how sure their length is."
                  onTake={(over, typing) =>
                    put(run.id, { perRepeatMm: length.perRepeatMm, overRepeats: over }, typing)
                  }
                />
              )}
            </Fragment>
          );
        })}
      </div>
    </>
  );
}
