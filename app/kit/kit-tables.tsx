/**
 * A kit as everybody reads it: what to open and what to close, what to buy
 * and what it costs, and how every number came about.
 */
import type { ReactNode } from 'react';
import { allWorking, type KitRows, type RingRow, type SupplyRow } from '#app/words/kit-rows.ts';
import styles from './kit-tables.module.css';
import { WorkedTable } from './worked-table.tsx';

interface KitTablesProps {
  readonly id: string;
  readonly rows: KitRows;
  /** Heads of the two tables. */
  readonly rings: string;
  readonly buying: string;
  /** Sentences that hold for the whole kit: its length, its rule of spare. */
  readonly working: readonly string[];
  /** What to lay ready, to tick off; none for a class. */
  readonly tasks?: readonly { readonly id: string; readonly text: string }[];
  /** What stands below a ring's name. */
  readonly besideRing?: (row: RingRow) => ReactNode;
}

export const KitTables = ({ id, rows, rings, buying, working, tasks = [], besideRing }: KitTablesProps) => (
  <>
    {rows.rings.length === 0 ? null : (
      <WorkedTable<RingRow>
        id={`${id}-rings`}
        caption={rings}
        of="Ring"
        rows={rows.rings}
        keyOf={(row) => row.id}
        nameOf={(row) => row.name}
        headOf={(row) => (
          <>
            <span className={styles.swatch} style={{ background: row.ringKind.colourCode }} />
            {row.name}
            <span className={styles.facts}>{row.facts}</span>
            {besideRing?.(row)}
          </>
        )}
        columns={[
          { head: 'Open', of: (row) => row.opened, total: rows.totals.opened },
          { head: 'Close', of: (row) => row.closed, total: rows.totals.closed },
          { head: 'Spare', of: (row) => row.spare, total: rows.totals.spare },
          { head: 'Take', of: (row) => row.needed, total: rows.totals.needed, strong: true },
        ]}
        sum="All rings"
      />
    )}
    {tasks.length === 0 ? null : (
      <>
        <h3>Before you weave</h3>
        <ul className={styles.ticks}>
          {tasks.map((task) => (
            <li key={task.id}>
              <label className="tick">
                <input type="checkbox" data-tick={task.id} />
                {task.text}
              </label>
            </li>
          ))}
        </ul>
      </>
    )}
    <Buying id={`${id}-buying`} caption={buying} rows={rows} />
    <Hints rows={rows} />
    {rows.unpriced === '' ? null : <p className="hint">{rows.unpriced}</p>}
    {rows.tools.length === 0 ? null : (
      <WorkedTable<SupplyRow>
        id={`${id}-tools`}
        caption="Tools and safety items, kept"
        of="What"
        rows={rows.tools}
        keyOf={(row) => row.id}
        nameOf={(row) => row.name}
        headOf={NameOrLink}
        columns={[
          { head: 'Needed', of: (row) => row.needed },
          { head: 'Packs', of: (row) => row.packs },
          { head: 'Cost', of: (row) => row.price },
        ]}
      />
    )}
    <details className={styles.working}>
      <summary>How all these numbers came about</summary>
      <ul>
        {working.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
        {[...rows.rings, ...rows.supplies, ...rows.tools].map((row) => (
          <li key={row.id}>
            <strong>{row.name}:</strong> {allWorking(row).join(' · ')}
          </li>
        ))}
      </ul>
    </details>
  </>
);

/** Where one pack less would do with a little less spare. */
const Hints = ({ rows }: { readonly rows: KitRows }) => {
  const hinted = [...rows.rings, ...rows.supplies].filter((row) => row.hint !== '');
  return hinted.length === 0 ? null : (
    <ul className={styles.hints}>
      {hinted.map((row) => (
        <li key={row.id}>
          <strong>{row.name}:</strong> {row.hint}
        </li>
      ))}
    </ul>
  );
};

const NameOrLink = ({ name, link }: SupplyRow | RingRow) =>
  link === '' ? (
    name
  ) : (
    <a href={link} rel="nofollow noopener">
      {name}
    </a>
  );

const Buying = ({
  id,
  caption,
  rows,
}: {
  readonly id: string;
  readonly caption: string;
  readonly rows: KitRows;
}) => {
  const { totals } = rows;
  const lines: readonly (RingRow | SupplyRow)[] = [...rows.rings, ...rows.supplies];
  if (lines.length === 0) return null;
  return (
    <WorkedTable<RingRow | SupplyRow>
      id={id}
      caption={caption}
      of="What"
      rows={lines}
      keyOf={(row) => row.id}
      nameOf={(row) => row.name}
      headOf={NameOrLink}
      columns={[
        { head: 'Needed', of: (row) => row.needed },
        { head: 'Packs', of: (row) => row.packs },
        { head: 'Mass', of: (row) => row.mass, total: totals.mass },
        { head: 'Cost', of: (row) => row.price, total: totals.price, strong: true },
        { head: 'Used of it', of: (row) => row.used, total: totals.used },
      ]}
      sum="Together"
    />
  );
};
