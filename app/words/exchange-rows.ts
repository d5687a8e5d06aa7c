/** What is put into packed kits and taken out of them, as rows of words. */
import type { ExchangeLine } from '#lib/kit/kit-exchange.ts';
import { quantityWord, ringFacts } from '#lib/lesson/making-words.ts';
import { nameOf } from './kit-rows.ts';

export interface ExchangeRow {
  readonly key: string;
  readonly name: string;
  /** Sizes, metal and colour of a ring; empty for everything else. */
  readonly facts: string;
  /** In each kit of every size: `put in 4`, `take out 1 piece`, `–`. */
  readonly each: readonly string[];
  /** On the tray of pooled spare. */
  readonly tray: string;
  readonly inAll: string;
}

export const exchangeRows = (lines: readonly ExchangeLine[]): readonly ExchangeRow[] =>
  lines.map(({ key, thing, each, tray, inAll }) => {
    const unit = thing.is === 'ring' ? null : thing.material.unit;
    return {
      key,
      name:
        thing.is === 'ring'
          ? thing.ringKind.name.trim() || 'ring without a name'
          : nameOf(thing.material.name, thing.material.kind),
      facts: thing.is === 'ring' ? ringFacts(thing.ringKind) : '',
      each: each.map((quantity) => moved(quantity, unit)),
      tray: moved(tray, unit),
      inAll: moved(inAll, unit),
    };
  });

function moved(quantity: number, unit: string | null): string {
  if (quantity === 0) return '–';
  const much = Math.abs(quantity);
  return `${quantity > 0 ? 'put in' : 'take out'} ${unit === null ? much : quantityWord(much, unit)}`;
}
