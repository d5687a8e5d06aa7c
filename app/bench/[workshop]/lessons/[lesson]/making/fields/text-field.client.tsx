'use client';
/** A labelled text that is taken as it is typed. */
import { useId, useRef } from 'react';

export interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onTake: (value: string, run: string) => void;
  readonly hint?: string;
  /** Lines of a longer text; one line without. */
  readonly rows?: number;
  readonly maxLength?: number;
  /** Where other screens lead to. */
  readonly id?: string;
  readonly placeholder?: string;
  /** Words that were used before, offered as it is typed. */
  readonly known?: readonly string[];
}

export function TextField(props: TextFieldProps) {
  const { label, value, onTake, hint, rows, maxLength, id, placeholder, known } = props;
  const own = useId();
  const run = useRef('');
  const at = id ?? own;
  const shared = {
    id: at,
    value,
    placeholder,
    maxLength: maxLength ?? (rows ? 20_000 : 300),
    'aria-describedby': hint ? `${at}-hint` : undefined,
    onFocus: () => {
      run.current = crypto.randomUUID();
    },
  };
  return (
    <div className="field">
      <label htmlFor={at}>{label}</label>
      {rows ? (
        <textarea {...shared} rows={rows} onChange={(e) => onTake(e.target.value, run.current)} />
      ) : (
        <input
          {...shared}
          type="text"
          list={known && known.length > 0 ? `${at}-known` : undefined}
          onChange={(e) => onTake(e.target.value, run.current)}
        />
      )}
      {known && known.length > 0 && (
        <datalist id={`${at}-known`}>
          {known.map((word) => (
            <option key={word} value={word} />
          ))}
        </datalist>
      )}
      {hint && (
        <p className="hint" id={`${at}-hint`}>
          {hint}
        </p>
      )}
    </div>
  );
}
