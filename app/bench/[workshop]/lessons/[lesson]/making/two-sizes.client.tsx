'use client';
/** What two sizes of ring can do together, wire by wire; worked out on request, away from the screen. */
import { useEffect, useRef, useState } from 'react';
import { StackingTable } from '#app/kit/stacking-table.tsx';
import { figure } from '#app/words/ring-words.ts';
import { alternationSummary, alternationWords, atWireWords } from '#app/words/two-sizes-words.ts';
import { sizesOf } from '#lib/rings/ring.ts';
import {
  ALTERNATION_NAMES,
  type Alternation,
  type AtWire,
  TWO_ROWS,
  type TwoSizes,
} from '#lib/weave/space/alternations.ts';
import { findWeave } from '#lib/weave/weave-library.ts';
import { useDraft } from '../draft.client.tsx';
import styles from './making.module.css';
import type { TwoSizesAsked, TwoSizesTold } from './two-sizes.worker.ts';

/** mm; the wires that rings of these sizes are wound from. */
const WIRES = [0.8, 0.9, 1, 1.1, 1.2, 1.3, 1.4, 1.5, 1.6];

interface Told {
  readonly found: readonly { readonly alternation: Alternation; readonly found: AtWire }[];
  readonly thickest: ReadonlyMap<Alternation, number>;
  /** Refused: the browser starts no worker here; failed: it stopped on the way. */
  readonly state: 'working' | 'done' | 'failed' | 'refused';
}

/** @param weave id of the weave in space that the sequence is; null where none is known */
export function TwoSizesTogether({ weave }: { readonly weave: string | null }) {
  const { content } = useDraft();
  const inners = content.ringKinds.map((kind) => sizesOf(kind).innerMm);
  const inner: TwoSizes = { large: Math.max(...inners), small: Math.min(...inners) };
  if (weave === null || !TWO_ROWS.includes(weave) || inners.length < 2 || inner.small > 0.98 * inner.large)
    return null;
  return <TwoSizesTable key={`${weave} ${inner.large} ${inner.small}`} weave={weave} inner={inner} />;
}

function TwoSizesTable({ weave, inner }: { readonly weave: string; readonly inner: TwoSizes }) {
  const worker = useRef<Worker | null>(null);
  const [told, setTold] = useState<Told | null>(null);
  useEffect(() => () => worker.current?.terminate(), []);
  const ask = () => {
    const nothing = { found: [], thickest: new Map() };
    let working: Worker;
    try {
      working = new Worker(new URL('./two-sizes.worker.ts', import.meta.url), { type: 'module' });
    } catch {
      setTold({ ...nothing, state: 'refused' });
      return;
    }
    worker.current = working;
    setTold({ ...nothing, state: 'working' });
    working.onmessage = ({ data }: MessageEvent<TwoSizesTold>) =>
      setTold((before) => before && withTold(before, data));
    // Some settings let a worker be made and then stop it before it says anything.
    working.onerror = () =>
      setTold((before) => before && { ...before, state: before.found.length === 0 ? 'refused' : 'failed' });
    working.postMessage({ weave, inner, wires: WIRES } satisfies TwoSizesAsked);
  };
  const name = findWeave(weave)?.name ?? weave;
  const sizes = `${figure(inner.large, 2)} mm and ${figure(inner.small, 2)} mm`;
  return (
    <details className={styles.more}>
      <summary>
        Two sizes together: {sizes} in {name}
      </summary>
      <p className="soft">
        Which ways of taking turns can exist with wires from 0.8 to 1.6 mm, both sizes of the same wire.
        Worked out with rigid round rings, in your browser; it takes some seconds, and you can go on
        meanwhile.
      </p>
      {told === null && (
        <button type="button" className="quiet" onClick={ask}>
          Work it out
        </button>
      )}
      {told && <TwoSizesAnswer told={told} inner={inner} />}
    </details>
  );
}

function withTold(before: Told, told: TwoSizesTold): Told {
  switch (told.kind) {
    case 'at':
      return { ...before, found: [...before.found, told] };
    case 'thickest':
      return { ...before, thickest: new Map(before.thickest).set(told.alternation, told.wire) };
    case 'done':
      return { ...before, state: 'done' };
  }
}

function TwoSizesAnswer({ told, inner }: { readonly told: Told; readonly inner: TwoSizes }) {
  const of = (alternation: Alternation) =>
    told.found.filter((each) => each.alternation === alternation).map(({ found }) => found);
  if (told.state === 'refused')
    return (
      <p className="notice caution" role="alert">
        This browser does not let the page work in the background, so it cannot be worked out here. Try
        another browser, or allow background work (“workers”) for this address.
      </p>
    );
  return (
    <>
      <StackingTable
        name="What can exist, by wire and by way of taking turns"
        of="Wire"
        heads={ALTERNATION_NAMES.map((each) => ({
          text: alternationWords(each).title,
          about: alternationWords(each).about,
          isNumber: false,
        }))}
        isWordy
        rows={WIRES.map((wire) => ({
          key: String(wire),
          head: `${figure(wire, 2)}\u00a0mm`,
          cells: ALTERNATION_NAMES.map((each) => {
            const found = of(each).find((at) => at.wire === wire);
            return found ? atWireWords(found, told.thickest.get(each) ?? null) : '…';
          }),
        }))}
      />
      {told.state === 'failed' && (
        <p className="fault" role="alert">
          The browser could not work it out. Load the page again and try once more.
        </p>
      )}
      <div role="status">
        {told.state === 'working' && <p className="soft">Working it out…</p>}
        {told.state === 'done' && (
          <ul>
            {ALTERNATION_NAMES.map((each) => (
              <li key={each}>
                {alternationSummary(each, of(each), { inner, thickest: told.thickest.get(each) ?? null })}
              </li>
            ))}
          </ul>
        )}
      </div>
    </>
  );
}
