'use client';
/** One suggestion: what stands there, what it may be and why, its sentence and sound, and what can be done. */
import { reasonWords } from '#app/words/misheard-words.ts';
import type { Suggestion } from '#lib/glossary/suggestion.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { InContext } from './in-context.client.tsx';
import styles from './to-decide.module.css';

interface DecisionCardProps {
  readonly one: Suggestion;
  /** All of the same words for the same term, this one too. */
  readonly alike: readonly Suggestion[];
  readonly cues: readonly Cue[];
  readonly mayEdit: boolean;
  readonly play: ((cueId: string, offset: number) => void) | null;
  readonly show: (cueId: string) => void;
  readonly take: (some: readonly Suggestion[]) => void;
  readonly leave: (some: readonly Suggestion[], where: 'here' | 'everywhere') => void;
  readonly never: (one: Suggestion) => void;
}

export function DecisionCard({
  one,
  alike,
  cues,
  mayEdit,
  play,
  show,
  take,
  leave,
  never,
}: DecisionCardProps) {
  const part = one.parts[0];
  if (!part) return null;
  return (
    <div className={styles.card}>
      <p className={styles.pair}>
        <span className={styles.heard}>{one.heard}</span> <span className="unseen">may be</span>
        <span aria-hidden="true">→</span> <strong>{one.instead}</strong>
      </p>
      <p className={styles.reason}>
        {reasonWords(one.reason)}
        {alike.length > 1 ? ` In ${alike.length} places.` : ''}
      </p>
      <InContext
        cues={cues}
        cueId={part.cueId}
        start={part.start}
        end={part.end}
        runsOver={one.parts.length > 1}
        play={play && (() => play(part.cueId, part.start))}
        show={() => show(part.cueId)}
      />
      {mayEdit && (
        <div className={styles.doings}>
          <button type="button" onClick={() => take([one])}>
            Take
          </button>
          <button type="button" className="quiet" onClick={() => leave([one], 'here')}>
            Leave
          </button>
          {alike.length > 1 && (
            <>
              <button type="button" className="quiet" onClick={() => take(alike)}>
                Take all {alike.length}
              </button>
              <button type="button" className="quiet" onClick={() => leave(alike, 'everywhere')}>
                Leave all {alike.length}
              </button>
            </>
          )}
          <button type="button" className="bare" onClick={() => never(one)}>
            Never offer this again
          </button>
        </div>
      )}
    </div>
  );
}
