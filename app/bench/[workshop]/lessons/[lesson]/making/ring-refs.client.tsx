'use client';
/** Choosing rings that are there: by row and place, with the kind that lies there. */
import { refWords } from '#app/words/weave-words.ts';
import type { RingRef } from '#lib/weave/placement.ts';
import { ChoiceField } from './fields/choice-field.client.tsx';

/** A ring that can be named, and how its kind is called. */
export interface NamedRing {
  readonly ref: RingRef;
  readonly kindName: string;
}

const keyOf = ({ row, nth, from }: RingRef): string => `${from}/${nth}/${row}`;

export interface RingRefFieldProps {
  readonly label: string;
  readonly value: RingRef | undefined;
  readonly near: readonly NamedRing[];
  readonly onTake: (ref: RingRef | undefined) => void;
}

/** Rings as choices; one that is named and not near stays in the list, so that nothing is lost by looking. */
export function RingRefField({ label, value, near, onTake }: RingRefFieldProps) {
  const isNear = !value || near.some(({ ref }) => keyOf(ref) === keyOf(value));
  const choices = [
    ['', 'not named'] as const,
    ...near.map(
      ({ ref, kindName }) => [keyOf(ref), `${refWords(ref)}${kindName ? ` (${kindName})` : ''}`] as const,
    ),
    ...(value && !isNear ? [[keyOf(value), refWords(value)] as const] : []),
  ];
  return (
    <ChoiceField<string>
      label={label}
      value={value ? keyOf(value) : ''}
      choices={choices}
      onTake={(key) =>
        onTake(near.find(({ ref }) => keyOf(ref) === key)?.ref ?? (key === '' ? undefined : value))
      }
    />
  );
}
