'use client';
/** The recording beside the sequence: where it stands is the moment that a placement takes. */
import { createContext, type ReactNode, useContext, useMemo, useRef } from 'react';
import styles from './making.module.css';

interface Player {
  /** Address of the recording's files, without a slash at its end. */
  readonly address: string;
  /** Where it stands, whole ms; null while nothing can be played. */
  readonly momentMs: () => number | null;
  readonly show: (ms: number) => void;
}

const PlayerContext = createContext<Player | null>(null);

/** Null where the lesson has no recording. */
export const usePlayer = (): Player | null => useContext(PlayerContext);

export function PlayerAround({ address, children }: { address: string | null; children: ReactNode }) {
  const media = useRef<HTMLVideoElement>(null);
  const player = useMemo<Player | null>(
    () =>
      address === null
        ? null
        : {
            address,
            momentMs: () => (media.current ? Math.round(media.current.currentTime * 1000) : null),
            show(ms) {
              if (!media.current) return;
              media.current.currentTime = ms / 1000;
              media.current.pause();
            },
          },
    [address],
  );
  return (
    <PlayerContext.Provider value={player}>
      <div className={player ? styles.besidePlayer : undefined}>
        {player && (
          <div className={styles.player}>
            {/* biome-ignore lint/a11y/useMediaCaption: the transcript stage shows the words; here moments are taken */}
            <video
              ref={media}
              src={`${player.address}/media`}
              poster={`${player.address}/poster`}
              controls
              preload="metadata"
              aria-label="Recording"
            />
            <p className="hint">Stop at the moment that shows a placement, then take it there.</p>
          </div>
        )}
        <div>{children}</div>
      </div>
    </PlayerContext.Provider>
  );
}
