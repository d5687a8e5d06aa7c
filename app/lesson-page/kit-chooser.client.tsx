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
import { type AskedMeasure, bodyMmOf, formatMeasure, sizeWords } from '#lib/lesson/asked-measure.ts';
import type { Content } from '#lib/lesson/content.ts';
import styles from './kit.module.css';
import { KitDifferenceBox } from './kit-difference.tsx';
import { MeasureForm } from './measure-form.tsx';
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
  const { body, kit, fault } = kitAsked(making, sizes, asked);
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
      {goesByMeasure ? (
        <LessonSizes
          sizes={sizes}
          bodyMm={body?.ok ? body.value : null}
          addressOf={(size) => addressOf(page, size, held?.number ?? null)}
          onChoose={choose}
        />
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

/** The kit for what is asked: none before anything is, and what is wrong in words. */
function kitAsked(making: Making, sizes: Content['sizes'], asked: AskedMeasure) {
  const isUnasked = asked.text.trim() === '' && sizes.length === 0;
  const measured = isUnasked ? null : bodyMmOf(asked, making.kitRules);
  const body = kitGoesByMeasure(making) ? measured : SAME_FOR_ALL;
  const kit = body?.ok ? kitFor(making, body.value) : null;
  return { body, kit, fault: faultWordsOf(body, kit) };
}

function faultWordsOf(
  body: ReturnType<typeof bodyMmOf> | null,
  kit: ReturnType<typeof kitFor> | null,
): string | null {
  if (body && !body.ok) return measureFaultWords(body.fault);
  return kit && !kit.ok ? kitFaultWords(kit.fault).text : null;
}

interface LessonSizesProps {
  readonly sizes: Content['sizes'];
  /** Of the kit that is shown; null where none is. */
  readonly bodyMm: number | null;
  readonly addressOf: (asked: AskedMeasure) => string;
  readonly onChoose: (asked: AskedMeasure) => void;
}

const LessonSizes = ({ sizes, bodyMm, addressOf, onChoose }: LessonSizesProps) =>
  sizes.length === 0 ? null : (
    <p className={styles.sizes}>
      <span>Sizes of this lesson:</span>
      {sizes.map((size) => {
        const asked: AskedMeasure = { text: String(size.bodyMm), unit: 'mm', of: 'wrist' };
        return (
          <a
            key={size.id}
            href={addressOf(asked)}
            aria-current={bodyMm === size.bodyMm ? 'true' : undefined}
            onClick={(event) => {
              event.preventDefault();
              onChoose(asked);
            }}
          >
            {sizeWords(size)}
          </a>
        );
      })}
    </p>
  );

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
