'use client';
/** Recordings that are not ready: unfinished, being taken in, refused or cancelled. */
import { useEffect, useRef } from 'react';
import type { ShownRecording } from '#app/http/present-recording.ts';
import {
  INGEST_STEPS,
  recordingFaultWords,
  refusedTitle,
  sizeWords,
  stepWords,
} from '#app/words/recording-words.ts';
import styles from './bring-in.module.css';

interface Shown {
  readonly recording: ShownRecording;
  readonly mayEdit: boolean;
}

/** Bytes came, and stopped coming. */
export function Unfinished({ recording, mayEdit, onRemove }: Shown & { onRemove: () => Promise<void> }) {
  const percent = Math.floor((recording.arrivedBytes * 100) / recording.sizeBytes);
  return (
    <section className="notice caution" aria-label="Unfinished upload">
      <p>
        <strong className={styles.name}>{recording.name}</strong> is not all here yet:{' '}
        {sizeWords(recording.arrivedBytes)} of {sizeWords(recording.sizeBytes)}, {percent} %. Choose the same
        file again below, in the browser that began, and it goes on from there.
      </p>
      {mayEdit && (
        <button type="button" className="alarm" onClick={() => void onRemove()}>
          Give this upload up
        </button>
      )}
    </section>
  );
}

/** A worker is at it, or soon will be. */
export function UnderWay({
  recording,
  mayEdit,
  announce,
  onCancel,
}: Shown & { announce: (text: string) => void; onCancel: () => Promise<void> }) {
  const { step, percent } = recording;
  const told = useRef('');
  useEffect(() => {
    const quarter = Math.floor(percent / 25) * 25;
    const news = `${stepWords(step)}${quarter > 0 ? `, ${quarter} percent` : ''}.`;
    if (news !== told.current) announce(news);
    told.current = news;
  }, [step, percent, announce]);
  const at = INGEST_STEPS.findIndex((name) => name === (step === 'convert' ? 'look-through' : step));
  return (
    <section className="panel" aria-label="Taking the recording in">
      <h3 className={styles.name}>{recording.name}</h3>
      <p className="soft">
        {sizeWords(recording.sizeBytes)}, all here. You may leave this page; it goes on by itself.
      </p>
      {at < 0 && <p>{stepWords(null)}…</p>}
      <ol className={styles.steps}>
        {INGEST_STEPS.map((name, index) => {
          const isAt = index === at;
          const label = stepWords(isAt ? step : name);
          return (
            <li
              key={name}
              aria-current={isAt ? 'step' : undefined}
              data-state={isAt ? 'at' : index < at ? 'done' : 'next'}
            >
              {isAt && name === 'look-through' ? (
                <label className={styles.progress}>
                  <span>
                    {label}, {percent} %
                  </span>
                  <progress max={100} value={percent} />
                </label>
              ) : (
                <span>
                  {label}
                  {index < at && <span className="soft"> – done</span>}
                  {isAt && '…'}
                </span>
              )}
            </li>
          );
        })}
      </ol>
      {mayEdit && (
        <button type="button" className="alarm" onClick={() => void onCancel()}>
          Cancel
        </button>
      )}
    </section>
  );
}

/** Not taken, or stopped by a person. */
export function Refused({
  recording,
  mayEdit,
  onRetry,
  onRemove,
}: Shown & { onRetry: () => Promise<void>; onRemove: () => Promise<void> }) {
  const { fault } = recording;
  return (
    <section
      className={fault ? 'notice alarm' : 'notice caution'}
      aria-label={fault ? 'Recording not taken' : 'Recording cancelled'}
    >
      <p>
        <strong className={styles.name}>{recording.name}</strong>: {fault ? `${refusedTitle(fault)}. ` : ''}
        {fault ? recordingFaultWords(fault) : 'You stopped it. The file is here and can be taken up again.'}
      </p>
      {mayEdit && (
        <div className="row">
          {recording.mayRetry && (
            <button type="button" onClick={() => void onRetry()}>
              Try again
            </button>
          )}
          <button type="button" className="quiet" onClick={() => void onRemove()}>
            Remove this file
          </button>
        </div>
      )}
    </section>
  );
}
