/** Texts word by word, kits number by number, and whatever is given out line by line. */
import type { ChangedLine } from '#lib/description/changed-lines.ts';
import { formatMoney } from '#lib/kit/money.ts';
import type { KitChange, TextChange } from '#lib/lesson/revision-texts.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';
import { WordParts } from '../word-parts.tsx';
import styles from './revisions.module.css';

const PART: Readonly<Record<TextChange['part'], string>> = {
  title: 'Title',
  summary: 'Summary',
  licence: 'Licence',
  chapter: 'Chapter',
  step: 'Step',
  caution: 'Caution',
  term: 'Explained term',
  transcript: 'Transcript',
};

/** More would be a page that nobody reads. */
const MOST_SHOWN = 300;

const Unchanged = ({ of }: { readonly of: string }) => (
  <>
    <h4>{of}</h4>
    <p className="soft">Nothing differs.</p>
  </>
);

export function TextChanges({ changes }: { changes: readonly TextChange[] }) {
  if (changes.length === 0) return <Unchanged of="Words" />;
  // A cut takes hundreds of lines out: what is in other words should not be looked for among them.
  const isGone = ({ parts }: TextChange): boolean => parts.every(({ how }) => how === 'removed');
  const gone = changes.filter(isGone);
  return (
    <>
      <h4>Words</h4>
      <p>What is gone is struck through; what is new is underlined.</p>
      <Texts changes={changes.filter((change) => !isGone(change))} />
      {gone.length > 0 && (
        <details className={styles.lines}>
          <summary>{gone.length === 1 ? 'One text is gone' : `${gone.length} texts are gone`}</summary>
          <Texts changes={gone} />
        </details>
      )}
    </>
  );
}

const Texts = ({ changes }: { changes: readonly TextChange[] }) => (
  <>
    <ul>
      {changes.slice(0, MOST_SHOWN).map(({ part, id, atMs, parts }) => (
        <li key={`${part} ${id}`}>
          <strong>
            {PART[part]}
            {atMs === null ? '' : `, ${formatTimeCode(atMs)}`}:
          </strong>{' '}
          <WordParts parts={parts} />
        </li>
      ))}
    </ul>
    {changes.length > MOST_SHOWN && <p>{changes.length - MOST_SHOWN} more.</p>}
  </>
);

export function KitChanges({
  changes,
  before,
  now,
}: {
  changes: readonly KitChange[];
  /** Currencies of the two revisions. */
  before: string;
  now: string;
}) {
  if (changes.length === 0) return <Unchanged of="Kits by size" />;
  const cost = (minor: number | null, currency: string): string =>
    minor === null ? 'no kit' : formatMoney(minor, currency);
  return (
    <>
      <h4>Kits by size</h4>
      <div className="table-frame">
        <table>
          <thead>
            <tr>
              <th scope="col">Size</th>
              <th scope="col">What</th>
              <th scope="col" className="number">
                Before
              </th>
              <th scope="col" className="number">
                Now
              </th>
            </tr>
          </thead>
          <tbody>
            {changes.flatMap(({ size, rings, materials, costMinor }) => [
              ...rings.map(({ ringKind, before: was, now: is }) => (
                <tr key={`${size} ${ringKind}`}>
                  <td>{size}</td>
                  <td>{ringKind}</td>
                  <td className="number">{was}</td>
                  <td className="number">{is}</td>
                </tr>
              )),
              ...materials.map(({ name, before: was, now: is }) => (
                <tr key={`${size} material ${name}`}>
                  <td>{size}</td>
                  <td>{name}</td>
                  <td className="number">{was}</td>
                  <td className="number">{is}</td>
                </tr>
              )),
              ...(costMinor.before === costMinor.now && before === now
                ? []
                : [
                    <tr key={`${size} cost`}>
                      <td>{size}</td>
                      <td>Cost, by whole packs</td>
                      <td className="number">{cost(costMinor.before, before)}</td>
                      <td className="number">{cost(costMinor.now, now)}</td>
                    </tr>,
                  ]),
            ])}
          </tbody>
        </table>
      </div>
    </>
  );
}

export interface LinesProps {
  /** What is given out: a file, a page, a sheet. */
  readonly of: string;
  /** Told above the lines. */
  readonly note?: string;
  readonly lines: readonly ChangedLine[];
}

export function LineChanges({ of, note, lines }: LinesProps) {
  if (lines.length === 0) return <Unchanged of={of} />;
  const differing = lines.filter(({ is }) => is !== 'same').length;
  return (
    <>
      <h4>{of}</h4>
      {note && <p>{note}</p>}
      <details className={styles.lines}>
        <summary>{differing === 1 ? 'One line differs' : `${differing} lines differ`}</summary>
        <ul>
          {lines.slice(0, MOST_SHOWN).map(({ is, line }, place) => (
            // The same line may stand in a text twice.
            // biome-ignore lint/suspicious/noArrayIndexKey: lines have no other name than their place
            <li key={place}>
              {is === 'gone' && <del>{line}</del>}
              {is === 'new' && <ins>{line}</ins>}
              {is === 'same' && <span className="soft">{line}</span>}
            </li>
          ))}
        </ul>
        {lines.length > MOST_SHOWN && <p>{lines.length - MOST_SHOWN} more lines.</p>}
      </details>
    </>
  );
}
