'use client';

import { useEffect, useMemo, useState } from 'react';
import { GrowthPicture } from '#app/kit/growth-picture.tsx';
import { KitHead } from '#app/kit/kit-head.tsx';
import { KitTables } from '#app/kit/kit-tables.tsx';
import { SizeTable } from '#app/kit/size-table.tsx';
import { kitRows, preparationOf } from '#app/words/kit-rows.ts';
import { kitFaultWords } from '#app/words/kit-words.ts';
import { kitWorking } from '#app/words/kit-working.ts';
import { measureFaultWords } from '#app/words/measure-fault.ts';
import { sizeRows } from '#app/words/size-rows.ts';
import { differenceOf } from '#lib/kit/kit-difference.ts';
import { growthOf, growthSpan } from '#lib/kit/kit-growth.ts';
import { type KitList, kitFor, kitGoesByMeasure } from '#lib/kit/kit-list.ts';
import type { Making } from '#lib/kit/making.ts';
import {
  type AskedMeasure,
  bodyMmOf,
  formatMeasure,
  MEASURE_UNITS,
  type MeasureUnit,
  sizeWords,
} from '#lib/lesson/asked-measure.ts';
import type { Content } from '#lib/lesson/content.ts';
import styles from './kit.module.css';
import { KitDifferenceBox } from './kit-difference.tsx';
import { WhatItIs } from './what-it-is.tsx';

/** A word of the trade, and the id of the box that explains it. */
export interface Explained {
  readonly term: string;
  readonly box: string;
}

interface KitChooserProps {
  readonly page: string;
  readonly making: Making;
  readonly sizes: Content['sizes'];
  readonly asked: AskedMeasure | null;
  /** Where the files of a kit are; null where none are offered. */
  readonly files: string | null;
  /** Where the lesson on paper is; null where none is offered. */
  readonly sheet: string | null;
  /** The making of the revision that the kit holder named. */
  readonly held: { readonly number: number; readonly making: Making } | null;
  /** Numbers of earlier revisions, for kit holders. */
  readonly earlier: readonly number[];
  /** What is explained beside ring kinds, by their id. */
  readonly explained: Readonly<Record<string, Explained>>;
}

const UNIT_NAMES: Readonly<Record<MeasureUnit, string>> = { mm: 'millimetres', in: 'inches' };

const queryOf = ({ text, unit, of }: AskedMeasure): Record<string, string> => ({ measure: text, unit, of });

const addressOf = (page: string, asked: AskedMeasure, held: number | null): string =>
  `${page}?${new URLSearchParams({
    ...queryOf(asked),
    ...(held === null ? {} : { held: String(held) }),
  })}#kit`;

/** Where no measure changes the kit, any will do. */
const SAME_FOR_ALL = { ok: true, value: 100 } as const;

/** The pupil's own kit. Without script the form asks the server; with it the kit follows the typing. */
export function KitChooser(props: KitChooserProps) {
  const { page, making, sizes, asked: first, files, sheet, held, earlier, explained } = props;
  const [asked, setAsked] = useState<AskedMeasure>(first ?? { text: '', unit: 'mm', of: 'wrist' });
  const choose = (next: AskedMeasure) => {
    setAsked(next);
    window.history.replaceState(window.history.state, '', addressOf(page, next, held?.number ?? null));
  };
  useEffect(() => {
    if (first) setAsked(first);
  }, [first]);

  const goesByMeasure = kitGoesByMeasure(making);
  const body = goesByMeasure
    ? asked.text.trim() === '' && sizes.length === 0
      ? null
      : bodyMmOf(asked, making.kitRules)
    : SAME_FOR_ALL;
  const kit = body?.ok ? kitFor(making, body.value) : null;
  const fault =
    body && !body.ok ? measureFaultWords(body.fault) : kit && !kit.ok ? kitFaultWords(kit.fault).text : null;
  const heldKit = held && body?.ok ? kitFor(held.making, body.value) : null;
  const difference = kit?.ok && heldKit?.ok ? differenceOf(heldKit.value, kit.value) : null;

  return (
    <>
      {goesByMeasure || earlier.length > 0 ? (
        <MeasureForm
          page={page}
          goesByMeasure={goesByMeasure}
          asked={asked}
          faulty={fault !== null}
          held={held?.number ?? null}
          earlier={earlier}
          onAsk={choose}
        />
      ) : null}
      {goesByMeasure && sizes.length > 0 ? (
        <p className={styles.sizes}>
          <span>Sizes of this lesson:</span>
          {sizes.map((size) => (
            <a
              key={size.id}
              href={addressOf(
                page,
                { text: String(size.bodyMm), unit: 'mm', of: 'wrist' },
                held?.number ?? null,
              )}
              aria-current={body?.ok && body.value === size.bodyMm ? 'true' : undefined}
              onClick={(event) => {
                event.preventDefault();
                choose({ text: String(size.bodyMm), unit: 'mm', of: 'wrist' });
              }}
            >
              {sizeWords(size)}
            </a>
          ))}
        </p>
      ) : null}
      <div aria-live="polite">
        {fault === null ? null : (
          <p id="kit-fault" className="fault">
            {fault}
          </p>
        )}
        {goesByMeasure && body?.ok && kit?.ok ? (
          <p className="unseen">Kit for {formatMeasure(body.value, asked.unit)} on the body.</p>
        ) : null}
      </div>
      {held && difference ? <KitDifferenceBox held={held.number} difference={difference} /> : null}
      {kit?.ok ? (
        <>
          <KitHead kit={kit.value} className={styles.told} />
          <KitTables
            id="kit"
            rows={{ ...kitRows(kit.value), tools: [] }}
            rings="Rings to prepare"
            buying="Packs, mass and cost"
            working={kitWorking(kit.value)}
            tasks={preparationOf(kit.value)}
            besideRing={({ id }) => {
              const said = explained[id];
              return said ? <WhatItIs {...said} /> : null;
            }}
          />
          {files === null ? null : <KitFiles files={files} sheet={sheet} asked={asked} />}
        </>
      ) : null}
      <AllSizes making={making} sizes={sizes} kit={kit?.ok ? kit.value : null} />
    </>
  );
}

interface KitFilesProps {
  readonly files: string;
  readonly sheet: string | null;
  readonly asked: AskedMeasure;
}

/** The shown kit as files; the same address always gives the same file. */
const KitFiles = ({ files, sheet, asked }: KitFilesProps) => {
  const query = new URLSearchParams(queryOf(asked));
  return (
    <p className={styles.files}>
      <span>Take this kit along:</span>
      {sheet === null ? null : <a href={`${sheet}?${query}`}>steps and kit on paper (PDF)</a>}
      <a href={`${files}/kit.pdf?${query}`}>kit alone (PDF)</a>
      <a href={`${files}/kit.csv?${query}`}>spreadsheet (CSV)</a>
      <a href={`${files}/kit.json?${query}`}>data (JSON)</a>
    </p>
  );
};

interface AllSizesProps {
  readonly making: Making;
  readonly sizes: Content['sizes'];
  readonly kit: KitList | null;
}

/** All sizes beside each other, and how the kit grows; reckoned anew only where the lesson or its span changes. */
function AllSizes({ making, sizes, kit }: AllSizesProps) {
  const rows = useMemo(() => sizeRows(making, sizes), [making, sizes]);
  const goesByLength = kit?.length != null;
  const [fromMm, toMm] = growthSpan(sizes, goesByLength ? kit.bodyMm : null);
  const steps = useMemo(
    () => (goesByLength ? growthOf(making, fromMm, toMm) : []),
    [goesByLength, making, fromMm, toMm],
  );
  if (rows.length === 0 && steps.length === 0) return null;
  return (
    <details className={styles.all}>
      <summary>Every size, and how the kit grows</summary>
      {rows.length === 0 ? null : <SizeTable id="sizes" rows={rows} />}
      <GrowthPicture steps={steps} currency={making.currency} bodyMm={kit?.bodyMm ?? null} />
    </details>
  );
}

interface MeasureFormProps {
  readonly page: string;
  readonly goesByMeasure: boolean;
  readonly asked: AskedMeasure;
  readonly faulty: boolean;
  readonly held: number | null;
  readonly earlier: readonly number[];
  readonly onAsk: (asked: AskedMeasure) => void;
}

const MeasureForm = ({ page, goesByMeasure, held, earlier, ...typed }: MeasureFormProps) => (
  <form method="get" action={`${page}#kit`} className={styles.form}>
    {goesByMeasure ? <MeasureFields {...typed} /> : null}
    {earlier.length > 0 ? (
      <div className="field">
        <label htmlFor="kit-held">I hold a kit of</label>
        <select id="kit-held" name="held" defaultValue={held ?? ''}>
          <option value="">none</option>
          {earlier.map((number) => (
            <option key={number} value={number}>
              revision {number}
            </option>
          ))}
        </select>
      </div>
    ) : null}
    <button type="submit">Show my kit</button>
  </form>
);

const MeasureFields = ({ asked, faulty, onAsk }: Pick<MeasureFormProps, 'asked' | 'faulty' | 'onAsk'>) => (
  <>
    <div className="field">
      <label htmlFor="kit-measure">Your measure</label>
      <input
        id="kit-measure"
        name="measure"
        type="text"
        inputMode="decimal"
        autoComplete="off"
        maxLength={40}
        value={asked.text}
        aria-invalid={faulty}
        aria-describedby={faulty ? 'kit-fault' : undefined}
        onChange={(event) => onAsk({ ...asked, text: event.target.value })}
      />
    </div>
    <fieldset>
      <legend>in</legend>
      <div className={styles.choices}>
        {MEASURE_UNITS.map((unit) => (
          <label key={unit} className="tick">
            <input
              type="radio"
              name="unit"
              value={unit}
              checked={asked.unit === unit}
              onChange={() => onAsk({ ...asked, unit })}
            />
            {UNIT_NAMES[unit]}
          </label>
        ))}
      </div>
    </fieldset>
    <fieldset>
      <legend>measured</legend>
      <div className={styles.choices}>
        <label className="tick">
          <input
            type="radio"
            name="of"
            value="wrist"
            checked={asked.of === 'wrist'}
            onChange={() => onAsk({ ...asked, of: 'wrist' })}
          />
          on the body (wrist, ankle, neck)
        </label>
        <label className="tick">
          <input
            type="radio"
            name="of"
            value="length"
            checked={asked.of === 'length'}
            onChange={() => onAsk({ ...asked, of: 'length' })}
          />
          as finished length
        </label>
      </div>
    </fieldset>
  </>
);
