/**
 * A table that is read without scrolling sideways: where it has no room, each
 * row stands as a card, every value below the head of its column. It stays a
 * table for who listens to it, whatever it looks like: hence the roles.
 */
import type { ReactNode } from 'react';
import styles from './stacking-table.module.css';
import { TableFrame } from './table-frame.tsx';

export interface TableHead {
  readonly text: string;
  /** What stands below it, in small letters. */
  readonly about?: string;
  readonly isNumber: boolean;
}

export interface TableRow {
  readonly key: string;
  readonly head: ReactNode;
  /** One for each head after the first; null for an empty one. */
  readonly cells: readonly ReactNode[];
}

interface StackingTableProps {
  readonly name: string;
  /** Without it the name is said to who listens, and not shown. */
  readonly caption?: string;
  /** Head of the first column. */
  readonly of: string;
  readonly heads: readonly TableHead[];
  readonly rows: readonly TableRow[];
  /** A row of sums. */
  readonly foot?: TableRow | null;
  /** Whether it needs the room of more columns than it has. */
  readonly isWordy?: boolean;
  readonly className?: string | undefined;
}

/** What each part is, however it is set. */
const AS = {
  table: { role: 'table' },
  group: { role: 'rowgroup' },
  row: { role: 'row' },
  head: { role: 'columnheader' },
  rowHead: { role: 'rowheader' },
  cell: { role: 'cell' },
} as const;

/** Columns that find room side by side on a telephone. */
const MOST_NARROW = 4;
/** Heads after the first whose values stand unbroken beside a column of text. */
const MOST_WIDE = 5;

export function StackingTable(props: StackingTableProps) {
  const { name, caption, of, heads, rows, foot = null, isWordy = false, className = '' } = props;
  const stacks = isWordy || heads.length + 1 > MOST_NARROW;
  const row = ({ key, head, cells }: TableRow) => (
    <tr key={key} {...AS.row}>
      <th scope="row" {...AS.rowHead}>
        {head}
      </th>
      {cells.map((cell, index) => (
        <td
          key={heads[index]?.text}
          {...AS.cell}
          className={heads[index]?.isNumber ? 'number' : undefined}
          data-head={heads[index]?.text}
        >
          {cell}
        </td>
      ))}
    </tr>
  );
  return (
    <div className={stacks ? styles.room : undefined}>
      <TableFrame name={name}>
        <table
          {...AS.table}
          className={
            [stacks && styles.stacks, heads.length > MOST_WIDE && styles.many, className]
              .filter(Boolean)
              .join(' ') || undefined
          }
        >
          {caption === undefined ? null : <caption>{caption}</caption>}
          <thead {...AS.group}>
            <tr {...AS.row}>
              <th scope="col" {...AS.head}>
                {of}
              </th>
              {heads.map(({ text, about, isNumber }) => (
                <th key={text} scope="col" {...AS.head} className={isNumber ? 'number' : undefined}>
                  {text}
                  {about === undefined ? null : (
                    <>
                      <br />
                      <small>{about}</small>
                    </>
                  )}
                </th>
              ))}
            </tr>
          </thead>
          <tbody {...AS.group}>{rows.map(row)}</tbody>
          {foot === null ? null : <tfoot {...AS.group}>{row(foot)}</tfoot>}
        </table>
      </TableFrame>
    </div>
  );
}
