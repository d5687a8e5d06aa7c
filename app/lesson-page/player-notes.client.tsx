'use client';

import type { Content } from '#lib/lesson/content.ts';
import { correctionsAt } from '#lib/lesson/corrections.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';
import styles from './player.module.css';
import type { CameFrom } from './use-moment-links.client.ts';

interface PlayerNotesProps {
  readonly corrections: Content['corrections'];
  readonly atMs: number;
  /** Where the pupil left off last time, or 0. */
  readonly leftOffMs: number;
  readonly onResume: () => void;
  readonly cameFrom: CameFrom | null;
}

/** What is to be said at this moment: corrections, and the ways back. */
export function PlayerNotes(props: PlayerNotesProps) {
  const { leftOffMs, cameFrom } = props;
  return (
    <>
      <div role="status" className={styles.atMoment}>
        {correctionsAt(props.corrections, props.atMs).map((correction) => (
          <p key={correction.id} className="notice caution">
            <strong>Corrected:</strong> <s>{correction.wrong}</s> {correction.right}
          </p>
        ))}
      </div>
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
