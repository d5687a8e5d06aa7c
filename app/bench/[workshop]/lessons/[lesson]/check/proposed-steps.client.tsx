'use client';
/** Steps that are told aloud and that the lesson does not have at that moment: taken one by one, or left. */
import { useMemo, useState } from 'react';
import { type SpokenPlacement, spokenPlacements } from '#lib/facts/spoken-placements.ts';
import type { Placement } from '#lib/lesson/content.ts';
import { placementFacts } from '#lib/lesson/placement-words.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';
import { useDraft } from '../draft.client.tsx';
import styles from './said-aloud.module.css';

const PART_WORDS = { start: 'start', repeat: 'repeat', finishing: 'finishing' } as const;
const UNSURE_WORDS = {
  'ring kind': 'which ring kind',
  'rings passed': 'how many rings it goes through',
  side: 'from which side',
} as const;

const leftKey = (step: SpokenPlacement): string => `told-step/${step.id}`.slice(0, 200);

export function ProposedSteps({ bench }: { readonly bench: string }) {
  const { content, cues, mayEdit, change } = useDraft();
  const [told, setTold] = useState<string | null>(null);
  const steps = useMemo(
    () => spokenPlacements(cues, content).filter((step) => !content.dismissed.includes(leftKey(step))),
    [cues, content],
  );
  const take = (step: SpokenPlacement) => {
    const item: Placement = { id: crypto.randomUUID(), ...step.placement };
    const list = content[step.part];
    const later = list.findIndex(({ atMs }) => atMs !== null && atMs > step.startMs);
    const index = later < 0 ? list.length : later;
    change([{ kind: 'put', list: step.part, item: { ...item }, index }], 'add a step that was told');
    setTold(item.id);
  };
  const leave = (step: SpokenPlacement) =>
    change(
      [{ kind: 'set', field: 'dismissed', value: [...content.dismissed, leftKey(step)] }],
      'leave a step that was told',
    );
  return (
    <>
      {steps.length > 0 && (
        <>
          <h3>Steps told aloud that are not written yet</h3>
          <ul className={styles.facts}>
            {steps.map((step) => (
              <li key={step.id}>
                <p>
                  <a href={`${bench}/transcript#${encodeURIComponent(step.cueId)}`}>
                    {formatTimeCode(step.startMs)}
                  </a>{' '}
                  {step.placement.sentence}
                </p>
                <p className="soft">
                  To the {PART_WORDS[step.part]}:{' '}
                  {placementFacts(content, { id: '', ...step.placement }).join('; ')}.
                  {step.unsure.length > 0 &&
                    ` Look at ${step.unsure.map((what) => UNSURE_WORDS[what]).join(', ')}.`}
                </p>
                {mayEdit && (
                  <div className={styles.doings}>
                    <button type="button" className="quiet" onClick={() => take(step)}>
                      Add the step<span className="unseen">: {step.placement.sentence}</span>
                    </button>
                    <button type="button" className="bare" onClick={() => leave(step)}>
                      Leave<span className="unseen">: {step.placement.sentence}</span>
                    </button>
                  </div>
                )}
              </li>
            ))}
          </ul>
        </>
      )}
      <p role="status">
        {told !== null && (
          <>
            The step is added. <a href={`${bench}/making#${encodeURIComponent(told)}`}>Look at it</a>
          </>
        )}
      </p>
    </>
  );
}
