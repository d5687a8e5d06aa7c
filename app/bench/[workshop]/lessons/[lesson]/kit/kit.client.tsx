'use client';
/** The kit of every finished size, of any wrist, and of a class. */
import Link from 'next/link';
import { useEffect, useState } from 'react';
import { kitFaultWords } from '#app/words/kit-words.ts';
import { figure } from '#app/words/ring-words.ts';
import { type KitFault, kitFor } from '#lib/kit/kit-list.ts';
import { sizeWords } from '#lib/lesson/asked-measure.ts';
import type { StatedSize } from '#lib/rings/ring-kind.ts';
import { useDraft } from '../draft.client.tsx';
import { thingInAddress } from '../land-on-thing.client.tsx';
import { SizeField } from '../making/fields/size-field.client.tsx';
import { ClassKit } from './class-kit.client.tsx';
import styles from './kit.module.css';
import { KitTable } from './kit-table.client.tsx';

/** The choice of a measure that is no size of the lesson. */
const OWN = 'own';

export function Kit({ base, lessonId }: { base: string; lessonId: string }) {
  const { content } = useDraft();
  const [chosen, setChosen] = useState<string | null>(null);
  const [own, setOwn] = useState<StatedSize | null>(null);
  // Other screens lead here by a size's id.
  useEffect(() => setChosen((now) => now ?? (thingInAddress() || null)), []);
  const first = content.sizes[0];
  const at = content.sizes.find((size) => size.id === chosen) ?? (chosen === OWN ? undefined : first);
  const bodyMm = at?.bodyMm ?? own?.mm ?? null;
  const kit = bodyMm === null ? null : kitFor(content, bodyMm);
  return (
    <main className="page">
      <section className="panel" aria-labelledby="kit-title">
        <h2 id="kit-title">Kit for one piece</h2>
        <fieldset className={styles.chooser}>
          <legend>Which size?</legend>
          {content.sizes.map((size, index) => (
            <label key={size.id} className={styles.size}>
              <input
                id={size.id}
                type="radio"
                name="size"
                checked={at?.id === size.id}
                onChange={() => setChosen(size.id)}
              />
              <span>
                <strong>{size.name || `size ${index + 1}`}</strong> {figure(size.bodyMm, 1)} mm
              </span>
            </label>
          ))}
          <label className={styles.size}>
            <input type="radio" name="size" checked={at === undefined} onChange={() => setChosen(OWN)} />
            <span>Another measure</span>
          </label>
        </fieldset>
        {at === undefined && (
          <SizeField
            label="Measure of wrist, ankle or neck"
            of="length"
            place={`${lessonId}/try-measure`}
            value={own}
            onTake={setOwn}
          />
        )}
        {content.sizes.length === 0 && (
          <p className="hint">
            The lesson has no sizes yet.{' '}
            <Link href={`${base}/making#sizes`}>Add the sizes that you offer</Link>.
          </p>
        )}
        {kit && !kit.ok && <FaultNotice fault={kit.fault} base={base} />}
        {kit?.ok && (
          <KitTable
            kit={kit.value}
            fileName={`kit-${figure(kit.value.bodyMm, 1)}-mm.csv`}
            caption={at ? sizeWords(at) : (own?.stated ?? '')}
          />
        )}
      </section>
      {content.sizes.length > 0 && <ClassKit lessonId={lessonId} />}
    </main>
  );
}

function FaultNotice({ fault, base }: { fault: KitFault; base: string }) {
  const { text, mend } = kitFaultWords(fault);
  return (
    <div className="notice caution" role="status">
      <p>{text}</p>
      {mend && (
        <p>
          <Link href={`${base}/${mend.screen}#${mend.place}`}>{mend.label}</Link>
        </p>
      )}
    </div>
  );
}
