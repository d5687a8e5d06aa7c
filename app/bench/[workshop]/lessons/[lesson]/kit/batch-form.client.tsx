'use client';
/** Records kits that were made up together. */
import { useRouter } from 'next/navigation';
import { type FormEvent, useId, useRef, useState } from 'react';
import { sendJson } from '#app/forms/send-json.ts';
import { batchFaultWords } from '#app/words/batch-faults.ts';
import { measureFaultWords } from '#app/words/measure-fault.ts';
import type { BatchRule } from '#lib/kit/kit-batch.ts';
import type { KitRules } from '#lib/kit/making.ts';
import type { BatchKits } from '#lib/kit/recorded-batch.ts';
import { bodyMmOf, formatMeasure } from '#lib/lesson/asked-measure.ts';
import type { Content } from '#lib/lesson/content.ts';
import { failed, ok, type Result } from '#lib/result.ts';
import styles from './kit.module.css';

interface BatchFormProps {
  readonly api: string;
  /** Newest first; never empty. */
  readonly revisions: readonly {
    readonly number: number;
    readonly day: string;
    readonly sizes: Content['sizes'];
    readonly kitRules: KitRules;
    /** Only rings have spare. */
    readonly hasSpare: boolean;
  }[];
}

const MOST = 10_000;

export function BatchForm({ api, revisions }: BatchFormProps) {
  const router = useRouter();
  const group = useId();
  const form = useRef<HTMLFormElement>(null);
  const [number, setNumber] = useState(revisions[0]?.number ?? 1);
  const [fault, setFault] = useState<string | null>(null);
  const [told, setTold] = useState('');
  const [busy, setBusy] = useState(false);
  // One id for one wish: kept while no answer came, so that asking again records once.
  const wish = useRef<string | null>(null);
  const revision = revisions.find((one) => one.number === number) ?? revisions[0];
  if (!revision) return null;

  async function record(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    if (busy || !revision) return;
    const data = new FormData(event.currentTarget);
    const kits = kitsOf(data, revision);
    setTold('');
    if (!kits.ok) return setFault(kits.fault);
    wish.current ??= crypto.randomUUID();
    setBusy(true);
    const sent = await sendJson(api, 'POST', {
      id: wish.current,
      revision: revision.number,
      madeOn: String(data.get('madeOn') ?? ''),
      rule: (data.get('rule') === 'pooled' ? 'pooled' : 'per kit') satisfies BatchRule,
      kits: kits.value,
      note: String(data.get('note') ?? '').trim(),
    });
    setBusy(false);
    if (!sent.ok) {
      if (sent.code !== 'no-answer') wish.current = null;
      return setFault(batchFaultWords(sent.code, sent.facts));
    }
    wish.current = null;
    setFault(null);
    setTold('The batch is recorded. Its labels and inserts are in the list above.');
    form.current?.reset();
    router.refresh();
  }

  return (
    <details className={styles.record}>
      <summary>Record a batch</summary>
      <form ref={form} onSubmit={(event) => void record(event)} noValidate>
        <div className={styles.batchFields}>
          <div className="field">
            <label htmlFor={`${group}-revision`}>Packed by</label>
            <select
              id={`${group}-revision`}
              value={number}
              onChange={(event) => setNumber(Number(event.target.value))}
            >
              {revisions.map((one) => (
                <option key={one.number} value={one.number}>
                  revision {one.number}, {one.day}
                </option>
              ))}
            </select>
          </div>
          <div className="field">
            <label htmlFor={`${group}-day`}>Made up on</label>
            <input
              id={`${group}-day`}
              name="madeOn"
              type="date"
              required
              defaultValue={new Date().toISOString().slice(0, 10)}
            />
          </div>
          {revision.hasSpare && (
            <div className="field">
              <label htmlFor={`${group}-rule`}>Spare rings</label>
              <select id={`${group}-rule`} name="rule" defaultValue="per kit">
                <option value="per kit">in every kit</option>
                <option value="pooled">on one tray for all</option>
              </select>
            </div>
          )}
        </div>
        <fieldset className={styles.counts}>
          <legend>How many kits of each size</legend>
          <div className={styles.batchFields}>
            {revision.sizes.map((size, index) => (
              <div key={size.id} className="field">
                <label htmlFor={`${group}-${size.id}`}>
                  {nameOf(size.name, index)}, {formatMeasure(size.bodyMm, 'mm')}
                </label>
                <input
                  id={`${group}-${size.id}`}
                  name={`size ${size.id}`}
                  type="number"
                  min={0}
                  max={MOST}
                  step={1}
                  defaultValue={0}
                />
              </div>
            ))}
          </div>
          <div className={styles.batchFields}>
            <div className="field">
              <label htmlFor={`${group}-measure`}>Another measure</label>
              <input id={`${group}-measure`} name="measure" type="text" maxLength={40} autoComplete="off" />
            </div>
            <div className="field">
              <label htmlFor={`${group}-of`}>which is</label>
              <select id={`${group}-of`} name="of" defaultValue="wrist">
                <option value="wrist">on the body</option>
                <option value="length">the finished length</option>
              </select>
            </div>
            <div className="field">
              <label htmlFor={`${group}-other`}>kits of it</label>
              <input
                id={`${group}-other`}
                name="other"
                type="number"
                min={0}
                max={MOST}
                step={1}
                defaultValue={0}
              />
            </div>
          </div>
        </fieldset>
        <div className="field">
          <label htmlFor={`${group}-note`}>Note, for yourself</label>
          <input id={`${group}-note`} name="note" type="text" maxLength={300} autoComplete="off" />
        </div>
        {fault === null ? null : (
          <p className="fault" role="alert">
            {fault}
          </p>
        )}
        <button type="submit" aria-disabled={busy}>
          {busy ? 'Recording…' : 'Record this batch'}
        </button>
      </form>
      <p role="status" className="hint">
        {told}
      </p>
    </details>
  );
}

const nameOf = (name: string, index: number): string => name.trim() || `size ${index + 1}`;

/** What the form says was made up, or in words why that cannot be. */
function kitsOf(
  data: FormData,
  { sizes, kitRules }: BatchFormProps['revisions'][number],
): Result<readonly BatchKits[], string> {
  const count = (name: string): number => Math.trunc(Number(data.get(name) ?? 0)) || 0;
  const kits: BatchKits[] = sizes.flatMap((size, index) => {
    const times = count(`size ${size.id}`);
    return times > 0 ? [{ name: nameOf(size.name, index), bodyMm: size.bodyMm, times }] : [];
  });
  const others = count('other');
  if (others > 0) {
    const text = String(data.get('measure') ?? '').trim();
    const of = data.get('of') === 'length' ? 'length' : 'wrist';
    const body = bodyMmOf({ text, unit: 'mm', of }, kitRules);
    if (!body.ok) return failed(measureFaultWords(body.fault));
    const measure = /^[\d.,\s]+$/.test(text) ? `${text} mm` : text;
    kits.push({ name: of === 'length' ? `${measure} long` : measure, bodyMm: body.value, times: others });
  }
  if (kits.length === 0) return failed(batchFaultWords('no-kits'));
  return kits.some(({ times }) => times > MOST) ? failed(batchFaultWords('too-many-kits')) : ok(kits);
}
