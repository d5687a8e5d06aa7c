'use client';
/** What of a batch the workshop has at hand, what it lacks, and what that costs. */
import { useState } from 'react';
import { sendJson } from '#app/forms/send-json.ts';
import { WorkedTable } from '#app/kit/worked-table.tsx';
import { stockRows } from '#app/words/stock-rows.ts';
import type { KitBatch } from '#lib/kit/kit-batch.ts';
import { type StockItem, type StockLine, stockLines } from '#lib/kit/stock.ts';
import { useDraft } from '../draft.client.tsx';
import fieldStyles from '../making/fields/fields.module.css';
import { NumberField } from '../making/fields/number-field.client.tsx';

export interface StockProps {
  readonly batch: KitBatch;
  readonly lessonId: string;
  /** Address that keeps a count. */
  readonly keepAt: string;
  readonly counted: readonly StockItem[];
}

/** 2,000,000 units in thousandths. */
const MOST = 2_000_000_000;

export function Stock({ batch, lessonId, keepAt, counted }: StockProps) {
  const { content, mayEdit } = useDraft();
  const [items, setItems] = useState<ReadonlyMap<string, StockItem>>(
    new Map(counted.map((item) => [item.key, item])),
  );
  const [kept, setKept] = useState<'yes' | 'no' | null>(null);
  const lines = stockLines(batch, items);
  const { rows, together } = stockRows(lines, content.currency);
  const keep = async ({ key, name, unit, offer }: StockLine, onHandMilli: number) => {
    const item = { key, name, unit, onHandMilli, offer };
    setItems((before) => new Map(before).set(key, item));
    const sent = await sendJson(keepAt, 'PUT', item);
    setKept(sent.ok ? 'yes' : 'no');
  };
  return (
    <section aria-labelledby="stock-title">
      <h3 id="stock-title">What you have, and what you lack</h3>
      <p className="soft">
        Counts belong to the workshop: the same ring in another lesson is counted once. Rings are the same by
        size, metal and colour, everything else by name and unit.
      </p>
      {mayEdit && (
        <div className={fieldStyles.grid}>
          {lines.map((line) => (
            <NumberField
              key={line.key}
              label={`${line.name || 'without a name'}: at hand`}
              unit={line.unit === 'ring' ? 'rings' : line.unit}
              place={`${lessonId}/stock/${line.key}`}
              value={line.onHandMilli}
              places={3}
              least={0}
              most={MOST}
              onTake={(milli) => {
                if (milli !== null) void keep(line, milli);
              }}
            />
          ))}
        </div>
      )}
      <p role="status" className={kept === 'no' ? 'fault' : 'hint'}>
        {kept === 'no'
          ? 'The last count could not be kept: the server did not take it. It still stands here; type it again to send it again.'
          : kept === 'yes'
            ? 'Counts are kept.'
            : ''}
      </p>
      <WorkedTable
        id="stock"
        caption="Lacking"
        of="What"
        rows={rows}
        keyOf={(row) => row.key}
        nameOf={(row) => row.name}
        headOf={(row) => row.name}
        columns={[
          { head: 'Needed', of: (row) => row.needed },
          { head: 'At hand', of: (row) => row.onHand },
          { head: 'Lacking', of: (row) => row.lacking, strong: true },
          { head: 'Packs to buy', of: (row) => row.packs },
          { head: 'Cost', of: (row) => row.price, total: together },
        ]}
        sum="Together"
      />
    </section>
  );
}
