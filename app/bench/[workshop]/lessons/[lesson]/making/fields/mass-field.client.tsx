'use client';
/** A field for a mass with its unit; asks which one is meant where the text leaves it open. */
import { massFaultWords, statedMassWords } from '#app/words/mass-words.ts';
import { type MassFault, parseMass } from '#lib/kit/parse-mass.ts';
import type { StatedMass } from '#lib/thing.ts';
import styles from './fields.module.css';
import { TypedField } from './typed-field.client.tsx';

export interface MassFieldProps {
  readonly label: string;
  readonly place: string;
  readonly value: StatedMass | null;
  readonly hint: string;
  readonly onTake: (mass: StatedMass, run: string) => void;
}

export function MassField({ label, place, value, hint, onTake }: MassFieldProps) {
  return (
    <TypedField<StatedMass, MassFault>
      label={label}
      place={place}
      shown={value?.stated ?? ''}
      read={parseMass}
      take={onTake}
      faultWords={massFaultWords}
      hint={value ? `${statedMassWords(value)}. ${hint}` : 'For example 50 g, 1 ozt or 1/2 lb.'}
      offer={(fault, typed) =>
        fault.code === 'mass-needs-unit' && (
          <div className={styles.choices}>
            {fault.choices.map((choice) => (
              <button
                key={choice.stated}
                type="button"
                className="quiet"
                onClick={() => {
                  onTake(choice, crypto.randomUUID());
                  typed.settle();
                }}
              >
                {statedMassWords(choice)}
              </button>
            ))}
          </div>
        )
      }
    />
  );
}
