'use client';

import { useEffect, useRef } from 'react';
import { CORRECTION_KINDS, type Correction } from '#lib/lesson/content.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { AboutField } from './about-field.client.tsx';
import styles from './corrections.module.css';
import { Effects } from './effects.client.tsx';
import { SpanFields } from './span-fields.client.tsx';

interface CorrectionFormProps {
  readonly correction: Correction;
  readonly cues: readonly Cue[];
  readonly bench: string;
  readonly durationMs: number | null;
  readonly mayEdit: boolean;
  /** Just begun: the keyboard is put into its first field. */
  readonly focused: boolean;
  readonly onChange: (correction: Correction) => void;
  readonly onRemove: (id: string) => void;
}

/** One correction while it can still be changed. Every field is saved as it is typed. */
export function CorrectionForm(props: CorrectionFormProps) {
  const { correction, cues, bench, mayEdit, onChange } = props;
  const { id } = correction;
  const first = useRef<HTMLTextAreaElement>(null);
  useEffect(() => {
    if (props.focused) first.current?.focus();
  }, [props.focused]);
  const set = <K extends keyof Correction>(field: K, value: Correction[K]) =>
    onChange({ ...correction, [field]: value });
  return (
    <fieldset id={id} className={styles.form} disabled={!mayEdit}>
      <legend>{correction.wrong.trim() === '' ? 'New correction' : correction.wrong.slice(0, 60)}</legend>
      <div className={styles.pair}>
        <div className="field">
          <label htmlFor={`wrong-${id}`}>What was wrong</label>
          <textarea
            id={`wrong-${id}`}
            ref={first}
            maxLength={20_000}
            value={correction.wrong}
            onChange={(event) => set('wrong', event.target.value)}
          />
        </div>
        <div className="field">
          <label htmlFor={`right-${id}`}>What is right</label>
          <textarea
            id={`right-${id}`}
            maxLength={20_000}
            value={correction.right}
            onChange={(event) => set('right', event.target.value)}
          />
        </div>
      </div>
      <div className={styles.pair}>
        <div className="field">
          <label htmlFor={`kind-${id}`}>How it was wrong</label>
          <select
            id={`kind-${id}`}
            value={correction.kind}
            onChange={(event) => {
              const kind = CORRECTION_KINDS.find((candidate) => candidate === event.target.value);
              if (kind) set('kind', kind);
            }}
          >
            {CORRECTION_KINDS.map((kind) => (
              <option key={kind}>{kind}</option>
            ))}
          </select>
        </div>
        <div className="field">
          <label htmlFor={`affects-${id}`}>Whom it concerns</label>
          <input
            id={`affects-${id}`}
            maxLength={20_000}
            value={correction.affects}
            placeholder="everyone who works by revision 1"
            onChange={(event) => set('affects', event.target.value)}
          />
        </div>
      </div>
      <AboutField correction={correction} onChange={onChange} />
      <SpanFields correction={correction} cues={cues} durationMs={props.durationMs} onChange={onChange} />
      <label className="tick">
        <input
          type="checkbox"
          checked={correction.kitsChange}
          onChange={(event) => set('kitsChange', event.target.checked)}
        />
        Kits change by it
      </label>
      <Effects correction={correction} bench={bench} />
      {mayEdit ? (
        <p className={styles.end}>
          <button type="button" className="alarm" onClick={() => props.onRemove(id)}>
            Remove this correction
          </button>{' '}
          {correction.effects.length > 0 && (
            <span className="hint">What it put right in the lesson stays put right.</span>
          )}
        </p>
      ) : null}
    </fieldset>
  );
}
