/** What is put into packed kits and taken out of them, as comma-separated values: below 0 is taken out. */
import { csvText } from './csv.ts';
import type { ExchangeLine, PackedPart } from './kit-exchange.ts';

export const exchangeCsv = (parts: readonly PackedPart[], lines: readonly ExchangeLine[]): string =>
  csvText([
    [
      'what',
      ...parts.map(({ name, times }) => `in each ${name} (${times} kits)`),
      'spare tray',
      'in all',
      'unit',
    ],
    ...lines.map(({ thing, each, tray, inAll }) => {
      // Numbers, so that a spreadsheet adds them up.
      const amount = (quantity: number): number => (thing.is === 'ring' ? quantity : quantity / 1000);
      return [
        thing.is === 'ring' ? thing.ringKind.name : thing.material.name,
        ...each.map(amount),
        amount(tray),
        amount(inAll),
        thing.is === 'ring' ? 'ring' : thing.material.unit,
      ];
    }),
  ]);
