import type { ReactNode } from 'react';
import {
  countWords,
  lengthWords,
  massWords,
  materialWords,
  packsWords,
  priceWords,
  quantityWords,
  spareWords,
  sumWords,
  unpricedWords,
} from '#app/words/kit-words.ts';
import type { KitList } from '#lib/kit/kit-list.ts';
import { formatMeasure } from '#lib/lesson/asked-measure.ts';
import { ringFacts } from '#lib/lesson/making-words.ts';
import { metalNameOf } from '#lib/rings/metals.ts';
import styles from './kit.module.css';

interface TableFrameProps {
  readonly name: string;
  readonly children: ReactNode;
}

/** A wide table scrolls in its own frame; the keyboard has to reach the frame to scroll it. */
const TableFrame = ({ name, children }: TableFrameProps) => (
  // biome-ignore lint/a11y/noNoninteractiveTabindex: scrolls by key
  <section className="table-frame" aria-label={name} tabIndex={0}>
    {children}
  </section>
);

/** A kit as a pupil prepares it: what to open, what to close, and how every number came about. */
export const KitTable = ({ kit }: { readonly kit: KitList }) => (
  <>
    <p className={styles.told}>
      {kit.length ? (
        <>
          <strong>{kit.repeats} repeats</strong> of the unit; finished{' '}
          <strong>
            {formatMeasure(kit.length.finishedMm, 'mm')} ({formatMeasure(kit.length.finishedMm, 'in')})
          </strong>{' '}
          with the clasp closed.
        </>
      ) : (
        'Nothing in this piece repeats: the kit is the same for everyone.'
      )}
    </p>
    {kit.rings.length > 0 ? (
      <TableFrame name="Rings to prepare">
        <table className={styles.rings}>
          <caption>Rings to prepare</caption>
          <thead>
            <tr>
              <th scope="col">Ring</th>
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
                Take
              </th>
            </tr>
          </thead>
          <tbody>
            {kit.rings.map((line) => (
              <tr key={line.ringKind.id}>
                <th scope="row">
                  <span className={styles.swatch} style={{ background: line.ringKind.colourCode }} />
                  {line.ringKind.name}
                  <span className={styles.facts}>{ringFacts(line.ringKind)}</span>
                </th>
                <td className="number">{line.opened}</td>
                <td className="number">{line.closed}</td>
                <td className="number">{line.spare}</td>
                <td className="number">
                  <strong>{line.issued}</strong>
                </td>
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th scope="row">All rings</th>
              <td className="number">{kit.totals.opened}</td>
              <td className="number">{kit.totals.closed}</td>
              <td className="number">{kit.totals.spare}</td>
              <td className="number">
                <strong>{kit.totals.issued}</strong>
              </td>
            </tr>
          </tfoot>
        </table>
      </TableFrame>
    ) : null}
    <Preparation kit={kit} />
    <Buying kit={kit} />
    <Working kit={kit} />
  </>
);

/** What to lay ready, as a list to tick off. */
const Preparation = ({ kit }: { readonly kit: KitList }) => {
  const tasks = kit.rings.flatMap((line) => [
    ...(line.opened > 0
      ? [{ id: `open-${line.ringKind.id}`, text: `Open ${line.opened} × ${line.ringKind.name}` }]
      : []),
    ...(line.closed > 0
      ? [{ id: `close-${line.ringKind.id}`, text: `Close ${line.closed} × ${line.ringKind.name}` }]
      : []),
    ...(line.spare > 0
      ? [{ id: `spare-${line.ringKind.id}`, text: `Lay aside ${line.spare} spare × ${line.ringKind.name}` }]
      : []),
  ]);
  if (tasks.length === 0) return null;
  return (
    <>
      <h3>Before you weave</h3>
      <ul className={styles.ticks}>
        {tasks.map((task) => (
          <li key={task.id}>
            <label className="tick">
              <input type="checkbox" data-tick={task.id} />
              {task.text}
            </label>
          </li>
        ))}
      </ul>
    </>
  );
};

const Buying = ({ kit }: { readonly kit: KitList }) => {
  const lines = [
    ...kit.rings.map((line) => ({
      id: line.ringKind.id,
      name: line.ringKind.name,
      need: `${line.issued} rings`,
      packs: line.packs ? packsWords(line.packs) : '–',
      mass: massWords(line.issuedG),
      price: priceWords(line.price, kit.currency),
      link: line.ringKind.offer?.link ?? '',
    })),
    ...kit.materials.map((line) => ({
      id: line.material.id,
      name: line.material.name,
      need: quantityWords(line.needMilli, line.material.unit),
      packs: line.packs ? packsWords(line.packs, 1000) : '–',
      mass: massWords(line.g),
      price: priceWords(line.price, kit.currency),
      link: line.material.offer?.link ?? '',
    })),
  ];
  if (lines.length === 0) return null;
  return (
    <>
      <h3>Packs, mass and cost</h3>
      <TableFrame name="Packs, mass and cost">
        <table className={styles.buying}>
          <caption className="unseen">Packs, mass and cost</caption>
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
                Mass
              </th>
              <th scope="col" className="number">
                Cost
              </th>
            </tr>
          </thead>
          <tbody>
            {lines.map((line) => (
              <tr key={line.id}>
                <th scope="row">{line.link === '' ? line.name : <a href={line.link}>{line.name}</a>}</th>
                <td className="number">{line.need}</td>
                <td className="number">{line.packs}</td>
                <td className="number">{line.mass}</td>
                <td className="number">{line.price}</td>
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th scope="row">Together</th>
              <td />
              <td />
              <td className="number">
                {massWords(
                  kit.totals.ringsIssuedG === null ? null : kit.totals.ringsIssuedG + kit.totals.materialsG,
                )}
              </td>
              <td className="number">{sumWords(kit.totals.price, kit.currency)}</td>
            </tr>
          </tfoot>
        </table>
      </TableFrame>
      {unpricedWords(kit.totals.price) === '' ? null : (
        <p className="hint">{unpricedWords(kit.totals.price)}</p>
      )}
    </>
  );
};

const massOrigin = (line: KitList['rings'][number]): string => {
  if (!line.ringMass) return 'its mass is not known';
  return line.ringMass.from === 'weighed'
    ? `mass weighed: 100 rings are ${line.ringMass.hundredG} g`
    : `mass calculated with ${line.ringMass.densityGPerCm3} g/cm³ for ${metalNameOf(line.ringKind)} (${line.ringMass.source})`;
};

const Working = ({ kit }: { readonly kit: KitList }) => (
  <details className={styles.working}>
    <summary>How these numbers came about</summary>
    {kit.length ? (
      <ul>
        {lengthWords(kit.length).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    ) : null}
    <ul>
      {kit.rings.map((line) => (
        <li key={line.ringKind.id}>
          <strong>{line.ringKind.name}:</strong> {countWords(line.parts, kit.repeats, line, 'opened')};{' '}
          {countWords(line.parts, kit.repeats, line, 'closed')}; {spareWords(line.spareWorking)};{' '}
          {massOrigin(line)}.
        </li>
      ))}
      {kit.materials.map((line) => (
        <li key={line.material.id}>
          <strong>{line.material.name}:</strong> {materialWords(line)}.
        </li>
      ))}
    </ul>
  </details>
);
