'use client';

import { useId } from 'react';
import { type DescriptionLimits, NO_LIMITS, USUAL_LIMITS } from '#lib/description/description-setup.ts';
import styles from './description-setup.module.css';

interface LimitsFieldsProps {
  readonly limits: DescriptionLimits;
  readonly onChange: (limits: DescriptionLimits) => void;
}

/** What the place where the text is pasted takes; each figure can be changed. */
export function LimitsFields({ limits, onChange }: LimitsFieldsProps) {
  const id = useId();
  const most = (field: 'characters' | 'bytes', label: string) => (
    <div className="field">
      <label htmlFor={`${id}-${field}`}>{label}</label>
      <input
        id={`${id}-${field}`}
        inputMode="numeric"
        value={limits[field] ?? ''}
        placeholder="any number"
        onChange={({ target: { value } }) =>
          onChange({ ...limits, [field]: value.trim() === '' ? null : wholeIn(value, limits[field] ?? 0) })
        }
      />
    </div>
  );
  return (
    <>
      <div className="row">
        <button type="button" className="quiet" onClick={() => onChange(USUAL_LIMITS)}>
          What many places ask
        </button>
        <button type="button" className="quiet" onClick={() => onChange(NO_LIMITS)}>
          No limits
        </button>
      </div>
      <p className={`hint ${styles['from']}`}>
        “What many places ask” is common practice, written down from memory. Look at your place’s own rules.
      </p>
      {most('characters', 'Most characters')}
      {most('bytes', 'Most bytes (UTF-8)')}
      <div className="field">
        <label className={styles['shown']}>
          <input
            type="checkbox"
            checked={limits.chaptersFromNought}
            onChange={(event) => onChange({ ...limits, chaptersFromNought: event.target.checked })}
          />
          The first chapter must be 0:00
        </label>
      </div>
      <div className="field">
        <label htmlFor={`${id}-least`}>Fewest chapters</label>
        <input
          id={`${id}-least`}
          inputMode="numeric"
          value={limits.leastChapters}
          onChange={({ target: { value } }) =>
            onChange({ ...limits, leastChapters: wholeIn(value, limits.leastChapters) })
          }
        />
      </div>
      <div className="field">
        <label htmlFor={`${id}-shortest`}>Shortest chapter, seconds</label>
        <input
          id={`${id}-shortest`}
          inputMode="numeric"
          value={limits.leastChapterMs / 1000}
          onChange={({ target: { value } }) =>
            onChange({ ...limits, leastChapterMs: wholeIn(value, limits.leastChapterMs / 1000) * 1000 })
          }
        />
      </div>
      <div className="field">
        <label htmlFor={`${id}-refused`}>Characters it refuses</label>
        <input
          id={`${id}-refused`}
          value={limits.refused}
          maxLength={50}
          placeholder="none"
          onChange={({ target: { value } }) => onChange({ ...limits, refused: value })}
        />
      </div>
    </>
  );
}

/** The whole number that a field holds, nought where it is empty; what was before where it holds anything else. */
const wholeIn = (typed: string, before: number): number =>
  /^\d{0,7}$/.test(typed.trim()) ? Number(typed.trim()) : before;
