/** Comma-separated values (RFC 4180) for spreadsheets. */
import type { PackChoice } from './choose-packs.ts';

type Cell = string | number;

/** Rows as text, lines ended by CR LF. A text that a spreadsheet would run as a formula gets an apostrophe. */
export const csvText = (rows: readonly (readonly Cell[])[]): string =>
  rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');

function cell(value: Cell): string {
  const text = typeof value === 'string' && /^[=+\-@\t\r]/.test(value) ? `'${value}` : String(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** `1 x 100; 2 x 25`, packs by mass with what they weigh. */
export const packsCell = (choice: PackChoice | null): string =>
  (choice?.picked ?? [])
    .map(({ times, pack }) => `${times} x ${pack.by === 'count' ? pack.count : pack.mass.stated}`)
    .join('; ');
