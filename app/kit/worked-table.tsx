/** A table whose every number opens to its working, by pointer, by key and without script. */
import type { ReactNode } from 'react';
import type { Worked } from '#app/words/kit-rows.ts';
import { StackingTable } from './stacking-table.tsx';
import styles from './worked-table.module.css';

export interface Column<R> {
  readonly head: string;
  readonly of: (row: R) => Worked;
  /** The sum of the column, where it has one. */
  readonly total?: Worked;
  readonly strong?: boolean;
}

interface WorkedTableProps<R> {
  /** Unlike that of every other table of the page. */
  readonly id: string;
  readonly caption: string;
  /** Head of the first column. */
  readonly of: string;
  readonly rows: readonly R[];
  readonly keyOf: (row: R) => string;
  readonly nameOf: (row: R) => string;
  readonly headOf: (row: R) => ReactNode;
  readonly columns: readonly Column<R>[];
  /** Names the row of sums; without it there is none. */
  readonly sum?: string;
}

interface Shown {
  readonly id: string;
  readonly name: string;
  readonly worked: Worked;
}

export function WorkedTable<R>(props: WorkedTableProps<R>) {
  const { id, caption, of, rows, keyOf, nameOf, headOf, columns, sum } = props;
  const cells = rows.map((row, at) => ({
    row,
    shown: columns.map(
      (column, index): Shown => ({
        id: `${id}-${at}-${index}`,
        name: `${nameOf(row)}, ${column.head.toLowerCase()}`,
        worked: column.of(row),
      }),
    ),
  }));
  const sums = columns.map(({ head, total }, index): Shown | null =>
    total === undefined || sum === undefined
      ? null
      : { id: `${id}-sum-${index}`, name: `${sum}, ${head.toLowerCase()}`, worked: total },
  );
  const opening = (shown: Shown | null, index: number): ReactNode =>
    shown ? <Opening shown={shown} strong={columns[index]?.strong ?? false} /> : null;
  return (
    <>
      <StackingTable
        name={caption}
        caption={caption}
        of={of}
        heads={columns.map(({ head }) => ({ text: head, isNumber: true }))}
        className={styles.table}
        rows={cells.map(({ row, shown }) => ({
          key: keyOf(row),
          head: headOf(row),
          cells: shown.map(opening),
        }))}
        foot={sum === undefined ? null : { key: 'sum', head: sum, cells: sums.map(opening) }}
      />
      {[...cells.flatMap((line) => line.shown), ...sums].map((cell) =>
        cell && cell.worked.why.length > 0 ? <Working key={cell.id} shown={cell} /> : null,
      )}
    </>
  );
}

const Opening = ({ shown, strong }: { readonly shown: Shown; readonly strong: boolean }) => {
  const text = strong ? <strong>{shown.worked.text}</strong> : shown.worked.text;
  return shown.worked.why.length === 0 ? (
    text
  ) : (
    <button
      type="button"
      className={styles.opening}
      popoverTarget={shown.id}
      aria-label={`${shown.worked.text}, how it came about`}
    >
      {text}
    </button>
  );
};

const Working = ({ shown }: { readonly shown: Shown }) => (
  <div id={shown.id} popover="auto" className={styles.working}>
    <p className={styles.what}>
      {shown.name}: <strong>{shown.worked.text}</strong>
    </p>
    <ul>
      {shown.worked.why.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
    <button type="button" className="quiet" popoverTarget={shown.id} popoverTargetAction="hide">
      Close
    </button>
  </div>
);
