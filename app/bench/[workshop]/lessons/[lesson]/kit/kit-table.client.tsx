'use client';
/** One kit as a table, every number with its working behind it. */
import { useState } from 'react';
import {
  countWords,
  hintWords,
  lengthWords,
  massWords,
  materialWords,
  packsWords,
  priceWords,
  proRataWords,
  quantityWords,
  spareRuleWords,
  spareWords,
  sumWords,
  unpricedWords,
} from '#app/words/kit-words.ts';
import { ringMassWords } from '#app/words/ring-words.ts';
import { kitCsv } from '#lib/kit/kit-csv.ts';
import type { KitList, RingLine } from '#lib/kit/kit-list.ts';
import type { MaterialLine } from '#lib/kit/material-line.ts';
import { formatSize } from '#lib/rings/parse-size.ts';
import { RingFigure } from '../making/ring-figure.tsx';
import styles from './kit.module.css';

export interface KitTableProps {
  readonly kit: KitList;
  readonly caption: string;
  readonly fileName: string;
}

export function KitTable({ kit, caption, fileName }: KitTableProps) {
  const [explained, setExplained] = useState(false);
  const { totals, currency } = kit;
  return (
    <div className={styles.kit}>
      <div className="row apart">
        <p className={styles.sum}>
          {kit.length ? (
            <>
              <strong>{kit.length.repeats}</strong> {kit.length.repeats === 1 ? 'repeat' : 'repeats'},{' '}
              <strong>{kit.length.finishedMm} mm</strong> finished
            </>
          ) : (
            'Nothing in this piece goes by its length.'
          )}
        </p>
        <div className={`row ${styles.noPrint}`}>
          <button
            type="button"
            className="quiet"
            aria-pressed={explained}
            onClick={() => setExplained(!explained)}
          >
            Show the working
          </button>
          <button type="button" className="quiet" onClick={() => saveText(kitCsv(kit), fileName)}>
            Save as CSV
          </button>
          <button type="button" className="quiet" onClick={() => window.print()}>
            Print
          </button>
        </div>
      </div>
      {explained && kit.length && (
        <ul className={styles.working}>
          {[...lengthWords(kit.length), spareRuleWords(kit.spareRule)].map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      {kit.rings.length > 0 && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a frame that scrolls must be reached by keys
        <section className="table-frame" tabIndex={0} aria-label={`Rings, ${caption}`}>
          <table>
            <caption>Rings: {caption}</caption>
            <thead>
              <tr>
                <th scope="col">Ring kind</th>
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
                  In the kit
                </th>
                <th scope="col" className="number">
                  Packs
                </th>
                <th scope="col" className="number">
                  Mass
                </th>
                <th scope="col" className="number">
                  Price
                </th>
              </tr>
            </thead>
            <tbody>
              {kit.rings.map((line) => (
                <RingRow key={line.ringKind.id} line={line} kit={kit} explained={explained} />
              ))}
            </tbody>
            <tfoot>
              <tr>
                <th scope="row">All rings</th>
                <td className="number">{totals.opened}</td>
                <td className="number">{totals.closed}</td>
                <td className="number">{totals.spare}</td>
                <td className="number">{totals.issued}</td>
                <td />
                <td className="number">{massWords(totals.ringsIssuedG)}</td>
                <td />
              </tr>
            </tfoot>
          </table>
        </section>
      )}
      <Others title="Materials" lines={kit.materials} currency={currency} explained={explained} />
      <Others
        title="Tools and safety items, kept"
        lines={kit.tools}
        currency={currency}
        explained={explained}
      />
      <dl className={styles.totals}>
        <div>
          <dt>Bought in whole packs</dt>
          <dd>{sumWords(totals.price, currency)}</dd>
        </div>
        {totals.price.priced > 0 && (
          <div>
            <dt>What this kit uses of them</dt>
            <dd>{proRataWords(totals.price, currency)}</dd>
          </div>
        )}
        <div>
          <dt>Rings without spare</dt>
          <dd>{massWords(totals.ringsNetG)}</dd>
        </div>
        {totals.materialsG > 0 && totals.ringsNetG !== null && (
          <div>
            <dt>Finished, with materials that state a mass</dt>
            <dd>{massWords(totals.ringsNetG + totals.materialsG)}</dd>
          </div>
        )}
      </dl>
      {unpricedWords(totals.price) && <p className="hint">{unpricedWords(totals.price)}</p>}
    </div>
  );
}

function RingRow({ line, kit, explained }: { line: RingLine; kit: KitList; explained: boolean }) {
  const { ringKind } = line;
  return (
    <>
      <tr>
        <th scope="row">
          <span className={styles.kind}>
            <RingFigure kind={ringKind} among={kit.rings.map((each) => each.ringKind)} />
            <span>
              {ringKind.name || 'ring kind without a name'}
              <span className={styles.sizes}>
                {formatSize(ringKind.innerDiameter)}, wire {formatSize(ringKind.wire)}
                {ringKind.colour && `, ${ringKind.colour}`}
              </span>
            </span>
          </span>
        </th>
        <td className="number">{line.opened}</td>
        <td className="number">{line.closed}</td>
        <td className="number">{line.spare}</td>
        <td className="number">
          <strong>{line.issued}</strong>
        </td>
        <td className="number">{line.packs ? packsWords(line.packs) : '–'}</td>
        <td className="number">{massWords(line.issuedG)}</td>
        <td className="number">{priceWords(line.price, kit.currency)}</td>
      </tr>
      {explained && (
        <tr>
          <td colSpan={8} className={styles.why}>
            <ul>
              <li>{countWords(line.parts, kit.repeats, line, 'opened')}</li>
              <li>{countWords(line.parts, kit.repeats, line, 'closed')}</li>
              <li>{spareWords(line.spareWorking)}</li>
              <li>{ringMassWords(line.ringMass)}</li>
              {line.packs?.hint && <li>{hintWords(line.packs, kit.currency)}</li>}
              {line.price && <li>{proRataWords(line.price, kit.currency)} of it for these rings alone</li>}
            </ul>
          </td>
        </tr>
      )}
    </>
  );
}

interface OthersProps {
  readonly title: string;
  readonly lines: readonly MaterialLine[];
  readonly currency: string;
  readonly explained: boolean;
}

function Others({ title, lines, currency, explained }: OthersProps) {
  if (lines.length === 0) return null;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a frame that scrolls must be reached by keys
    <section className="table-frame" tabIndex={0} aria-label={title}>
      <table>
        <caption>{title}</caption>
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col" className="number">
              Needed
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
          {lines.map((line) => (
            <tr key={line.material.id}>
              <th scope="row">
                {line.material.name || 'without a name'}
                {explained && <span className={styles.sizes}>{materialWords(line)}</span>}
              </th>
              <td className="number">{quantityWords(line.needMilli, line.material.unit)}</td>
              <td className="number">{line.packs ? packsWords(line.packs, 1000) : '–'}</td>
              <td className="number">{priceWords(line.price, currency)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** Hands a text to the browser as a file; nothing leaves the machine. */
function saveText(text: string, name: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'text/csv;charset=utf-8' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
}
