'use client';
/** A place of the transcript in its cue and a little of those around it, with its sound. */
import { formatTimeCode } from '#lib/time/time-code.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { offsetToMs } from '#lib/transcript/word-times.ts';
import styles from './to-decide.module.css';

interface InContextProps {
  readonly cues: readonly Cue[];
  readonly cueId: string;
  readonly start: number;
  readonly end: number;
  /** Whether the place goes on in the next cue. */
  readonly runsOver: boolean;
  /** Null where there is nothing to listen to. */
  readonly play: (() => void) | null;
  /** Brings the place into view in the transcript. */
  readonly show: () => void;
}

export function InContext({ cues, cueId, start, end, runsOver, play, show }: InContextProps) {
  const at = cues.findIndex((cue) => cue.id === cueId);
  const cue = cues[at];
  if (!cue) return null;
  const before = start < 30 ? lastWords(cues[at - 1]?.text ?? '') : '';
  const after = runsOver || cue.text.length - end < 30 ? firstWords(cues[at + 1]?.text ?? '') : '';
  return (
    <blockquote className={styles.context}>
      <p>
        {before} {cue.text.slice(0, start)}
        <mark>{cue.text.slice(start, end)}</mark>
        {cue.text.slice(end)} {after}
      </p>
      <div className={styles.doings}>
        {play && (
          <button type="button" className="quiet" onClick={play}>
            Listen at {formatTimeCode(offsetToMs(cue, start))}
          </button>
        )}
        <button type="button" className="bare" onClick={show}>
          Show it below
        </button>
      </div>
    </blockquote>
  );
}

const lastWords = (text: string): string => text.split(/\s+/).slice(-6).join(' ');
const firstWords = (text: string): string => text.split(/\s+/).slice(0, 6).join(' ');
