/** The sum of many kits as rows of words, in the form of one kit. */
import type { BatchTerm, KitBatch } from '#lib/kit/kit-batch.ts';
import { quantityWord } from '#lib/lesson/making-words.ts';
import {
  added,
  bought,
  type KitRows,
  nameOf,
  type RingRow,
  ringHead,
  ringMass,
  type SupplyRow,
  sums,
  supplyMass,
  type Worked,
} from './kit-rows.ts';
import { spareWords } from './kit-words.ts';
import { unpricedWords } from './pack-words.ts';

/** The rows of a batch; tools are each pupil's own and stay out. */
export function batchRows(batch: KitBatch, currency: string): KitRows {
  const rings = batch.rings.map((line): RingRow => {
    const counted = (of: 'opened' | 'closed'): Worked => times(line[of], line.terms, (one) => one[of]);
    const { terms, pooledSpare } = line;
    return {
      ...ringHead(line.ringKind),
      opened: counted('opened'),
      closed: counted('closed'),
      spare: pooledSpare
        ? { text: `${line.spare}`, why: [spareWords(pooledSpare)] }
        : times(line.spare, terms, (one) => one.spare),
      ...bought(
        pooledSpare
          ? {
              text: `${line.issued}`,
              why: [
                ...times(line.net, terms, (one) => one.net).why,
                `${line.net} + ${line.spare} spare = ${line.issued}`,
              ],
            }
          : times(line.issued, terms, (one) => one.issued),
        line,
        line.ringKind.offer,
        { currency, unitsPer: 1, needed: line.issued },
      ),
      mass: ringMass(line.issued, terms[0]?.line.ringMass ?? null),
    };
  });
  const supplies = batch.materials.map(
    (line): SupplyRow => ({
      id: line.material.id,
      name: nameOf(line.material.name, line.material.kind),
      ...bought(
        {
          text: quantityWord(line.needMilli, line.material.unit),
          why: times(line.needMilli, line.terms, (one) => one.needMilli, 1000).why,
        },
        line,
        line.material.offer,
        { currency, unitsPer: 1000, needed: line.needMilli },
      ),
      mass: supplyMass(line.needMilli, line.material.massG),
    }),
  );
  const masses = [
    ...batch.rings.map((line) => line.issuedG),
    ...batch.materials.map((line) => (line.needMilli * (line.material.massG ?? 0)) / 1000),
  ];
  return {
    rings,
    supplies,
    tools: [],
    totals: {
      opened: added(
        total(batch.rings, 'opened'),
        batch.rings.map((line) => line.opened),
      ),
      closed: added(
        total(batch.rings, 'closed'),
        batch.rings.map((line) => line.closed),
      ),
      spare: added(
        total(batch.rings, 'spare'),
        batch.rings.map((line) => line.spare),
      ),
      needed: added(
        batch.issued,
        batch.rings.map((line) => line.issued),
      ),
      ...sums(
        [...batch.rings, ...batch.materials],
        [...rings, ...supplies],
        batch.price,
        masses.includes(null) ? null : masses.reduce<number>((sum, g) => sum + (g ?? 0), 0),
        currency,
      ),
    },
    unpriced: unpricedWords(batch.price),
  };
}

const total = (lines: KitBatch['rings'], of: 'opened' | 'closed' | 'spare'): number =>
  lines.reduce((sum, line) => sum + line[of], 0);

/** `2 × 36 + 3 × 40 = 192`; a sum of one term is itself. */
function times<L>(
  sum: number,
  terms: readonly BatchTerm<L>[],
  of: (line: L) => number,
  unitsPer = 1,
): Worked {
  const words = terms.map(
    (term) => `${term.times} ${term.times === 1 ? 'kit' : 'kits'} × ${of(term.line) / unitsPer}`,
  );
  return { text: `${sum / unitsPer}`, why: sum === 0 ? [] : [`${words.join(' + ')} = ${sum / unitsPer}`] };
}
