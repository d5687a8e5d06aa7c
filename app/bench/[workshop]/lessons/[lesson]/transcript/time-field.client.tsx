'use client';
/** A moment to the millisecond: typed as a time code, or moved by a tenth of a second with arrows and buttons. */
import { type KeyboardEvent, useId, useState } from 'react';
import { formatPreciseTimeCode, parseTimeCode } from '#lib/time/time-code.ts';
import styles from './time-field.module.css';

const STEP_MS = 100;
const FINE_STEP_MS = 10;

export function TimeField({
  label,
  valueMs,
  onMove,
}: {
  label: string;
  valueMs: number;
  onMove: (ms: number) => void;
}) {
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [wrong, setWrong] = useState(false);

  const commit = () => {
    if (typed === null) return;
    const ms = parseTimeCode(typed);
    setWrong(ms === null);
    if (ms === null) return;
    setTyped(null);
    if (ms !== valueMs) onMove(ms);
  };
  const move = (byMs: number) => {
    setTyped(null);
    setWrong(false);
    onMove(Math.max(0, valueMs + byMs));
  };
  const onKey = (event: KeyboardEvent) => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const step = event.shiftKey ? FINE_STEP_MS : STEP_MS;
    if (event.key === 'ArrowUp') move(-step);
    else if (event.key === 'ArrowDown') move(step);
    else if (event.key === 'Enter') commit();
    else if (event.key === 'Escape') {
      setTyped(null);
      setWrong(false);
    } else return;
    event.preventDefault();
    event.stopPropagation();
  };

  return (
    <span className={styles.timeField}>
      <label htmlFor={id}>{label}</label>
      <button
        type="button"
        className="quiet"
        aria-label={`${label}: a tenth of a second earlier`}
        onClick={() => move(-STEP_MS)}
      >
        −
      </button>
      <input
        id={id}
        value={typed ?? formatPreciseTimeCode(valueMs)}
        inputMode="decimal"
        autoComplete="off"
        aria-invalid={wrong}
        aria-describedby={wrong ? `${id}-wrong` : undefined}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={commit}
        onKeyDown={onKey}
      />
      <button
        type="button"
        className="quiet"
        aria-label={`${label}: a tenth of a second later`}
        onClick={() => move(STEP_MS)}
      >
        +
      </button>
      {wrong && (
        <span id={`${id}-wrong`} className="fault">
          Write a time as 1:02.500
        </span>
      )}
    </span>
  );
}
