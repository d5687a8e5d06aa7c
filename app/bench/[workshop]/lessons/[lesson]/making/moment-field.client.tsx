'use client';
/** The moment that shows a placement or step: typed, or taken from where the recording stands. */
import { useState } from 'react';
import { failed, ok } from '#lib/result.ts';
import { LONGEST_MS } from '#lib/time/longest-time.ts';
import { formatPreciseTimeCode, parseTimeCode } from '#lib/time/time-code.ts';
import { TextField } from './fields/text-field.client.tsx';
import { TypedField } from './fields/typed-field.client.tsx';
import styles from './making.module.css';
import { usePlayer } from './player.client.tsx';

export interface MomentFieldProps {
  readonly id: string;
  /** Of the field for what the picture shows. */
  readonly pictureId: string;
  /** Whether it is a placement's, from which words can be made. */
  readonly addsRings: boolean;
  readonly place: string;
  readonly atMs: number | null;
  readonly pictureText: string;
  /** What the picture is of, for who does not see it. */
  readonly called: string;
  readonly onMoment: (atMs: number | null, run?: string) => void;
  readonly onPictureText: (text: string, run: string) => void;
}

export function MomentField(props: MomentFieldProps) {
  const { place, atMs, pictureText, called, onMoment, onPictureText } = props;
  const player = usePlayer();
  return (
    <div className={styles.moment}>
      <div>
        <TypedField<number | null, 'not-a-time'>
          id={props.id}
          label="Moment in the recording"
          place={`${place}/moment`}
          shown={atMs === null ? '' : formatPreciseTimeCode(atMs)}
          hint="Minutes and seconds, such as 1:23.4."
          read={(text) => {
            if (text.trim() === '') return ok(null);
            const ms = parseTimeCode(text);
            return ms === null || ms > LONGEST_MS ? failed('not-a-time') : ok(ms);
          }}
          take={onMoment}
          faultWords={() => 'This is no time. Write it like 1:23 or 0:01:23.4.'}
        />
        {player && (
          <div className="row">
            <button
              type="button"
              className="quiet"
              onClick={() => {
                const now = player.momentMs();
                if (now !== null) onMoment(now);
              }}
            >
              Take where the recording stands
            </button>
            {atMs !== null && (
              <button type="button" className="bare" onClick={() => player.show(atMs)}>
                Show it
              </button>
            )}
          </div>
        )}
        {atMs !== null && (
          <TextField
            id={props.pictureId}
            label="What the picture shows"
            hint={
              props.addsRings
                ? 'For pupils who do not see it. Left empty, it is made from the placement.'
                : 'For pupils who do not see it.'
            }
            value={pictureText}
            onTake={onPictureText}
          />
        )}
      </div>
      {player && atMs !== null && (
        <Still
          key={atMs}
          address={`${player.address}/stills/${atMs}`}
          text={pictureText || `Picture of ${called}`}
        />
      )}
    </div>
  );
}

function Still({ address, text }: { address: string; text: string }) {
  const [state, setState] = useState<'coming' | 'there' | 'missing'>('coming');
  return (
    <figure className={styles.still}>
      {state === 'missing' ? (
        <p className="hint">There is no picture at this moment yet.</p>
      ) : (
        // biome-ignore lint/performance/noImgElement: a picture of our own, already in its size
        <img src={address} alt={text} onLoad={() => setState('there')} onError={() => setState('missing')} />
      )}
      {state === 'coming' && <figcaption className="hint">The picture is being taken…</figcaption>}
    </figure>
  );
}
