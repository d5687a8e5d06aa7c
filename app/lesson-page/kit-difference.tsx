import type { KitDifference, MaterialDifference, RingDifference } from '#lib/kit/kit-difference.ts';
import { quantityWord, ringFacts } from '#lib/lesson/making-words.ts';
import styles from './kit.module.css';

interface KitDifferenceProps {
  readonly held: number;
  readonly difference: KitDifference;
}

/** What the holder of an earlier kit adds, changes or lays aside. */
export const KitDifferenceBox = ({ held, difference }: KitDifferenceProps) => {
  const sentences = [
    ...difference.rings.flatMap(ringSentences),
    ...[...difference.materials, ...difference.tools].flatMap(materialSentences),
  ];
  return (
    <section className={styles.difference} aria-labelledby="kit-difference">
      <h3 id="kit-difference">If your kit is of revision {held}</h3>
      {sentences.length === 0 ? (
        <p>Nothing is different for this size: your kit is complete.</p>
      ) : (
        <ul>
          {sentences.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      {difference.repeats === 0 ? null : (
        <p className="hint">
          {Math.abs(difference.repeats)} {difference.repeats > 0 ? 'more' : 'fewer'} repeats than before.
        </p>
      )}
    </section>
  );
};

const more = (count: number): string => `${Math.abs(count)} ${count > 0 ? 'more' : 'fewer'}`;

function ringSentences({
  ringKind,
  how,
  opened,
  closed,
  spare,
  issued,
  changes,
}: RingDifference): readonly string[] {
  const split = [
    opened === 0 ? '' : `${more(opened)} opened`,
    closed === 0 ? '' : `${more(closed)} closed`,
    spare === 0 ? '' : `${more(spare)} spare`,
  ].filter((part) => part !== '');
  switch (how) {
    case 'same':
      return [];
    case 'new':
      return [`New: ${issued} × ${ringKind.name} (${ringFacts(ringKind)}).`];
    case 'gone':
      return [`No longer used: ${-issued} × ${ringKind.name}. Lay them aside.`];
    case 'other':
      return [
        `Exchange every ${ringKind.name}: ${changes.map((change) => `${change.what} is now ${change.now}, was ${change.before}`).join('; ')}.`,
        ...(split.length === 0 ? [] : [`${ringKind.name}: ${split.join(', ')}.`]),
      ];
    case 'count':
      return [
        issued === 0
          ? `${ringKind.name}: the same number, but ${split.join(', ')}.`
          : `${issued > 0 ? 'Add' : 'You have over'} ${Math.abs(issued)} × ${ringKind.name}: ${split.join(', ')}.`,
      ];
  }
}

function materialSentences({ material, how, needMilli, before }: MaterialDifference): readonly string[] {
  const quantity = quantityWord(Math.abs(needMilli), material.unit);
  switch (how) {
    case 'same':
      return [];
    case 'new':
      return [`New: ${material.name}, ${quantity}.`];
    case 'gone':
      return [`No longer used: ${material.name}.`];
    case 'other':
      return [`${before?.name ?? material.name} is now ${material.name}.`];
    case 'count':
      return [`${material.name}: ${quantity} ${needMilli > 0 ? 'more' : 'less'}.`];
  }
}
