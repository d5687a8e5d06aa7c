/**
 * A kit as rows of words: every number with the working that it opens to. One form for the bench, the lesson page and the sheet.
 */
import type { KitList, RingLine } from '#lib/kit/kit-list.ts';
import type { MaterialLine } from '#lib/kit/material-line.ts';
import { formatMoney } from '#lib/kit/money.ts';
import type { PriceSum, Purchase } from '#lib/kit/price.ts';
import { quantityWord, ringFacts } from '#lib/lesson/making-words.ts';
import type { RingMass } from '#lib/rings/ring.ts';
import type { RingKind } from '#lib/rings/ring-kind.ts';
import type { Offer } from '#lib/thing.ts';
import { countWords, massWords, materialWords, spareWords } from './kit-words.ts';
import {
  hintWords,
  packsWords,
  packsWorking,
  priceWords,
  priceWorking,
  proRataWords,
  proRataWorking,
  sumWords,
  unpricedWords,
} from './pack-words.ts';
import { figure, ringMassWords } from './ring-words.ts';

/** A number as it is shown, and the sentences that tell how it came about; none where there is nothing to tell. */
export interface Worked {
  readonly text: string;
  readonly why: readonly string[];
}

/** What of a row is bought. */
export interface Bought {
  readonly needed: Worked;
  readonly packs: Worked;
  readonly mass: Worked;
  readonly price: Worked;
  /** What is used of the packs. */
  readonly used: Worked;
  /** What a little less would save; empty where nothing. */
  readonly hint: string;
  /** Where to buy it; empty where nobody said. */
  readonly link: string;
}

export interface RingRow extends Bought {
  readonly id: string;
  readonly name: string;
  readonly facts: string;
  readonly ringKind: RingKind;
  readonly opened: Worked;
  readonly closed: Worked;
  readonly spare: Worked;
}

export interface SupplyRow extends Bought {
  readonly id: string;
  readonly name: string;
}

export interface KitRows {
  readonly rings: readonly RingRow[];
  readonly supplies: readonly SupplyRow[];
  /** What is kept: tools and safety items; not in the sums. */
  readonly tools: readonly SupplyRow[];
  readonly totals: {
    readonly opened: Worked;
    readonly closed: Worked;
    readonly spare: Worked;
    readonly needed: Worked;
    readonly mass: Worked;
    readonly price: Worked;
    readonly used: Worked;
  };
  /** What the sums leave out; empty where nothing. */
  readonly unpriced: string;
}

const plain = (text: string): Worked => ({ text, why: [] });
const NONE = '–';

export const nameOf = (name: string, kind: string): string => name.trim() || `${kind} without a name`;

/** The rows of one kit. */
export function kitRows(kit: KitList): KitRows {
  const { totals, currency } = kit;
  const rings = kit.rings.map((line): RingRow => {
    const counted = (of: 'opened' | 'closed'): Worked =>
      line[of] === 0
        ? plain('0')
        : { text: `${line[of]}`, why: [countWords(line.terms, kit.runs, line, of)] };
    return {
      ...ringHead(line.ringKind),
      opened: counted('opened'),
      closed: counted('closed'),
      spare: { text: `${line.spare}`, why: [spareWords(line.spareWorking)] },
      ...bought(
        {
          text: `${line.issued}`,
          why: [`${line.opened} opened + ${line.closed} closed + ${line.spare} spare = ${line.issued}`],
        },
        line,
        line.ringKind.offer,
        { currency, unitsPer: 1, needed: line.issued },
      ),
      mass: ringMass(line.issued, line.ringMass),
    };
  });
  const supply = (line: MaterialLine): SupplyRow => ({
    id: line.material.id,
    name: nameOf(line.material.name, line.material.kind),
    ...bought(
      { text: quantityWord(line.needMilli, line.material.unit), why: [materialWords(line)] },
      line,
      line.material.offer,
      { currency, unitsPer: 1000, needed: line.needMilli },
    ),
    mass: supplyMass(line.needMilli, line.material.massG),
  });
  const supplies = kit.materials.map(supply);
  return {
    rings,
    supplies,
    tools: kit.tools.map(supply),
    totals: {
      opened: added(
        totals.opened,
        kit.rings.map((line) => line.opened),
      ),
      closed: added(
        totals.closed,
        kit.rings.map((line) => line.closed),
      ),
      spare: added(
        totals.spare,
        kit.rings.map((line) => line.spare),
      ),
      needed: added(
        totals.issued,
        kit.rings.map((line) => line.issued),
      ),
      ...sums(
        [...kit.rings, ...kit.materials],
        [...rings, ...supplies],
        totals.price,
        totals.ringsIssuedG === null ? null : totals.ringsIssuedG + totals.materialsG,
        currency,
      ),
    },
    unpriced: unpricedWords(totals.price),
  };
}

export const ringHead = (ringKind: RingKind) => ({
  id: ringKind.id,
  name: nameOf(ringKind.name, 'ring kind'),
  facts: ringFacts(ringKind),
  ringKind,
});

export const added = (sum: number, parts: readonly number[]): Worked => ({
  text: `${sum}`,
  why: parts.length > 1 ? [`${parts.join(' + ')} = ${sum}`] : [],
});

interface BuyingContext {
  readonly currency: string;
  readonly unitsPer: number;
  readonly needed: number;
}

export function bought(
  needed: Worked,
  purchase: Purchase,
  offer: Offer | null,
  { currency, unitsPer, needed: units }: BuyingContext,
): Omit<Bought, 'mass'> {
  const { packs, price } = purchase;
  return {
    needed,
    packs: packs
      ? {
          text: packsWords(packs, unitsPer),
          why: packsWorking(packs, units, unitsPer, offer).filter((text) => text !== ''),
        }
      : plain(NONE),
    price:
      price && packs
        ? { text: priceWords(price, currency), why: [priceWorking(packs, currency)] }
        : plain('no price'),
    used: price
      ? { text: proRataWords(price, currency), why: [proRataWorking(purchase, units, unitsPer, currency)] }
      : plain(NONE),
    hint: packs ? hintWords(packs, currency) : '',
    link: offer?.link ?? '',
  };
}

export function ringMass(count: number, mass: RingMass | null): Worked {
  if (!mass) return { text: NONE, why: [ringMassWords(null)] };
  return {
    text: massWords(count * mass.g),
    why: [
      `${count} × ${figure(mass.g, 4)} g = ${massWords(count * mass.g)}; ${ringMassWords(mass)}.`,
      mass.from === 'metal'
        ? 'Wire that is 1 % thicker than stated makes rings 2 % heavier, so this may be a few per cent off.'
        : '',
    ].filter((text) => text !== ''),
  };
}

export const supplyMass = (needMilli: number, massG: number | null): Worked =>
  massG === null
    ? plain(NONE)
    : {
        text: massWords((needMilli * massG) / 1000),
        why: [`${needMilli / 1000} × ${figure(massG, 4)} g = ${massWords((needMilli * massG) / 1000)}`],
      };

export function sums(
  lines: readonly Purchase[],
  rows: readonly Bought[],
  price: PriceSum,
  grams: number | null,
  currency: string,
) {
  const prices = lines.flatMap((line) => (line.price ? [line.price] : []));
  const of = (sum: string, parts: readonly string[]): Worked => ({
    text: sum,
    why: parts.length > 1 ? [`${parts.join(' + ')} = ${sum}`] : [],
  });
  return {
    mass:
      grams === 0
        ? plain(NONE)
        : of(
            massWords(grams),
            grams === null ? [] : rows.flatMap(({ mass }) => (mass.text === NONE ? [] : [mass.text])),
          ),
    price: of(
      sumWords(price, currency),
      prices.map((one) => formatMoney(one.packsMinor, currency)),
    ),
    used: {
      text: prices.length === 0 && lines.length > 0 ? NONE : proRataWords(price, currency),
      why:
        prices.length > 1
          ? ['Each line to a thousandth of the smallest coin, added, then rounded once.']
          : [],
    },
  };
}

/** Everything that a kit's ring line or a supply tells, for a list of all working. */
export const allWorking = (row: RingRow | SupplyRow): readonly string[] => [
  ...('opened' in row ? [row.opened, row.closed, row.spare].flatMap((one) => one.why) : []),
  ...[row.needed, row.packs, row.mass, row.price, row.used].flatMap((one) => one.why),
];

/** What to lay ready before weaving, as tasks with an id that stays. */
export const preparationOf = ({
  rings,
}: KitList): readonly { readonly id: string; readonly text: string }[] =>
  rings.flatMap((line) => preparationOfLine(line));

const preparationOfLine = ({ ringKind, opened, closed, spare }: RingLine) =>
  [
    { id: `open-${ringKind.id}`, count: opened, text: `Open ${opened} × ${ringKind.name}` },
    { id: `close-${ringKind.id}`, count: closed, text: `Close ${closed} × ${ringKind.name}` },
    { id: `spare-${ringKind.id}`, count: spare, text: `Lay aside ${spare} spare × ${ringKind.name}` },
  ].filter((task) => task.count > 0);
