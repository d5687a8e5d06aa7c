'use client';
/** Kits for a class or a batch: how many of each size, and what lies on the tray for all. */
import { useState } from 'react';
import { KitTables } from '#app/kit/kit-tables.tsx';
import { batchRows } from '#app/words/batch-rows.ts';
import { figure } from '#app/words/ring-words.ts';
import { BATCH_RULES, type BatchRule, batchOf } from '#lib/kit/kit-batch.ts';
import { kitFor } from '#lib/kit/kit-list.ts';
import { useDraft } from '../draft.client.tsx';
import { ChoiceField } from '../making/fields/choice-field.client.tsx';
import fieldStyles from '../making/fields/fields.module.css';
import { NumberField } from '../making/fields/number-field.client.tsx';
import styles from './kit.module.css';
import { Stock, type StockProps } from './stock.client.tsx';

/** Most kits of one size in a batch. */
const MOST = 10_000;

const RULES: Readonly<Record<BatchRule, string>> = {
  'per kit': 'for every kit',
  pooled: 'once, for all',
};

const TOLD: Readonly<Record<BatchRule, string>> = {
  'per kit':
    'Every kit has its own spare, rounded by its rule, and then kits are added. Packs are reckoned once, on the sum.',
  pooled:
    'What the pieces take is added first, and the spare reckoned once on the sum: one tray of spare for all. Packs are reckoned on the sum too.',
};

/** What the workshop counted, and where counts are kept. */
export type StockPlace = Pick<StockProps, 'keepAt' | 'counted'>;

export interface ClassKitProps {
  readonly lessonId: string;
  readonly files: string;
  readonly stock: StockPlace;
}

export function ClassKit({ lessonId, files, stock }: ClassKitProps) {
  const { content } = useDraft();
  const [times, setTimes] = useState<Readonly<Record<string, number>>>({});
  const [rule, setRule] = useState<BatchRule>('per kit');
  const kits = content.sizes.map((size) => ({ size, kit: kitFor(content, size.bodyMm) }));
  // Only rings have spare.
  const hasSpare = content.ringKinds.length > 0;
  const told = hasSpare ? TOLD[rule] : 'Packs are reckoned once, on the sum of all kits.';
  const failing = kits.filter(({ size, kit }) => !kit.ok && (times[size.id] ?? 0) > 0);
  const batch = batchOf(
    kits.flatMap(({ size, kit }) => (kit.ok ? [{ kit: kit.value, times: times[size.id] ?? 0 }] : [])),
    rule,
  );
  const query = new URLSearchParams([
    ['spare', rule],
    ...content.sizes.flatMap(({ id }) => (times[id] ? [['kits', `${times[id]} ${id}`]] : [])),
  ]);
  return (
    <section className={batch.kits > 0 ? 'panel' : `panel ${styles.noPrint}`} aria-labelledby="class-title">
      <h2 id="class-title">Kits for a class or a batch</h2>
      <div className={fieldStyles.grid}>
        {content.sizes.map((size, index) => (
          <NumberField
            key={size.id}
            label={`${size.name || `size ${index + 1}`}, ${figure(size.bodyMm, 1)} mm`}
            place={`${lessonId}/class/${size.id}`}
            value={times[size.id] ?? 0}
            places={0}
            least={0}
            most={MOST}
            onTake={(n) => setTimes({ ...times, [size.id]: n ?? 0 })}
          />
        ))}
        {hasSpare && (
          <ChoiceField
            label="Spare is reckoned"
            value={rule}
            choices={BATCH_RULES.map((one) => [one, RULES[one]] as const)}
            onTake={setRule}
          />
        )}
      </div>
      <p className="soft">{told}</p>
      {failing.length > 0 && (
        <p className="fault">
          No kit can be made for {failing.map(({ size }) => size.name || `${size.bodyMm} mm`).join(', ')}.
          Look at it above. It is not in the sum.
        </p>
      )}
      <p role="status" className="unseen">
        {batch.kits > 0
          ? `${batch.kits} ${batch.kits === 1 ? 'kit' : 'kits'}${batch.issued > 0 ? `, ${batch.issued} rings in all` : ''}.`
          : ''}
      </p>
      {batch.kits > 0 && (
        <>
          <KitTables
            id="class"
            rows={batchRows(batch, content.currency)}
            rings={`Rings for ${batch.kits} ${batch.kits === 1 ? 'kit' : 'kits'}`}
            buying="Packs, mass and cost of them all"
            working={[told]}
          />
          <Stock batch={batch} lessonId={lessonId} {...stock} />
          <p className={styles.files}>
            <a href={`${files}/picking-sheet.pdf?${query}`}>Picking sheet (PDF)</a>
            <a href={`${files}/picking-sheet.csv?${query}`}>Picking sheet (CSV)</a>
            <a href={`${files}/labels.pdf?${query}`}>Trial labels, marked as draft (PDF)</a>
          </p>
          <p className="hint">
            These are kits of the draft. Kits to sell or hand out are recorded{' '}
            <a href="#batches">as a batch</a>, below: its labels name the published revision.
          </p>
        </>
      )}
    </section>
  );
}
