'use client';
/** What a repeat of each run adds, where runs differ: another unit, or rings of another size. */
import type { Sample } from '#lib/kit/making.ts';
import { useDraft } from '../draft.client.tsx';
import fieldStyles from './fields/fields.module.css';
import { LengthField } from './fields/number-field.client.tsx';

export interface RunLengthsProps {
  readonly lessonId: string;
  readonly sample: Sample;
  readonly onTake: (part: Partial<Sample>, run?: string) => void;
}

export function RunLengths({ lessonId, sample, onTake }: RunLengthsProps) {
  const { content } = useDraft();
  if (content.runs.length === 0) return null;
  const put = (run: string, perRepeatMm: number | null, typing: string) => {
    const others = sample.runs.filter((one) => one.run !== run);
    onTake({ runs: perRepeatMm === null ? others : [...others, { run, perRepeatMm }] }, typing);
  };
  return (
    <>
      <h3>Runs of another length</h3>
      <p className="hint">
        Where rings of another size, or another unit, make a repeat longer or shorter. Empty: as one repeat
        adds.
      </p>
      <div className={fieldStyles.grid}>
        {content.runs.map((run, index) => (
          <LengthField
            key={run.id}
            label={`A repeat of run ${index + 1} adds`}
            place={`${lessonId}/run-length/${run.id}`}
            mm={sample.runs.find((one) => one.run === run.id)?.perRepeatMm ?? null}
            leastMm={0.01}
            mostMm={10_000}
            mayBeEmpty
            onTake={(mm, typing) => put(run.id, mm, typing)}
          />
        ))}
      </div>
    </>
  );
}
