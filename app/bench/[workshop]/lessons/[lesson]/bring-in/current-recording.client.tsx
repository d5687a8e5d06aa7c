'use client';
/** The recording that pupils see: player, facts, and which picture stands for it. */
import { useRef, useState } from 'react';
import type { ShownRecording } from '#app/http/present-recording.ts';
import { codecWords, madeWords, sizeWords } from '#app/words/recording-words.ts';
import { formatPreciseTimeCode, formatTimeCode } from '#lib/time/time-code.ts';
import styles from './bring-in.module.css';

interface CurrentRecordingProps {
  /** Address of the recording's routes, without a slash at its end. */
  readonly base: string;
  readonly recording: ShownRecording;
  readonly mayEdit: boolean;
  readonly announce: (text: string) => void;
  readonly refresh: () => Promise<void>;
}

export function CurrentRecordingView({ base, recording, mayEdit, announce, refresh }: CurrentRecordingProps) {
  const { facts } = recording;
  const video = useRef<HTMLVideoElement>(null);
  const [atMs, setAtMs] = useState(0);
  const [choosing, setChoosing] = useState<'no' | 'yes' | 'failed'>('no');
  if (!facts) return null;
  const poster = `${base}/poster?at=${recording.posterAtMs ?? 0}`;

  const choosePoster = async (): Promise<void> => {
    setChoosing('yes');
    const moment = Math.min(facts.durationMs, Math.round((video.current?.currentTime ?? 0) * 1000));
    const response = await fetch(`${base}/poster`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ atMs: moment }),
    }).catch(() => null);
    setChoosing(response?.ok ? 'no' : 'failed');
    if (response?.ok) announce(`The picture at ${formatTimeCode(moment)} is the poster now.`);
    await refresh();
  };

  return (
    <section className="panel" aria-label="The recording that pupils see">
      <div className={styles.current}>
        <div>
          {facts.video ? (
            // biome-ignore lint/a11y/useMediaCaption: captions are made on the next screen; this is the bare recording
            <video
              ref={video}
              className={styles.player}
              controls
              preload="metadata"
              width={facts.playable.width ?? undefined}
              height={facts.playable.height ?? undefined}
              poster={poster}
              src={`${base}/media`}
              onTimeUpdate={(event) => setAtMs(Math.round(event.currentTarget.currentTime * 1000))}
              onSeeked={(event) => setAtMs(Math.round(event.currentTarget.currentTime * 1000))}
            />
          ) : (
            // biome-ignore lint/a11y/useMediaCaption: as above
            <audio className={styles.player} controls preload="metadata" src={`${base}/media`} />
          )}
        </div>
        <div>
          <h3 className={styles.name}>{recording.name}</h3>
          <Facts recording={recording} facts={facts} />
        </div>
      </div>
      {facts.video && (
        <div className={styles.poster}>
          {recording.posterAtMs !== null && (
            // biome-ignore lint/performance/noImgElement: served by us in its one size
            <img
              src={poster}
              alt={`The recording at ${formatTimeCode(recording.posterAtMs)}`}
              width={facts.playable.width ?? 320}
              height={facts.playable.height ?? 180}
            />
          )}
          <div>
            <p>
              The poster is shown before the recording plays
              {recording.posterAtMs === null
                ? '.'
                : `; it is the picture at ${formatTimeCode(recording.posterAtMs)}.`}
            </p>
            {mayEdit && (
              <button
                type="button"
                className="quiet"
                disabled={choosing === 'yes'}
                onClick={() => void choosePoster()}
              >
                {choosing === 'yes'
                  ? 'Taking the picture…'
                  : `Use the picture at ${formatPreciseTimeCode(atMs)}`}
              </button>
            )}
            <p className="hint">Play or move the recording to the picture you want.</p>
            {choosing === 'failed' && (
              <p className="fault">The picture could not be taken just now. Try again in a moment.</p>
            )}
          </div>
        </div>
      )}
    </section>
  );
}

function Facts({
  recording,
  facts,
}: {
  recording: ShownRecording;
  facts: NonNullable<ShownRecording['facts']>;
}) {
  const { video, audio, playable } = facts;
  const lines: readonly (readonly [string, string])[] = [
    ['Length', formatTimeCode(facts.durationMs)],
    ['Size', sizeWords(recording.sizeBytes)],
    ['Picture', video ? `${video.width} × ${video.height}, ${codecWords(video.codec)}` : 'none'],
    [
      'Sound',
      audio
        ? `${codecWords(audio.codec)}, ${audio.channels === 1 ? 'mono' : `${audio.channels} channels`}`
        : 'none',
    ],
    ...(recording.loudnessLufs === null
      ? []
      : [['Loudness', `${recording.loudnessLufs.toFixed(1)} LUFS`] as const]),
    ['For pupils', `${madeWords(playable.made)} (${sizeWords(playable.sizeBytes)})`],
  ];
  return (
    <dl className={styles.facts}>
      {lines.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
