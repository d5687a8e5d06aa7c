'use client';

import { useEffect, useState } from 'react';
import type { Correction } from '#lib/lesson/content.ts';
import { formatPreciseTimeCode, formatTimeCode, parseTimeCode } from '#lib/time/time-code.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import styles from './corrections.module.css';

interface SpanFieldsProps {
  readonly correction: Correction;
  readonly cues: readonly Cue[];
  readonly durationMs: number | null;
  readonly onChange: (correction: Correction) => void;
}

const shown = (ms: number | null): string => (ms === null ? '' : formatPreciseTimeCode(ms));

/** From when to when: typed, or taken from the words of the transcript. */
export function SpanFields({ correction, cues, durationMs, onChange }: SpanFieldsProps) {
  const { id, startMs, endMs } = correction;
  const [search, setSearch] = useState('');
  const wanted = search.trim().toLowerCase();
  const found =
    wanted === '' ? [] : cues.filter((cue) => cue.text.toLowerCase().includes(wanted)).slice(0, 8);
  return (
    <fieldset className={styles.span}>
      <legend>Where in the recording (empty: about no moment)</legend>
      <div className={styles.times}>
        <TimeField
          id={`start-${id}`}
          label="From"
          ms={startMs}
          durationMs={durationMs}
          onTime={(ms) => onChange({ ...correction, startMs: ms })}
        />
        <TimeField
          id={`end-${id}`}
          label="To"
          ms={endMs}
          durationMs={durationMs}
          onTime={(ms) => onChange({ ...correction, endMs: ms })}
        />
        <div className="field">
          <label htmlFor={`search-${id}`}>Find it by a word that is said</label>
          <input
            id={`search-${id}`}
            type="search"
            value={search}
            onChange={(event) => setSearch(event.target.value)}
          />
        </div>
      </div>
      {wanted === '' ? null : (
        <ul className={styles.found} aria-label="Places in the transcript">
          {found.length === 0 ? <li>Not found in the transcript.</li> : null}
          {found.map((cue) => (
            <li key={cue.id}>
              <button
                type="button"
                className="quiet"
                onClick={() => {
                  onChange({ ...correction, startMs: cue.startMs, endMs: cue.endMs });
                  setSearch('');
                  // The button goes with the search; what it filled in is where the keyboard goes on.
                  document.getElementById(`start-${id}`)?.focus();
                }}
              >
                {formatTimeCode(cue.startMs)} {cue.text.slice(0, 90)}
              </button>
            </li>
          ))}
        </ul>
      )}
      {startMs !== null && endMs !== null && endMs <= startMs ? (
        <p className="fault">The span ends before it starts.</p>
      ) : null}
    </fieldset>
  );
}

interface TimeFieldProps {
  readonly id: string;
  readonly label: string;
  readonly ms: number | null;
  readonly durationMs: number | null;
  readonly onTime: (ms: number | null) => void;
}

/** A time as typed; it counts as soon as it can be read, and nothing typed is lost while it cannot. */
const TimeField = ({ id, label, ms, durationMs, onTime }: TimeFieldProps) => {
  const [text, setText] = useState(shown(ms));
  useEffect(() => {
    setText((typed) => (parseTimeCode(typed) === ms ? typed : shown(ms)));
  }, [ms]);
  const read = parseTimeCode(text);
  const unread = text.trim() !== '' && read === null;
  const beyond = read !== null && durationMs !== null && read > durationMs;
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        value={text}
        placeholder="1:02.5"
        autoComplete="off"
        aria-invalid={unread || beyond}
        aria-describedby={unread || beyond ? `${id}-fault` : undefined}
        onChange={(event) => {
          setText(event.target.value);
          const time = parseTimeCode(event.target.value);
          if (time !== null || event.target.value.trim() === '') onTime(time);
        }}
      />
      {unread || beyond ? (
        <p id={`${id}-fault`} className="fault">
          {unread ? 'Write minutes and seconds: 1:02.5' : 'The recording is shorter than that.'}
        </p>
      ) : null}
    </div>
  );
};
