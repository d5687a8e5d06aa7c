'use client';
/** A labelled control of a form: label, hint, control, fault. */
import { type ComponentProps, type ReactNode, useId, useState } from 'react';
import { useFormState } from './form-state.client.tsx';
import styles from './forms.module.css';

interface Labelled {
  readonly name: string;
  readonly label: ReactNode;
  readonly hint?: ReactNode;
}

function useField(name: string, hint: ReactNode) {
  const id = useId();
  const fault = useFormState().faults[name];
  const described = [hint ? `${id}-hint` : '', fault ? `${id}-fault` : ''].filter(Boolean).join(' ');
  return {
    id,
    fault,
    control: {
      id,
      name,
      'aria-invalid': fault ? true : undefined,
      'aria-describedby': described || undefined,
    },
  };
}

function Frame(props: {
  id: string;
  label: ReactNode;
  hint: ReactNode;
  fault?: string | undefined;
  children: ReactNode;
}) {
  return (
    <div className="field">
      <label htmlFor={props.id}>{props.label}</label>
      {props.hint && (
        <p className="hint" id={`${props.id}-hint`}>
          {props.hint}
        </p>
      )}
      {props.children}
      {props.fault && (
        <p className="fault" id={`${props.id}-fault`}>
          {props.fault}
        </p>
      )}
    </div>
  );
}

/** One line of text. */
export function TextField({ name, label, hint, ...input }: Labelled & ComponentProps<'input'>) {
  const { id, fault, control } = useField(name, hint);
  return (
    <Frame id={id} label={label} hint={hint} fault={fault}>
      <input type="text" {...input} {...control} />
    </Frame>
  );
}

/** A password; may be pasted, filled in by the browser, and looked at. */
export function PasswordField({
  name,
  label,
  hint,
  autoComplete,
}: Labelled & { autoComplete: 'current-password' | 'new-password' }) {
  const { id, fault, control } = useField(name, hint);
  const [shown, setShown] = useState(false);
  return (
    <Frame id={id} label={label} hint={hint} fault={fault}>
      <div className={styles['secret']}>
        <input
          {...control}
          type={shown ? 'text' : 'password'}
          autoComplete={autoComplete}
          autoCapitalize="none"
          autoCorrect="off"
          spellCheck={false}
          required
        />
        <button
          type="button"
          className="quiet"
          aria-pressed={shown}
          aria-label={`Show what is typed as ${typeof label === 'string' ? label.toLowerCase() : 'password'}`}
          onClick={() => setShown(!shown)}
        >
          Show
        </button>
      </div>
    </Frame>
  );
}

/** Several lines of text. */
export function LongField({ name, label, hint, ...area }: Labelled & ComponentProps<'textarea'>) {
  const { id, fault, control } = useField(name, hint);
  return (
    <Frame id={id} label={label} hint={hint} fault={fault}>
      <textarea {...area} {...control} />
    </Frame>
  );
}

/** One of a list. */
export function ChoiceField({
  name,
  label,
  hint,
  options,
  ...select
}: Labelled &
  ComponentProps<'select'> & { options: readonly { readonly value: string; readonly label: string }[] }) {
  const { id, fault, control } = useField(name, hint);
  return (
    <Frame id={id} label={label} hint={hint} fault={fault}>
      <select {...select} {...control}>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </Frame>
  );
}
