'use client';
/** The recording's picture, or its sound alone, and what plays it. */
import Link from 'next/link';
import { useEffect, useRef, useState, useSyncExternalStore } from 'react';
import { formatTimeCode } from '#lib/time/time-code.ts';
import styles from './picture.module.css';
import { LITTLE_MS, type Player, SPEEDS } from './player.ts';

/** What the screen knows of the recording. */
export interface PlayedRecording {
  readonly id: string;
  readonly durationMs: number;
  readonly hasVideo: boolean;
  /** Size of the picture, so that its place is kept while it loads; null without one. */
  readonly width: number | null;
  readonly height: number | null;
  readonly pauses: readonly { readonly startMs: number; readonly endMs: number }[];
}

export function Picture({
  recording,
  address,
  bringIn,
  player,
}: {
  recording: PlayedRecording | null;
  /** Address below which the recording's files lie. */
  address: string;
  bringIn: string;
  player: Player;
}) {
  const media = useRef<HTMLVideoElement & HTMLAudioElement>(null);
  const state = useSyncExternalStore(player.subscribe, player.getState, player.getState);

  useEffect(() => {
    player.attach(recording ? media.current : null);
    return () => player.attach(null);
  }, [player, recording]);

  if (!recording) {
    return (
      <div className={styles.noPicture}>
        <p>No recording yet. The text can be mended without one.</p>
        <p>
          <Link href={bringIn}>Bring in the recording</Link>
        </p>
      </div>
    );
  }
  const events = {
    onPlay: player.look,
    onPause: player.look,
    onRateChange: player.look,
    onSeeked: player.look,
  };
  return (
    <div className={styles.player}>
      {recording.hasVideo ? (
        // The cues are the text of what is said; they stand beside the picture and not over it.
        <video
          ref={media}
          src={`${address}/media`}
          poster={`${address}/poster`}
          preload="metadata"
          playsInline
          width={recording.width ?? undefined}
          height={recording.height ?? undefined}
          {...events}
        />
      ) : (
        <audio ref={media} src={`${address}/media`} preload="metadata" {...events} />
      )}
      <div className={styles.playRow}>
        <button type="button" className="quiet" onClick={() => player.nudge(-LITTLE_MS)}>
          <span aria-hidden="true">↶</span>
          <span className="unseen">Back </span>3 s
        </button>
        <button type="button" className={styles.play} onClick={player.toggle}>
          {state.playing ? 'Pause' : 'Play'}
        </button>
        <button type="button" className="quiet" onClick={() => player.nudge(LITTLE_MS)}>
          <span className="unseen">Forward </span>3 s<span aria-hidden="true">↷</span>
        </button>
        <label className={styles.speed}>
          Speed
          <select value={state.speed} onChange={(event) => player.setSpeed(Number(event.target.value))}>
            {SPEEDS.map((speed) => (
              <option key={speed} value={speed}>
                {speed}×
              </option>
            ))}
          </select>
        </label>
      </div>
      <Place player={player} durationMs={recording.durationMs} />
    </div>
  );
}

/** The playing place as a slider; renders once a second, not once a frame. */
function Place({ player, durationMs }: { player: Player; durationMs: number }) {
  const [second, setSecond] = useState(0);
  useEffect(() => player.onTick((ms) => setSecond(Math.floor(ms / 1000))), [player]);
  return (
    <div className={styles.place}>
      <input
        type="range"
        aria-label="Place in the recording"
        aria-valuetext={formatTimeCode(second * 1000)}
        min={0}
        max={Math.ceil(durationMs / 1000)}
        value={second}
        onChange={(event) => player.seek(Number(event.target.value) * 1000)}
      />
      <span data-testid="place">
        {formatTimeCode(second * 1000)} of {formatTimeCode(durationMs)}
      </span>
    </div>
  );
}
