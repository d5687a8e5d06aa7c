/** The sizes of a lesson beside each other. */
import type { SizeRow } from '#app/words/size-rows.ts';
import { WorkedTable } from './worked-table.tsx';

interface SizeTableProps {
  readonly id: string;
  readonly rows: readonly SizeRow[];
}

export const SizeTable = ({ id, rows }: SizeTableProps) => (
  <WorkedTable<SizeRow>
    id={id}
    caption="Every size"
    of="Size"
    rows={rows}
    keyOf={(row) => row.id}
    nameOf={(row) => row.name}
    headOf={(row) => row.name}
    columns={[
      { head: 'Measure', of: (row) => row.measure },
      { head: 'Repeats', of: (row) => row.repeats },
      { head: 'Finished', of: (row) => row.finished },
      { head: 'Off by', of: (row) => row.off },
      ...(rows.some((row) => row.rings.text !== '0')
        ? [{ head: 'Rings', of: (row: SizeRow) => row.rings }]
        : []),
      ...(rows.some((row) => row.mass.text !== '–')
        ? [{ head: 'Mass', of: (row: SizeRow) => row.mass }]
        : []),
      { head: 'Cost', of: (row) => row.price },
    ]}
  />
);
