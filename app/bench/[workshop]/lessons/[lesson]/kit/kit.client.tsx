'use client';
/** The kit of every finished size, of any wrist, and of a class. */
import Link from 'next/link';
import { type ReactNode, useEffect, useMemo, useState } from 'react';
import { GrowthPicture } from '#app/kit/growth-picture.tsx';
import { SizeTable } from '#app/kit/size-table.tsx';
import { kitFaultWords } from '#app/words/kit-words.ts';
import { figure } from '#app/words/ring-words.ts';
import { sizeRows } from '#app/words/size-rows.ts';
import { growthOf, growthSpan } from '#lib/kit/kit-growth.ts';
import { type KitFault, kitFor } from '#lib/kit/kit-list.ts';
import { sizeWords } from '#lib/lesson/asked-measure.ts';
import type { StatedSize } from '#lib/rings/ring-kind.ts';
import { useDraft } from '../draft.client.tsx';
import { thingInAddress } from '../land-on-thing.client.tsx';
import { SizeField } from '../making/fields/size-field.client.tsx';
import { ClassKit, type StockPlace } from './class-kit.client.tsx';
import styles from './kit.module.css';
import { OneKit } from './one-kit.tsx';

/** The choice of a measure that is no size of the lesson. */
const OWN = 'own';

export interface KitScreenProps {
  readonly base: string;
  readonly lessonId: string;
  /** Below it the kits of the draft as files. */
  readonly files: string;
  readonly stock: StockPlace;
  /** Batches that were recorded. */
  readonly children: ReactNode;
}

export function Kit({ base, lessonId, files, stock, children }: KitScreenProps) {
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
          <OneKit kit={kit.value} files={files} caption={at ? sizeWords(at) : (own?.stated ?? '')} />
        )}
      </section>
      <Sizes bodyMm={kit?.ok && kit.value.length ? kit.value.bodyMm : null} />
      {content.sizes.length > 0 && <ClassKit lessonId={lessonId} files={files} stock={stock} />}
      {children}
    </main>
  );
}

/** Every size, and how the kit grows with the measure. */
function Sizes({ bodyMm }: { bodyMm: number | null }) {
  const { content } = useDraft();
  const rows = useMemo(() => sizeRows(content, content.sizes), [content]);
  const [fromMm, toMm] = growthSpan(content.sizes, bodyMm);
  const steps = useMemo(
    () => (bodyMm === null ? [] : growthOf(content, fromMm, toMm)),
    [content, bodyMm, fromMm, toMm],
  );
  if (rows.length === 0 && steps.length === 0) return null;
  return (
    <section className="panel" aria-labelledby="sizes-title">
      <h2 id="sizes-title">Sizes beside each other</h2>
      {rows.length > 0 && <SizeTable id="sizes" rows={rows} />}
      <GrowthPicture steps={steps} currency={content.currency} bodyMm={bodyMm} />
    </section>
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
