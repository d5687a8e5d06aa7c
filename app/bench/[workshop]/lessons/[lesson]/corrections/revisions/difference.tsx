/** Texts word by word, and kits number by number. */
import { formatMoney } from '#lib/kit/money.ts';
import type { KitChange, TextChange } from '#lib/lesson/revision-texts.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';

const PART: Readonly<Record<TextChange['part'], string>> = {
  title: 'Title',
  summary: 'Summary',
  licence: 'Licence',
  chapter: 'Chapter',
  step: 'Step',
  caution: 'Caution',
  transcript: 'Transcript',
};

/** More would be a page that nobody reads. */
const MOST_SHOWN = 300;

export function TextChanges({ changes }: { changes: readonly TextChange[] }) {
  if (changes.length === 0) return null;
  return (
    <>
      <h4>Words</h4>
      <p className="hint">What is gone is struck through; what is new is underlined.</p>
      <ul>
        {changes.slice(0, MOST_SHOWN).map(({ part, id, atMs, parts }) => (
          <li key={`${part} ${id}`}>
            <strong>
              {PART[part]}
              {atMs === null ? '' : `, ${formatTimeCode(atMs)}`}:
            </strong>{' '}
            {parts.map(({ how, text }, k) => {
              const key = `${k} ${how}`;
              if (how === 'removed') return <del key={key}>{text}</del>;
              if (how === 'added') return <ins key={key}>{text}</ins>;
              return <span key={key}>{text}</span>;
            })}
          </li>
        ))}
      </ul>
      {changes.length > MOST_SHOWN && <p>{changes.length - MOST_SHOWN} more texts differ.</p>}
    </>
  );
}

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
  if (changes.length === 0) return null;
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
            {changes.flatMap(({ size, rings, costMinor }) => [
              ...rings.map(({ ringKind, before: was, now: is }) => (
                <tr key={`${size} ${ringKind}`}>
                  <td>{size}</td>
                  <td>{ringKind}</td>
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
