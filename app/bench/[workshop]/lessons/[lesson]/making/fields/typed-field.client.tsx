'use client';
/** A labelled field whose text is read into a value; says at once why it could not be. */
import { type ReactNode, useId } from 'react';
import type { Result } from '#lib/result.ts';
import styles from './fields.module.css';
import { type Typed, useTyped } from './use-typed.ts';

export interface TypedFieldProps<T, F> {
  readonly label: string;
  /** Unit or currency, shown behind the field and part of its name. */
  readonly unit?: string;
  readonly hint?: ReactNode;
  readonly place: string;
  readonly shown: string;
  readonly read: (text: string) => Result<T, F>;
  readonly take: (value: T, run: string) => void;
  readonly faultWords: (fault: F) => string;
  readonly inputMode?: 'decimal' | 'numeric' | 'url' | 'text';
  readonly id?: string;
  /** What a fault offers besides words. */
  readonly offer?: (fault: F, typed: Typed<F>) => ReactNode;
  readonly wide?: boolean;
}

export function TypedField<T, F>(props: TypedFieldProps<T, F>) {
  const { label, unit, hint, place, shown, read, take, faultWords, inputMode, offer, wide } = props;
  const own = useId();
  const id = props.id ?? own;
  const typed = useTyped({ place, shown, read, take });
  return (
    <div className="field">
      <label htmlFor={id}>
        {label}
        {unit && <span className={styles.inLabel}>, {unit}</span>}
      </label>
      <input
        id={id}
        type="text"
        className={wide ? styles.wide : styles.short}
        inputMode={inputMode ?? 'text'}
        autoComplete="off"
        spellCheck={false}
        value={typed.text}
        aria-invalid={typed.fault ? true : undefined}
        aria-describedby={`${id}-under`}
        onChange={(event) => typed.onChange(event.target.value)}
        onFocus={typed.onFocus}
        onBlur={typed.onBlur}
      />
      <div id={`${id}-under`} aria-live="polite">
        {typed.fault ? (
          <>
            <p className="fault">{faultWords(typed.fault)}</p>
            {offer?.(typed.fault, typed)}
          </>
        ) : (
          hint && <p className="hint">{hint}</p>
        )}
      </div>
    </div>
  );
}
