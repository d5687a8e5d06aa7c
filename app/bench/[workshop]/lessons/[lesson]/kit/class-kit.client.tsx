'use client';
/** Kits for a class or a batch: how many of each size, and what lies on the tray for all. */
import { useState } from 'react';
import { packsWords, priceWords, quantityWords, unpricedWords } from '#app/words/kit-words.ts';
import { figure } from '#app/words/ring-words.ts';
import { batchOf, type KitBatch } from '#lib/kit/kit-batch.ts';
import { kitFor } from '#lib/kit/kit-list.ts';
import { formatMoney } from '#lib/kit/money.ts';
import { useDraft } from '../draft.client.tsx';
import fieldStyles from '../making/fields/fields.module.css';
import { NumberField } from '../making/fields/number-field.client.tsx';
import styles from './kit.module.css';

/** Most kits of one size in a batch. */
const MOST = 10_000;

export function ClassKit({ lessonId }: { lessonId: string }) {
  const { content } = useDraft();
  const [times, setTimes] = useState<Readonly<Record<string, number>>>({});
  const kits = content.sizes.map((size) => ({ size, kit: kitFor(content, size.bodyMm) }));
  const failing = kits.filter(({ size, kit }) => !kit.ok && (times[size.id] ?? 0) > 0);
  const batch = batchOf(
    kits.flatMap(({ size, kit }) => (kit.ok ? [{ kit: kit.value, times: times[size.id] ?? 0 }] : [])),
  );
  return (
    <section className={batch.kits > 0 ? 'panel' : `panel ${styles.noPrint}`} aria-labelledby="class-title">
      <h2 id="class-title">Kits for a class or a batch</h2>
      <p className="soft">
        Every kit is rounded on its own, spare included, and then kits are added. Packs are reckoned once, on
        the sum.
      </p>
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
      </div>
      {failing.length > 0 && (
        <p className="fault">
          No kit can be made for {failing.map(({ size }) => size.name || `${size.bodyMm} mm`).join(', ')}.
          Look at it above. It is not in the sum.
        </p>
      )}
      <div role="status">{batch.kits > 0 && <BatchTable batch={batch} currency={content.currency} />}</div>
    </section>
  );
}

function BatchTable({ batch, currency }: { batch: KitBatch; currency: string }) {
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a frame that scrolls must be reached by keys */}
      <section className="table-frame" tabIndex={0} aria-label="Sum of all kits">
        <table>
          <caption>
            {batch.kits} {batch.kits === 1 ? 'kit' : 'kits'}
          </caption>
          <thead>
            <tr>
              <th scope="col">What</th>
              <th scope="col" className="number">
                Open
              </th>
              <th scope="col" className="number">
                Close
              </th>
              <th scope="col" className="number">
                Spare
              </th>
              <th scope="col" className="number">
                In all
              </th>
              <th scope="col" className="number">
                Packs
              </th>
              <th scope="col" className="number">
                Price
              </th>
            </tr>
          </thead>
          <tbody>
            {batch.rings.map((line) => (
              <tr key={line.ringKind.id}>
                <th scope="row">{line.ringKind.name || 'ring kind without a name'}</th>
                <td className="number">{line.opened}</td>
                <td className="number">{line.closed}</td>
                <td className="number">{line.spare}</td>
                <td className="number">
                  <strong>{line.issued}</strong>
                </td>
                <td className="number">{line.packs ? packsWords(line.packs) : '–'}</td>
                <td className="number">{priceWords(line.price, currency)}</td>
              </tr>
            ))}
            {batch.materials.map((line) => (
              <tr key={line.material.id}>
                <th scope="row">{line.material.name || 'without a name'}</th>
                <td colSpan={3} />
                <td className="number">{quantityWords(line.needMilli, line.material.unit)}</td>
                <td className="number">{line.packs ? packsWords(line.packs, 1000) : '–'}</td>
                <td className="number">{priceWords(line.price, currency)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p className={styles.sum}>
        Bought in whole packs: <strong>{formatMoney(batch.price.packsMinor, currency)}</strong>
      </p>
      {unpricedWords(batch.price) && <p className="hint">{unpricedWords(batch.price)}</p>}
    </>
  );
}
