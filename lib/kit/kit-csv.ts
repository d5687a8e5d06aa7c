/** A kit as comma-separated values (RFC 4180), for a spreadsheet: one line a ring kind or material. */
import { metalNameOf } from '#lib/rings/metals.ts';
import { csvText, packsCell } from './csv.ts';
import type { KitList } from './kit-list.ts';
import { formatAmount } from './money.ts';
import { formatDecimal } from './parse-decimal.ts';
import { milliToMinor } from './price.ts';

const COLUMNS = [
  'what',
  'name',
  'inner diameter',
  'wire',
  'metal',
  'colour',
  'opened',
  'closed',
  'spare',
  'needed',
  'unit',
  'packs',
  'over',
  'grams',
  'price of packs',
  'pro rata',
  'currency',
  'link',
] as const;

/**
 * The text of the file, lines ended by CR LF. The same kit gives the same
 * bytes. A text that a spreadsheet would run as a formula gets an apostrophe.
 */
export function kitCsv(kit: KitList): string {
  const money = (minor: number | undefined): string =>
    minor === undefined ? '' : formatAmount(minor, kit.currency);
  const rings = kit.rings.map((line) => [
    'ring',
    line.ringKind.name,
    line.ringKind.innerDiameter.stated,
    line.ringKind.wire.stated,
    metalNameOf(line.ringKind),
    line.ringKind.colour,
    line.opened,
    line.closed,
    line.spare,
    line.issued,
    'ring',
    packsCell(line.packs),
    line.packs?.over ?? '',
    line.issuedG?.toFixed(2) ?? '',
    money(line.price?.packsMinor),
    money(line.price ? milliToMinor(line.price.proRataMilli) : undefined),
    kit.currency,
    line.ringKind.offer?.link ?? '',
  ]);
  const rest = [...kit.materials, ...kit.tools].map((line) => [
    line.material.kind,
    line.material.name,
    '',
    '',
    '',
    '',
    '',
    '',
    '',
    formatDecimal(line.needMilli, 3),
    line.material.unit,
    packsCell(line.packs),
    line.packs ? formatDecimal(line.packs.over, 3) : '',
    line.g?.toFixed(2) ?? '',
    money(line.price?.packsMinor),
    money(line.price ? milliToMinor(line.price.proRataMilli) : undefined),
    kit.currency,
    line.material.offer?.link ?? '',
  ]);
  return csvText([COLUMNS, ...rings, ...rest]);
}
