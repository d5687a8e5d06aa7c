'use client';
/**
 * A transcript that was only spread over the speech is brought right by ear:
 * the recording plays, the next sentence to listen for stands here, and a
 * press when it begins sets its start and moves what lies around it.
 */
import { useId, useState, useSyncExternalStore } from 'react';
import { formatTimeCode } from '#lib/time/time-code.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { useDraftPart } from '../draft.client.tsx';
import styles from './approximate-times.module.css';
import type { MarkUp } from './mark-up.ts';
import type { Player } from './player.ts';

/** Cues from one to listen for to the next. Every five to ten sentences bring the median error to a second or two. */
const EVERY = 8;
/** A press comes so much later than the sound that it answers, ms (simple reaction to sound; common figure). */
const REACTION_MS = 180;
/** How long before its approximate start it is played, ms. */
const LEAD_MS = 4_000;

interface ApproximateTimesProps {
  readonly markUp: MarkUp;
  readonly player: Player;
  readonly hasRecording: boolean;
  /** Brings a cue into view without taking the keyboard. */
  readonly show: (cueId: string) => void;
}

export function ApproximateTimes({ markUp, player, hasRecording, show }: ApproximateTimesProps) {
  const id = useId();
  const cues = useDraftPart((state) => state.cues);
  const mayEdit = useDraftPart((state) => state.mayEdit);
  const { playing } = useSyncExternalStore(player.subscribe, player.getState, player.getState);
  const [skipped, setSkipped] = useState<string | null>(null);
  const [told, setTold] = useState('');
  const approximate = cues.filter(({ timing }) => timing === 'approximate').length;
  const heard = cues.filter(({ timing }) => timing === 'start heard').length;
  if (approximate + heard === 0) return null;
  const next = nextToHear(cues, skipped);

  const begins = (cue: Cue) => {
    const atMs = Math.max(0, player.timeMs() - (playing ? REACTION_MS * player.getState().speed : 0));
    markUp.retime(cue.id, { startMs: atMs });
    setSkipped(null);
    setTold(`“${beginning(cue.text)}” begins at ${formatTimeCode(atMs)}.`);
    show(cue.id);
  };

  return (
    <section className={styles.times} aria-labelledby={`${id}-head`}>
      <h3 id={`${id}-head`}>These times are approximate</h3>
      {mayEdit && hasRecording && next && (
        <>
          <p className={styles.ask}>
            Play, and press when you hear this begin: <q>{beginning(next.text)}</q>
          </p>
          <div className={styles.acts}>
            <button type="button" onClick={() => begins(next)}>
              It begins now
            </button>
            <button
              type="button"
              className="quiet"
              onClick={() => {
                player.playFrom(Math.max(0, next.startMs - LEAD_MS));
                show(next.id);
              }}
            >
              Play from {formatTimeCode(Math.max(0, next.startMs - LEAD_MS))}
            </button>
            <button type="button" className="quiet" onClick={() => setSkipped(next.id)}>
              Another one
            </button>
          </div>
        </>
      )}
      <p role="status" className="hint">
        {told}
      </p>
      <details>
        <summary>
          {heard === 0 ? 'What this means' : `${heard === 1 ? 'One start' : `${heard} starts`} heard so far`}
        </summary>
        <p>
          The script had no times. It was spread over the{' '}
          {hasRecording ? 'speech that was found in the sound' : 'time that reading it takes'}: a cue marked ≈
          may be off by ten seconds and more. Each start that you hear moves what lies around it; about one
          sentence in {EVERY} is enough. Any other cue can be set the same way: choose it, and press Alt B
          when it begins.
        </p>
        {mayEdit && (
          <div className={styles.acts}>
            {hasRecording && heard === 0 && (
              <button type="button" className="quiet" onClick={markUp.spread}>
                Spread over the speech again
              </button>
            )}
            <button type="button" className="quiet" onClick={markUp.takeTimes}>
              Take the times as they are
            </button>
          </div>
        )}
      </details>
    </section>
  );
}

/** The cue to listen for: the first, then some way behind the last that was heard; behind one that was passed over. */
function nextToHear(cues: readonly Cue[], skipped: string | null): Cue | null {
  const lastHeard = cues.findLastIndex(({ timing }) => timing !== 'approximate');
  const from = skipped === null ? -1 : cues.findIndex(({ id }) => id === skipped);
  const at = from >= 0 ? from + 1 : lastHeard < 0 ? 0 : lastHeard + EVERY;
  const ahead = cues.slice(at).find(({ timing }) => timing === 'approximate');
  // At the end of the text, what is left between is offered.
  return ahead ?? cues.find(({ timing, id }) => timing === 'approximate' && id !== skipped) ?? null;
}

const beginning = (text: string): string => {
  const words = text.split(/\s+/);
  return words.length <= 9 ? text : `${words.slice(0, 9).join(' ')}…`;
};
