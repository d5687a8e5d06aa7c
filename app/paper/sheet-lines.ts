/** What is printed on a sheet, as lines of text: a row of a table is one line. Boxes and codes say nothing. */
import type { Sheet } from './make-pdf.ts';

export const sheetLines = ({ content }: Sheet): readonly string[] =>
  content.flatMap(linesOf).filter((line) => line.trim() !== '');

/** A node of the sheet may be a text, a list of nodes, or an object with one of these in it. */
function linesOf(node: unknown): readonly string[] {
  if (typeof node === 'string' || typeof node === 'number') return [String(node)];
  if (Array.isArray(node)) return node.flatMap(linesOf);
  if (!isObject(node)) return [];
  const { table, stack, ul, columns, text } = node;
  if (isObject(table) && Array.isArray(table['body'])) return table['body'].map(rowLine);
  return text === undefined ? linesOf(stack ?? ul ?? columns) : [linesOf(text).join('')];
}

const rowLine = (cells: unknown): string =>
  (Array.isArray(cells) ? cells : [])
    .map((cell) => linesOf(cell).join(', '))
    .filter((text) => text.trim() !== '')
    .join(' · ');

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
