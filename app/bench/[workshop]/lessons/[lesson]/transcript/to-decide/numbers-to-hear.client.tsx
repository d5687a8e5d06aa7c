'use client';
/** Numbers that are easily taken for another, each with its sound. */
import type { NumberToHear } from '#lib/glossary/number-traps.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import type { MarkUp } from '../mark-up.ts';
import { InContext } from './in-context.client.tsx';
import styles from './to-decide.module.css';
import { toHearKey } from './use-misheard.ts';

interface NumbersProps {
  readonly numbers: readonly NumberToHear[];
  readonly cues: readonly Cue[];
  readonly mayEdit: boolean;
  readonly markUp: MarkUp;
  readonly show: (cueId: string) => void;
  readonly play: ((cueId: string, offset: number) => void) | null;
}

export function NumbersToHear({ numbers, cues, mayEdit, markUp, play, show }: NumbersProps) {
  if (numbers.length === 0) return null;
  return (
    <details className={styles.numbers}>
      <summary>
        {numbers.length} {numbers.length === 1 ? 'number' : 'numbers'} to listen to
      </summary>
      <ul>
        {numbers.map((number) => (
          <li key={number.id}>
            <p>
              <strong>{number.heard}</strong>, or {number.otherwise}?
            </p>
            <InContext
              cues={cues}
              cueId={number.cueId}
              start={number.start}
              end={number.end}
              runsOver={false}
              play={play && (() => play(number.cueId, number.start))}
              show={() => show(number.cueId)}
            />
            {mayEdit && (
              <div className={styles.doings}>
                <button type="button" className="quiet" onClick={() => markUp.leave([toHearKey(number)])}>
                  It is {number.heard}
                </button>
                <button
                  type="button"
                  className="quiet"
                  onClick={() =>
                    markUp.replace(
                      [{ cueId: number.cueId, start: number.start, end: number.end }],
                      number.otherwise,
                    )
                  }
                >
                  Put {number.otherwise}
                </button>
              </div>
            )}
          </li>
        ))}
      </ul>
    </details>
  );
}
