/** What a workshop has and lacks, as rows of words. */
import { formatDecimal } from '#lib/kit/parse-decimal.ts';
import { addPrices } from '#lib/kit/price.ts';
import type { StockLine } from '#lib/kit/stock.ts';
import type { Worked } from './kit-rows.ts';
import { packsWords, packsWorking, priceWords, priceWorking, sumWords } from './pack-words.ts';

export interface StockRow {
  readonly key: string;
  readonly name: string;
  readonly needed: Worked;
  readonly onHand: Worked;
  readonly lacking: Worked;
  readonly packs: Worked;
  readonly price: Worked;
}

const figureOf = (milli: number): string => formatDecimal(milli, 3);
const plain = (text: string): Worked => ({ text, why: [] });

export function stockRows(
  lines: readonly StockLine[],
  currency: string,
): { readonly rows: readonly StockRow[]; readonly together: Worked } {
  const rows = lines.map((line): StockRow => {
    const { packs, price } = line.buy;
    const bought = line.lackingMilli > 0 && packs !== null;
    return {
      key: line.key,
      name: line.name.trim() || 'without a name',
      needed: plain(figureOf(line.neededMilli)),
      onHand: plain(line.onHandMilli === null ? 'not counted' : figureOf(line.onHandMilli)),
      lacking: {
        text: figureOf(line.lackingMilli),
        why: [lackWords(line)],
      },
      packs: bought
        ? {
            text: packsWords(packs, 1000),
            why: packsWorking(packs, line.lackingMilli, 1000, line.offer).filter((text) => text !== ''),
          }
        : plain('–'),
      price:
        bought && price
          ? { text: priceWords(price, currency), why: [priceWorking(packs, currency)] }
          : plain(line.lackingMilli > 0 ? 'no price' : '–'),
    };
  });
  const prices = lines.filter((line) => line.lackingMilli > 0).map((line) => line.buy.price);
  return {
    rows,
    together: plain(prices.length === 0 ? 'nothing to buy' : sumWords(addPrices(prices), currency)),
  };
}

function lackWords({ neededMilli, onHandMilli, lackingMilli }: StockLine): string {
  if (onHandMilli === null)
    return `Nobody counted what is there, so all ${figureOf(neededMilli)} are taken as lacking.`;
  return lackingMilli > 0
    ? `${figureOf(neededMilli)} needed − ${figureOf(onHandMilli)} at hand = ${figureOf(lackingMilli)}`
    : `${figureOf(onHandMilli)} at hand is enough for ${figureOf(neededMilli)}; ${figureOf(onHandMilli - neededMilli)} stay.`;
}
