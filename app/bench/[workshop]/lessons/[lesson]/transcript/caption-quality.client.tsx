'use client';
/** How well the cues read as captions, by a profile, and one action that breaks and times them anew. */
import { useEffect, useId, useMemo, useRef, useState } from 'react';
import { captionFaultFigure, captionFaultWords, captionProfileWords } from '#app/words/caption-words.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';
import { type CaptionFault, type CaptionFaultCode, captionFaults } from '#lib/transcript/caption-faults.ts';
import {
  CAPTION_PROFILE_IDS,
  CAPTION_PROFILES,
  type CaptionProfileId,
} from '#lib/transcript/caption-profile.ts';
import { useDraftPart } from '../draft.client.tsx';
import styles from './caption-quality.module.css';
import type { MarkUp } from './mark-up.ts';

const PROFILE_SETTING = 'benchleaf.captions';
/** Places of one kind that are shown at first. */
const SHOWN = 12;

interface CaptionQualityProps {
  readonly markUp: MarkUp;
  /** Brings a cue into view without taking the keyboard. */
  readonly show: (cueId: string) => void;
  readonly close: () => void;
}

export function CaptionQuality({ markUp, show, close }: CaptionQualityProps) {
  const id = useId();
  const first = useRef<HTMLSelectElement>(null);
  const cues = useDraftPart((state) => state.cues);
  const mayEdit = useDraftPart((state) => state.mayEdit);
  const [profileId, setProfileId] = useProfile();
  const [told, setTold] = useState('');
  const profile = CAPTION_PROFILES[profileId];
  const faults = useMemo(() => captionFaults(cues, profile), [cues, profile]);
  const kinds = [...Map.groupBy(faults, ({ code }) => code)];
  const startOf = useMemo(() => new Map(cues.map((cue) => [cue.id, cue.startMs])), [cues]);
  const captions = cues.filter(({ text }) => text !== '').length;

  useEffect(() => first.current?.focus(), []);

  const fit = () => {
    const changed = markUp.fitCaptions(profile);
    setTold(
      changed === 0
        ? 'Nothing can be broken or timed better without changing words.'
        : `${changed === 1 ? '1 cue' : `${changed} cues`} broken or timed anew; every word is as it was. Undo takes it back.`,
    );
  };

  return (
    <section className={styles.quality} aria-labelledby={`${id}-head`}>
      <h3 id={`${id}-head`}>Read as captions</h3>
      <div className={styles.choice}>
        <label htmlFor={`${id}-profile`}>Readers</label>
        <select
          ref={first}
          id={`${id}-profile`}
          value={profileId}
          onChange={(event) => {
            const chosen = CAPTION_PROFILE_IDS.find((one) => one === event.target.value);
            if (chosen) setProfileId(chosen);
            setTold('');
          }}
          onKeyDown={(event) => event.key === 'Escape' && close()}
        >
          {CAPTION_PROFILE_IDS.map((one) => (
            <option key={one} value={one}>
              {CAPTION_PROFILES[one].name}
            </option>
          ))}
        </select>
        <span className="hint">{captionProfileWords(profile)}</span>
      </div>
      <p role="status">
        {told} {summary(faults, captions)}
      </p>
      <ul className={styles.kinds}>
        {kinds.map(([code, places]) => (
          <li key={code}>
            <Kind code={code} places={places} startOf={startOf} show={show} />
          </li>
        ))}
      </ul>
      <div className="row">
        {mayEdit && faults.length > 0 && (
          <button type="button" onClick={fit}>
            Break and time anew
          </button>
        )}
        <button type="button" className="bare" onClick={close}>
          Close
        </button>
      </div>
      {mayEdit && faults.length > 0 && (
        <p className="hint">
          No word is changed, and no number is parted from its unit. Where speech is faster than reading, the
          caption stays fast: only fewer words would help, and those are yours.
        </p>
      )}
    </section>
  );
}

function Kind({
  code,
  places,
  startOf,
  show,
}: {
  readonly code: CaptionFaultCode;
  readonly places: readonly CaptionFault[];
  readonly startOf: ReadonlyMap<string, number>;
  readonly show: (cueId: string) => void;
}) {
  const [shown, setShown] = useState(SHOWN);
  const errors = places.filter(({ level }) => level === 'error').length;
  return (
    <details>
      <summary>
        {captionFaultWords(code)} ({places.length}
        {errors > 0 ? `, ${errors} of them badly` : ''})
      </summary>
      <ul className={styles.places}>
        {places.slice(0, shown).map((fault) => (
          <li key={fault.cueId}>
            <button type="button" className="bare" onClick={() => show(fault.cueId)}>
              <span className="unseen">Show the cue at </span>
              {formatTimeCode(startOf.get(fault.cueId) ?? 0)}
            </button>{' '}
            {captionFaultFigure(fault)}
          </li>
        ))}
      </ul>
      {shown < places.length && (
        <button type="button" className="quiet" onClick={() => setShown(places.length)}>
          Show all {places.length}
        </button>
      )}
    </details>
  );
}

function summary(faults: readonly CaptionFault[], captions: number): string {
  if (captions === 0) return 'There are no cues yet.';
  if (faults.length === 0) return `All ${captions.toLocaleString('en')} cues can be read at ease.`;
  const hard = new Set(faults.map(({ cueId }) => cueId)).size;
  const worst = new Set(faults.filter(({ level }) => level === 'error').map(({ cueId }) => cueId)).size;
  return `${hard.toLocaleString('en')} of ${captions.toLocaleString('en')} cues are hard to read${worst > 0 ? `, ${worst.toLocaleString('en')} of them for most readers` : ''}.`;
}

function useProfile() {
  const [profileId, setProfileId] = useState<CaptionProfileId>('lesson');
  useEffect(() => {
    const kept = localStorage.getItem(PROFILE_SETTING);
    const known = CAPTION_PROFILE_IDS.find((one) => one === kept);
    if (known) setProfileId(known);
  }, []);
  const set = (next: CaptionProfileId) => {
    setProfileId(next);
    localStorage.setItem(PROFILE_SETTING, next);
  };
  return [profileId, set] as const;
}
