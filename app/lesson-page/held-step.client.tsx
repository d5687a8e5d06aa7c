'use client';

import { useEffect, useId, useRef, useState } from 'react';
import { HandText } from './hand-text.tsx';
import styles from './player.module.css';

/** A step at which playing can wait. */
export interface PlayerStop {
  readonly id: string;
  readonly atMs: number;
  readonly name: string;
  readonly sentence: string;
}

interface HeldStepProps {
  /** The step at whose moment playing waits. */
  readonly step: PlayerStop;
  /** After which playing goes on by itself, ms; null: not by itself. */
  readonly goOnAfterMs: number | null;
  readonly onGoOn: () => void;
  /** Shows once more what was just shown; null where nothing was. */
  readonly onAgain: (() => void) | null;
}

/** Space and Enter, and what a pedal for turning pages sends. */
const GO_ON_KEYS = new Set([' ', 'Enter', 'ArrowRight', 'PageDown']);

/** Playing waits: it goes on by the button, by a key, by a tap on the picture, or by itself after the time that was set. */
export function HeldStep({ step, goOnAfterMs, onGoOn, onAgain }: HeldStepProps) {
  const words = useId();
  const goOn = useRef<HTMLButtonElement>(null);
  const leftS = useSecondsLeft(goOnAfterMs, onGoOn);
  useEffect(() => {
    // Hands are full of rings: one press of a key goes on. Who is typing is left alone.
    if (!document.activeElement?.matches('input[type="text"], textarea, select'))
      goOn.current?.focus({ preventScroll: true });
    const press = (event: KeyboardEvent) => {
      const at = document.activeElement;
      const waits = at === goOn.current || at === document.body;
      if (!waits || !GO_ON_KEYS.has(event.key) || event.repeat) return;
      if (event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
      event.preventDefault();
      onGoOn();
    };
    document.addEventListener('keydown', press);
    return () => document.removeEventListener('keydown', press);
  }, [onGoOn]);
  return (
    <div className={styles.held}>
      <p id={words}>
        <strong>Holding</strong> at {step.name}: <HandText text={step.sentence} />
        {goOnAfterMs === null ? null : (
          <span className={styles.leftTime}>
            {leftS.value === null
              ? ' Waiting until you go on.'
              : ` Goes on by itself${leftS.value > 0 ? ` in ${leftS.value} s` : ''}.`}
          </span>
        )}
      </p>
      <div className={styles.heldButtons}>
        <button type="button" ref={goOn} aria-describedby={words} onClick={onGoOn}>
          Go on
        </button>
        {leftS.value === null ? null : (
          <button type="button" className="quiet" onClick={leftS.stop}>
            Wait
          </button>
        )}
        {onAgain ? (
          <button type="button" className="quiet" onClick={onAgain}>
            Show it again
          </button>
        ) : null}
      </div>
    </div>
  );
}

interface SecondsLeft {
  /** Null where nothing counts. */
  readonly value: number | null;
  readonly stop: () => void;
}

function useSecondsLeft(ms: number | null, done: () => void): SecondsLeft {
  const [value, setValue] = useState(ms === null ? null : Math.ceil(ms / 1000));
  const run = useRef(done);
  useEffect(() => {
    run.current = done;
  });
  useEffect(() => {
    setValue(ms === null ? null : Math.ceil(ms / 1000));
  }, [ms]);
  useEffect(() => {
    if (value === null) return;
    if (value === 0) return run.current();
    const timer = setTimeout(() => setValue(value - 1), 1000);
    return () => clearTimeout(timer);
  }, [value]);
  return { value, stop: () => setValue(null) };
}
