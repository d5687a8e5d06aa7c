'use client';
/** One field for a ring size or a wire: shows what was understood, and asks where the system is missing. */
import { sizeFaultWords } from '#app/words/ring-words.ts';
import { formatSize, parseSize, type SizeFault, type SizeOf } from '#lib/rings/parse-size.ts';
import type { StatedSize } from '#lib/rings/ring-kind.ts';
import styles from './fields.module.css';
import { TypedField } from './typed-field.client.tsx';

export interface SizeFieldProps {
  readonly label: string;
  readonly of: SizeOf;
  readonly place: string;
  readonly value: StatedSize | null;
  readonly onTake: (size: StatedSize, run: string) => void;
  readonly id?: string;
}

const EMPTY_HINT: Readonly<Record<SizeOf, string>> = {
  'inner diameter': 'For example 1/4 in or 6.35 mm.',
  wire: 'For example 18 SWG, 18 AWG or 1.2 mm.',
  length: 'For example 165 mm or 6 1/2 in.',
};

export function SizeField({ label, of, place, value, onTake, id }: SizeFieldProps) {
  return (
    <TypedField<StatedSize, SizeFault>
      label={label}
      {...(id ? { id } : {})}
      place={place}
      shown={value?.stated ?? ''}
      read={(text) => parseSize(text, of)}
      take={onTake}
      faultWords={(fault) => sizeFaultWords(fault, of)}
      hint={value ? formatSize(value) : EMPTY_HINT[of]}
      offer={(fault, typed) =>
        fault.code === 'size-needs-system' && (
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
                {formatSize(choice)}
              </button>
            ))}
          </div>
        )
      }
    />
  );
}
