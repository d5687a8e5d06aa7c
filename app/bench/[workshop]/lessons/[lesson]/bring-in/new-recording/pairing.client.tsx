'use client';
/** Both waveforms, one above the other, with bands between what they share. The list beside it says the same in words. */
import { useMemo } from 'react';
import { capital, type RecordingNames } from '#app/words/recording-change-words.ts';
import type { EditList } from '#lib/retiming/edit-list.ts';
import type { EditPointSeen } from '#lib/retiming/edit-points.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';
import { usePeaks } from './comparison-feed.ts';
import styles from './new-recording.module.css';
import { wavePath } from './wave-path.ts';

const WIDTH = 1000;
const HALF = 36;
const OLD_Y = 40;
const NEW_Y = 220;
const HEIGHT = 260;

interface PairingProps {
  readonly list: EditList;
  readonly points: readonly EditPointSeen[];
  readonly oldPeaks: string;
  readonly newPeaks: string;
  readonly names: RecordingNames;
}

export function Pairing({ list, points, oldPeaks, newPeaks, names }: PairingProps) {
  const old = usePeaks(oldPeaks);
  const heard = usePeaks(newPeaks);
  const scale = WIDTH / Math.max(list.oldMs, list.newMs, 1);
  const oldPath = useMemo(
    () => wavePath(old, list.oldMs, list.oldMs * scale, HALF),
    [old, list.oldMs, scale],
  );
  const newPath = useMemo(
    () => wavePath(heard, list.newMs, list.newMs * scale, HALF),
    [heard, list.newMs, scale],
  );
  return (
    <figure className={styles.pairing}>
      <p className={styles.side}>
        {capital(names.old)}, {formatTimeCode(list.oldMs)}
      </p>
      <div className={styles.drawing}>
        <svg
          viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
          preserveAspectRatio="none"
          role="img"
          aria-label="Waveforms of both recordings with bands between what they share; the list of edit points says the same in words."
        >
          <defs>
            <pattern
              id="hatch"
              width="8"
              height="8"
              patternUnits="userSpaceOnUse"
              patternTransform="rotate(45)"
            >
              <rect width="3" height="8" className={styles.cutInk} />
            </pattern>
            <pattern id="dots" width="8" height="8" patternUnits="userSpaceOnUse">
              <circle cx="4" cy="4" r="2" className={styles.newInk} />
            </pattern>
          </defs>
          {list.edits.map(({ kind, old: from, new: to }) => {
            const key = `${kind} ${from.startMs} ${to.startMs}`;
            const [a, b] = [from.startMs * scale, from.endMs * scale];
            const [c, d] = [to.startMs * scale, to.endMs * scale];
            if (kind === 'cut') {
              return (
                <rect key={key} x={a} y={OLD_Y - HALF} width={b - a} height={2 * HALF} fill="url(#hatch)" />
              );
            }
            if (kind === 'inserted') {
              return (
                <rect key={key} x={c} y={NEW_Y - HALF} width={d - c} height={2 * HALF} fill="url(#dots)" />
              );
            }
            const [top, bottom] = [OLD_Y - HALF, NEW_Y + HALF];
            const [under, over] = [OLD_Y + HALF, NEW_Y - HALF];
            const outline = [a, top, b, top, b, under, d, over, d, bottom, c, bottom, c, over, a, under];
            return (
              <polygon
                key={key}
                points={outline.join(' ')}
                className={kind === 'kept' ? styles.kept : styles.moved}
              />
            );
          })}
          <path d={oldPath} transform={`translate(0 ${OLD_Y})`} className={styles.wave} />
          <path d={newPath} transform={`translate(0 ${NEW_Y})`} className={styles.wave} />
          {points.map(({ join, atMs }) => (
            <line
              key={join}
              x1={atMs * scale}
              x2={atMs * scale}
              y1={NEW_Y - HALF}
              y2={NEW_Y + HALF}
              className={styles.mark}
            />
          ))}
        </svg>
        {points.map(({ join, atMs }, k) => (
          <span
            key={join}
            className={styles.number}
            style={{ left: `${(atMs * scale * 100) / WIDTH}%` }}
            aria-hidden="true"
          >
            {k + 1}
          </span>
        ))}
      </div>
      <p className={styles.side}>
        {capital(names.new)}, {formatTimeCode(list.newMs)}
      </p>
      <figcaption className="hint">
        Bands join what is in both; a dashed edge: it was moved. Hatched above: cut. Dotted below: new.
      </figcaption>
    </figure>
  );
}
