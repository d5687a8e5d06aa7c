'use client';
/** What can be done to the cue that has the keyboard's place. */
import { useId, useState } from 'react';
import type { Cue } from '#lib/transcript/cue.ts';
import styles from './cue-tools.module.css';
import type { MarkUp } from './mark-up.ts';
import { TimeField } from './time-field.client.tsx';

export interface CueToolsProps {
  readonly cue: Cue;
  readonly markUp: MarkUp;
  readonly isEditing: boolean;
  /** Index of the first and the one behind the last cue chosen. */
  readonly chosen: readonly [number, number] | null;
  readonly index: number;
  readonly count: number;
  readonly edit: () => void;
  readonly split: () => void;
  readonly goTo: (id: string, caret?: number) => void;
  readonly setChapter: (ms: number) => void;
}

export function CueTools(props: CueToolsProps) {
  const { cue, markUp, index, count } = props;
  const [shifting, setShifting] = useState(false);
  return (
    <div className={styles.tools}>
      <div className={styles.toolRow}>
        {!props.isEditing && (
          <button type="button" onClick={props.edit}>
            Edit text
          </button>
        )}
        {props.isEditing && (
          <button type="button" className="quiet" onClick={props.split}>
            Split at the caret
          </button>
        )}
        <button
          type="button"
          className="quiet"
          disabled={index + 1 >= count}
          onClick={() => {
            const joined = markUp.joinWithNext(cue.id);
            if (joined) props.goTo(joined);
          }}
        >
          Join with next
        </button>
        <button type="button" className="quiet" onClick={() => props.setChapter(cue.startMs)}>
          Chapter from here
        </button>
        <button type="button" className="quiet" onClick={() => props.goTo(markUp.insertAfter(cue.id), 0)}>
          Insert after
        </button>
        <button
          type="button"
          className="quiet"
          aria-expanded={shifting}
          onClick={() => setShifting(!shifting)}
        >
          Shift…
        </button>
        <button type="button" className="alarm" onClick={() => markUp.remove(cue.id)}>
          Delete cue
        </button>
      </div>
      <div className={styles.toolRow}>
        <TimeField
          label="Start"
          valueMs={cue.startMs}
          onMove={(startMs) => markUp.retime(cue.id, { startMs })}
        />
        <TimeField label="End" valueMs={cue.endMs} onMove={(endMs) => markUp.retime(cue.id, { endMs })} />
      </div>
      {shifting && <Shift {...props} />}
    </div>
  );
}

type Which = 'this' | 'following' | 'chosen';

function Shift({ markUp, index, count, chosen }: CueToolsProps) {
  const id = useId();
  const [seconds, setSeconds] = useState('0.5');
  const [which, setWhich] = useState<Which>(chosen ? 'chosen' : 'this');
  const byMs = Math.round(Number(seconds.replace(',', '.')) * 1000);
  const wrong = seconds.trim() === '' || !Number.isFinite(byMs);
  const shift = (direction: -1 | 1) => {
    if (wrong) return;
    const [from, to] =
      which === 'this' ? [index, index + 1] : which === 'following' || !chosen ? [index, count] : chosen;
    markUp.shift(from, to, direction * byMs);
  };
  return (
    <fieldset className={styles.shift}>
      <legend>Shift in time</legend>
      <label>
        Seconds
        <input
          value={seconds}
          inputMode="decimal"
          aria-invalid={wrong}
          aria-describedby={wrong ? `${id}-wrong` : undefined}
          onChange={(event) => setSeconds(event.target.value)}
        />
      </label>
      <label>
        Which
        <select value={which} onChange={(event) => setWhich(event.target.value as Which)}>
          <option value="this">this cue</option>
          <option value="following">this and all that follow</option>
          {chosen && <option value="chosen">the {chosen[1] - chosen[0]} chosen</option>}
        </select>
      </label>
      <button type="button" className="quiet" onClick={() => shift(-1)}>
        Earlier
      </button>
      <button type="button" className="quiet" onClick={() => shift(1)}>
        Later
      </button>
      {wrong && (
        <span id={`${id}-wrong`} className="fault">
          Write seconds as 0.5
        </span>
      )}
    </fieldset>
  );
}
