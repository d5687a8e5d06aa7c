/** A picking sheet as comma-separated values: one line a thing, one column a size. */

import { csvText, packsCell } from './csv.ts';
import type { BatchRingLine, KitBatch } from './kit-batch.ts';
import type { KitList } from './kit-list.ts';
import { formatAmount } from './money.ts';
import { formatDecimal } from './parse-decimal.ts';
import type { Purchase } from './price.ts';

/** So many kits of one size. */
export interface PickedKit {
  readonly name: string;
  readonly kit: KitList;
  readonly times: number;
}

/** What goes into each kit of every size, the spare that lies beside them where it is pooled, and the sum. */
export function pickingCsv(sizes: readonly PickedKit[], batch: KitBatch, currency: string): string {
  const bought = ({ packs, price }: Purchase, unitsPer: number) => [
    packsCell(packs),
    packs ? formatDecimal(packs.over, unitsPer === 1 ? 0 : 3) : '',
    price ? formatAmount(price.packsMinor, currency) : '',
    currency,
  ];
  return csvText([
    [
      'what',
      ...sizes.map(({ name, times }) => `in each ${name} (${times} kits)`),
      'spare tray',
      'in all',
      'unit',
      'packs',
      'over',
      'price of packs',
      'currency',
    ],
    ...batch.rings.map((line) => [
      line.ringKind.name,
      ...sizes.map(({ kit }) => ringsIn(kit, line)),
      line.pooledSpare ? line.spare : '',
      line.issued,
      'ring',
      ...bought(line, 1),
    ]),
    ...batch.materials.map((line) => [
      line.material.name,
      ...sizes.map(({ kit }) => {
        const own = kit.materials.find(({ material }) => material.id === line.material.id);
        return own ? formatDecimal(own.needMilli, 3) : '';
      }),
      '',
      formatDecimal(line.needMilli, 3),
      line.material.unit,
      ...bought(line, 1000),
    ]),
  ]);
}

/** Rings that lie in one kit; pooled spare does not. */
function ringsIn(kit: KitList, { ringKind, pooledSpare }: BatchRingLine): number | string {
  const own = kit.rings.find((line) => line.ringKind.id === ringKind.id);
  return own ? (pooledSpare ? own.net : own.issued) : '';
}
