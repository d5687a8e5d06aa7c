/** The sizes of a lesson beside each other as rows of words. */
import { type KitList, kitFor } from '#lib/kit/kit-list.ts';
import type { Making, Size } from '#lib/kit/making.ts';
import { formatMeasure } from '#lib/lesson/asked-measure.ts';
import { kitRows, type Worked } from './kit-rows.ts';
import { kitFaultWords, lengthWords, repeatsWithError } from './kit-words.ts';
import { figure } from './ring-words.ts';

export interface SizeRow {
  readonly id: string;
  readonly name: string;
  readonly measure: Worked;
  readonly repeats: Worked;
  readonly finished: Worked;
  /** Finished length beside the one asked for. */
  readonly off: Worked;
  readonly rings: Worked;
  readonly mass: Worked;
  readonly price: Worked;
}

const EMPTY: Worked = { text: '–', why: [] };

/** One row a size; a size that no kit can be made for says why. */
export const sizeRows = (making: Making, sizes: readonly Size[]): readonly SizeRow[] =>
  sizes.map((size, index) => {
    const kit = kitFor(making, size.bodyMm);
    const head = {
      id: size.id,
      name: size.name.trim() || `Size ${index + 1}`,
      measure: { text: `${formatMeasure(size.bodyMm, 'mm')} (${formatMeasure(size.bodyMm, 'in')})`, why: [] },
    };
    return kit.ok
      ? { ...head, ...told(kit.value) }
      : {
          ...head,
          repeats: { text: 'no kit', why: [kitFaultWords(kit.fault).text] },
          finished: EMPTY,
          off: EMPTY,
          rings: EMPTY,
          mass: EMPTY,
          price: EMPTY,
        };
  });

function told(kit: KitList): Omit<SizeRow, 'id' | 'name' | 'measure'> {
  const { totals } = kitRows(kit);
  const { length } = kit;
  const why = length ? lengthWords(length) : [];
  return {
    repeats: length ? { text: repeatsWithError(length).replace(/ repeats?$/, ''), why } : EMPTY,
    finished: length ? { text: formatMeasure(length.finishedMm, 'mm'), why } : EMPTY,
    off: length ? { text: signed(length.leftoverMm), why: why.slice(2, 3) } : EMPTY,
    rings: totals.needed,
    mass: totals.mass,
    price: totals.price,
  };
}

/** `+2.8 mm`, `−1.4 mm`, `0 mm`. */
const signed = (mm: number): string => `${mm > 0 ? '+' : mm < 0 ? '−' : ''}${figure(Math.abs(mm), 1)} mm`;
