import { kitDifferenceWords } from '#app/words/kit-difference-words.ts';
import type { KitDifference } from '#lib/kit/kit-difference.ts';
import styles from './kit.module.css';

interface KitDifferenceProps {
  readonly held: number;
  readonly difference: KitDifference;
}

/** What the holder of an earlier kit adds, exchanges or lays aside. */
export const KitDifferenceBox = ({ held, difference }: KitDifferenceProps) => (
  <section className={styles.difference} aria-labelledby="kit-difference">
    <h3 id="kit-difference">If your kit is of revision {held}</h3>
    <KitDifferenceList difference={difference} />
  </section>
);

export const KitDifferenceList = ({ difference }: Pick<KitDifferenceProps, 'difference'>) => {
  const sentences = kitDifferenceWords(difference);
  const { repeats } = difference;
  return (
    <>
      {sentences.length === 0 ? (
        <p>Nothing is different for this size: your kit is complete.</p>
      ) : (
        <ul>
          {sentences.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      {repeats === 0 ? null : (
        <p className="hint">
          The piece takes {Math.abs(repeats)} {repeats > 0 ? 'more' : 'fewer'}{' '}
          {Math.abs(repeats) === 1 ? 'repeat' : 'repeats'} than before.
        </p>
      )}
    </>
  );
};
