'use client';

import { useEffect, useRef } from 'react';
import type { Content } from '#lib/lesson/content.ts';
import { correctionsAt } from '#lib/lesson/corrections.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';
import styles from './player.module.css';
import type { CameFrom } from './use-moment-links.client.ts';

/** A step at which playing can wait. */
export interface PlayerStop {
  readonly id: string;
  readonly atMs: number;
  readonly name: string;
  readonly sentence: string;
}

interface PlayerNotesProps {
  readonly corrections: Content['corrections'];
  readonly atMs: number;
  /** The step that comes next while playing waits, or null. */
  readonly held: PlayerStop | null;
  readonly onGoOn: () => void;
  /** Where the pupil left off last time, or 0. */
  readonly leftOffMs: number;
  readonly onResume: () => void;
  readonly cameFrom: CameFrom | null;
}

/** What is to be said at this moment: corrections, the step that waits, the ways back. */
export function PlayerNotes(props: PlayerNotesProps) {
  const { held, leftOffMs, cameFrom } = props;
  const goOn = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    // Hands are full of rings: one press of a key goes on.
    if (held) goOn.current?.focus({ preventScroll: true });
  }, [held]);
  return (
    <>
      <div role="status" className={styles.atMoment}>
        {correctionsAt(props.corrections, props.atMs).map((correction) => (
          <p key={correction.id} className="notice caution">
            <strong>Corrected:</strong> <s>{correction.wrong}</s> {correction.right}
          </p>
        ))}
      </div>
      {held ? (
        <div className={styles.held} role="status">
          <p>
            <strong>Holding.</strong> Next is {held.name}: {held.sentence}
          </p>
          <button type="button" ref={goOn} onClick={props.onGoOn}>
            Go on
          </button>
        </div>
      ) : null}
      {leftOffMs > 0 && props.atMs === 0 ? (
        <p className={styles.leftOff}>
          <button type="button" className="quiet" onClick={props.onResume}>
            Go on where you left off, at {formatTimeCode(leftOffMs)}
          </button>
        </p>
      ) : null}
      {cameFrom ? (
        <p className={styles.leftOff}>
          <a href={`#${cameFrom.id}`}>Back to {cameFrom.name}</a>
        </p>
      ) : null}
    </>
  );
}
