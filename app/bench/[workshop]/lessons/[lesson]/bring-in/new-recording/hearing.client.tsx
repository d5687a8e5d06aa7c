'use client';
/** Plays a span of one of two recordings; beginning another one ends the last. */
import { type ReactNode, useCallback, useRef } from 'react';
import type { RecordingNames } from '#app/words/recording-change-words.ts';
import styles from './new-recording.module.css';

export interface Hearing {
  readonly hear: (which: 'old' | 'new', fromMs: number, toMs: number) => void;
  /** To be put somewhere on the page. */
  readonly players: ReactNode;
}

export function useHearing(oldMedia: string, newMedia: string, names: RecordingNames): Hearing {
  const old = useRef<HTMLAudioElement>(null);
  const heard = useRef<HTMLAudioElement>(null);
  const ends = useRef(Number.POSITIVE_INFINITY);
  const hear = useCallback((which: 'old' | 'new', fromMs: number, toMs: number) => {
    const [play, rest] = which === 'old' ? [old.current, heard.current] : [heard.current, old.current];
    rest?.pause();
    if (!play) return;
    ends.current = toMs / 1000;
    play.currentTime = Math.max(0, fromMs / 1000);
    void play.play().catch(() => {});
  }, []);
  const stopAtEnd = (player: HTMLAudioElement) => {
    if (player.currentTime < ends.current) return;
    ends.current = Number.POSITIVE_INFINITY;
    player.pause();
  };
  const players = (
    <div className={styles.players}>
      <div>
        <p className={styles.side}>Hear {names.old}</p>
        {/* biome-ignore lint/a11y/useMediaCaption: to compare sounds; the words are in the transcript */}
        <audio
          ref={old}
          controls
          preload="metadata"
          src={oldMedia}
          onTimeUpdate={(event) => stopAtEnd(event.currentTarget)}
        />
      </div>
      <div>
        <p className={styles.side}>Hear {names.new}</p>
        {/* biome-ignore lint/a11y/useMediaCaption: as above */}
        <audio
          ref={heard}
          controls
          preload="metadata"
          src={newMedia}
          onTimeUpdate={(event) => stopAtEnd(event.currentTarget)}
        />
      </div>
    </div>
  );
  return { hear, players };
}
