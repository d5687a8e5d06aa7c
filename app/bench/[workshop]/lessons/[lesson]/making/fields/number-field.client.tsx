'use client';
/** Fields for numbers that stay whole: counts, lengths, masses, quantities, money. */
import { decimalFaultWords, figure } from '#app/words/ring-words.ts';
import { formatAmount, parseMoney } from '#lib/kit/money.ts';
import { type DecimalFault, formatDecimal, parseDecimal } from '#lib/kit/parse-decimal.ts';
import { toMm, toTicks } from '#lib/kit/ticks.ts';
import { failed, ok, type Result } from '#lib/result.ts';
import { parseSize } from '#lib/rings/parse-size.ts';
import { TypedField } from './typed-field.client.tsx';

type NumberFault =
  | DecimalFault
  | { readonly code: 'number-outside'; readonly least: string; readonly most: string };

function faultWords(fault: NumberFault): string {
  return fault.code === 'number-outside'
    ? `A number from ${fault.least} to ${fault.most} goes here.`
    : decimalFaultWords(fault);
}

interface Common {
  readonly label: string;
  readonly place: string;
  readonly hint?: string;
  readonly id?: string;
}

export interface NumberFieldProps extends Common {
  readonly unit?: string;
  /** In units of 10^-places; null: nothing stated. */
  readonly value: number | null;
  readonly places: number;
  readonly least: number;
  readonly most: number;
  /** Whether an empty field means nothing stated; then null is taken. */
  readonly mayBeEmpty?: boolean;
  readonly onTake: (value: number | null, run: string) => void;
}

const within = (
  read: Result<number, DecimalFault>,
  { least, most, places }: Pick<NumberFieldProps, 'least' | 'most' | 'places'>,
): Result<number, NumberFault> =>
  read.ok && (read.value < least || read.value > most)
    ? failed({
        code: 'number-outside',
        least: formatDecimal(least, places),
        most: formatDecimal(most, places),
      })
    : read;

const passed = ({ label, place, hint, id }: Common) => ({
  label,
  place,
  ...(hint ? { hint } : {}),
  ...(id ? { id } : {}),
});

export function NumberField(props: NumberFieldProps) {
  const { unit, value, places, mayBeEmpty, onTake } = props;
  return (
    <TypedField<number | null, NumberFault>
      {...passed(props)}
      {...(unit ? { unit } : {})}
      inputMode={places === 0 ? 'numeric' : 'decimal'}
      shown={value === null ? '' : formatDecimal(value, places)}
      read={(text) =>
        mayBeEmpty && text.trim() === '' ? ok(null) : within(parseDecimal(text, places), props)
      }
      take={onTake}
      faultWords={faultWords}
    />
  );
}

export interface LengthFieldProps extends Common {
  readonly mm: number | null;
  readonly leastMm: number;
  readonly mostMm: number;
  readonly mayBeEmpty?: boolean;
  readonly onTake: (mm: number | null, run: string) => void;
}

/** Millimetres by its label; inches are understood where they are said. */
export function LengthField(props: LengthFieldProps) {
  const { mm, leastMm, mostMm, mayBeEmpty, onTake } = props;
  const read = (text: string): Result<number | null, NumberFault> => {
    if (mayBeEmpty && text.trim() === '') return ok(null);
    const stated = parseSize(text, 'length');
    const ticks: Result<number, DecimalFault> = stated.ok
      ? ok(toTicks(stated.value.mm))
      : parseDecimal(text, 4);
    const checked = within(ticks, { least: toTicks(leastMm), most: toTicks(mostMm), places: 4 });
    return checked.ok ? ok(toMm(checked.value)) : checked;
  };
  return (
    <TypedField<number | null, NumberFault>
      {...passed(props)}
      unit="mm"
      inputMode="text"
      shown={mm === null ? '' : figure(mm, 4)}
      read={read}
      take={onTake}
      faultWords={faultWords}
    />
  );
}

export interface MoneyFieldProps extends Common {
  readonly minor: number | null;
  readonly currency: string;
  readonly onTake: (minor: number | null, run: string) => void;
}

export function MoneyField(props: MoneyFieldProps) {
  const { minor, currency, onTake } = props;
  const most = 1_000_000_000;
  return (
    <TypedField<number | null, NumberFault>
      {...passed(props)}
      unit={currency}
      inputMode="decimal"
      shown={minor === null ? '' : formatAmount(minor, currency)}
      read={(text) =>
        text.trim() === '' ? ok(null) : within(parseMoney(text, currency), { least: 0, most, places: 0 })
      }
      take={onTake}
      faultWords={faultWords}
    />
  );
}
