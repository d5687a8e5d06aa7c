'use client';
/** A labelled choice of one. */
import { useId } from 'react';

export interface ChoiceFieldProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly choices: readonly (readonly [T, string])[];
  readonly onTake: (value: T) => void;
  readonly hint?: string;
  /** Where other screens lead to. */
  readonly id?: string;
}

export function ChoiceField<T extends string>({
  id: given,
  label,
  value,
  choices,
  onTake,
  hint,
}: ChoiceFieldProps<T>) {
  const own = useId();
  const id = given ?? own;
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        value={value}
        aria-describedby={hint ? `${id}-hint` : undefined}
        onChange={(event) => {
          const chosen = choices.find(([one]) => one === event.target.value);
          if (chosen) onTake(chosen[0]);
        }}
      >
        {choices.map(([one, words]) => (
          <option key={one} value={one}>
            {words}
          </option>
        ))}
      </select>
      {hint && (
        <p className="hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
    </div>
  );
}
