'use client';

import { type RefObject, useEffect, useId, useState } from 'react';
import { formatTimeCode } from '#lib/time/time-code.ts';
import type { PlayerChapter } from './chapter-list.client.tsx';
import styles from './player.module.css';
import { GO_ON_AFTER_MS } from './remembered-place.ts';
import type { Playing } from './use-playing.client.ts';

interface Wishes {
  readonly rate: number;
  readonly mirrored: boolean;
  readonly holding: boolean;
  readonly goOnAfterMs: number | null;
  readonly captionsOn: boolean;
  readonly loopId: string | null;
  readonly countIn: boolean;
}

interface PlayerControlsProps {
  readonly media: RefObject<HTMLMediaElement | null>;
  readonly playing: Playing;
  readonly durationMs: number;
  readonly hasVideo: boolean;
  readonly hasCaptions: boolean;
  readonly hasStops: boolean;
  readonly repeat: PlayerChapter | null;
  readonly wishes: Wishes;
  readonly onRate: (rate: number) => void;
  readonly onMirrored: (on: boolean) => void;
  readonly onHolding: (on: boolean) => void;
  readonly onGoOnAfter: (ms: number | null) => void;
  readonly onCaptions: (on: boolean) => void;
  readonly onLoop: (chapterId: string) => void;
  readonly onCountIn: (on: boolean) => void;
}

const RATES = [
  { rate: 0.5, name: 'Half' },
  { rate: 0.75, name: 'Three quarters' },
  { rate: 1, name: 'Full' },
] as const;

const BACK_MS = 5_000;

/** Everything that hands can ask of the recording, in words rather than signs. */
export function PlayerControls(props: PlayerControlsProps) {
  const { media, playing, durationMs, repeat, wishes } = props;
  const speedId = useId();
  return (
    <div className={styles.controls}>
      <div className={styles.transport}>
        <button type="button" className={styles.play} onClick={playing.toggle}>
          {playing.playing || playing.count > 0 ? 'Pause' : 'Play'}
        </button>
        <button
          type="button"
          className="quiet"
          onClick={() => playing.seek(Math.max(0, playing.atMs - BACK_MS))}
        >
          Back 5 s
        </button>
        <input
          type="range"
          min={0}
          max={durationMs}
          step={1000}
          value={Math.min(playing.atMs, durationMs)}
          aria-label="Place in the recording"
          aria-valuetext={`${formatTimeCode(playing.atMs)} of ${formatTimeCode(durationMs)}`}
          onChange={(event) => playing.seek(Number(event.target.value))}
        />
        <span className={styles.clock} aria-hidden="true">
          {formatTimeCode(playing.atMs)} / {formatTimeCode(durationMs)}
        </span>
      </div>
      <div className={styles.wishes}>
        {/* biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out in one row everywhere */}
        <div role="group" aria-labelledby={speedId} className={styles.speed}>
          <span id={speedId}>Speed</span>
          {RATES.map(({ rate, name }) => (
            <Toggle key={rate} on={wishes.rate === rate} onToggle={() => props.onRate(rate)}>
              {name}
            </Toggle>
          ))}
        </div>
        {repeat ? (
          <>
            <Toggle on={wishes.loopId === repeat.id} onToggle={() => props.onLoop(repeat.id)}>
              Loop the repeat unit
            </Toggle>
            {wishes.loopId === repeat.id ? (
              <label className="tick">
                <input
                  type="checkbox"
                  checked={wishes.countIn}
                  onChange={(event) => props.onCountIn(event.target.checked)}
                />
                Count me in
              </label>
            ) : null}
          </>
        ) : null}
        {props.hasStops ? (
          <>
            <Toggle on={wishes.holding} onToggle={() => props.onHolding(!wishes.holding)}>
              Hold at each step
            </Toggle>
            {wishes.holding ? (
              <label className={styles.goOnAfter}>
                <span>Go on</span>
                <select
                  value={wishes.goOnAfterMs ?? ''}
                  onChange={({ target }) =>
                    props.onGoOnAfter(target.value === '' ? null : Number(target.value))
                  }
                >
                  <option value="">when I say so</option>
                  {GO_ON_AFTER_MS.map((ms) => (
                    <option key={ms} value={ms}>
                      by itself after {ms < 60_000 ? `${ms / 1000} s` : `${ms / 60_000} min`}
                    </option>
                  ))}
                </select>
              </label>
            ) : null}
          </>
        ) : null}
        {props.hasVideo ? (
          <Toggle on={wishes.mirrored} onToggle={() => props.onMirrored(!wishes.mirrored)}>
            Mirror the picture
          </Toggle>
        ) : null}
        {props.hasCaptions ? (
          <Toggle on={wishes.captionsOn} onToggle={() => props.onCaptions(!wishes.captionsOn)}>
            Captions
          </Toggle>
        ) : null}
        <SoundAndScreen media={media} hasVideo={props.hasVideo} />
      </div>
    </div>
  );
}

interface ToggleProps {
  readonly on: boolean;
  readonly onToggle: () => void;
  readonly children: string;
}

const Toggle = ({ on, onToggle, children }: ToggleProps) => (
  <button type="button" className="quiet" aria-pressed={on} onClick={onToggle}>
    {children}
  </button>
);

const SoundAndScreen = ({
  media,
  hasVideo,
}: {
  media: RefObject<HTMLMediaElement | null>;
  hasVideo: boolean;
}) => {
  const [muted, setMuted] = useState(false);
  useEffect(() => {
    if (media.current) media.current.muted = muted;
  }, [media, muted]);
  return (
    <>
      <Toggle on={muted} onToggle={() => setMuted(!muted)}>
        Mute
      </Toggle>
      {hasVideo ? (
        <button
          type="button"
          className="quiet"
          onClick={() => {
            if (document.fullscreenElement) void document.exitFullscreen();
            else void media.current?.closest('section')?.requestFullscreen();
          }}
        >
          Fill the screen
        </button>
      ) : null}
    </>
  );
};
