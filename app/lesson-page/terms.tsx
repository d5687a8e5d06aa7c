/**
 * Terms explained where they occur: a word to press opens its meaning, and all
 * of them stand together further down. The browser does both without script.
 */
import { type ExplainedTerm, type TermPlace, termFinder } from '#lib/glossary/explained-term.ts';
import { HandText } from './hand-text.tsx';
import styles from './terms.module.css';

export interface Explainer {
  /** The first place of every term in a text. */
  readonly places: (text: string) => readonly TermPlace[];
  /** Id of the box that opens. */
  readonly boxOf: (term: string) => string;
}

export function explainerOf(terms: readonly ExplainedTerm[]): Explainer {
  const find = termFinder(terms);
  const numbers = new Map(terms.map(({ term }, index) => [term, index + 1]));
  return {
    places: (text) => {
      const met = new Set<string>();
      return find(text).filter(({ term }) => !met.has(term) && met.add(term));
    },
    boxOf: (term) => `term-${numbers.get(term)}`,
  };
}

interface TermTextProps {
  readonly text: string;
  readonly explainer: Explainer;
}

/** A text whose terms can be pressed; words of hand turn round in it as elsewhere. */
export const TermText = ({ text, explainer }: TermTextProps) => {
  let at = 0;
  return (
    <>
      {explainer.places(text).map(({ start, end, term }) => {
        const from = at;
        at = end;
        return (
          <span key={start}>
            <HandText text={text} from={from} to={start} />
            <button type="button" className={styles.term} popoverTarget={explainer.boxOf(term)}>
              <HandText text={text} from={start} to={end} />
            </button>
          </span>
        );
      })}
      <HandText text={text} from={at} />
    </>
  );
};

/** For a name that cannot hold a button itself: what its first term means. */
export const WhatItIs = ({ text, explainer }: TermTextProps) => {
  const [first] = explainer.places(text);
  return first === undefined ? null : (
    <button
      type="button"
      className={`${styles.term} ${styles.beside}`}
      popoverTarget={explainer.boxOf(first.term)}
      lang="en"
    >
      what it is<span className="unseen">: {first.term}</span>
    </button>
  );
};

interface TermsProps {
  readonly terms: readonly ExplainedTerm[];
  readonly explainer: Explainer;
}

/** Every term with its meaning, to read and to print; and the boxes that open where a term is pressed. */
export const Terms = ({ terms, explainer }: TermsProps) =>
  terms.length === 0 ? null : (
    <section id="terms" className={styles.terms} aria-labelledby="terms-title">
      <h2 id="terms-title">Words of the trade</h2>
      <dl>
        {terms.map(({ term, meaning }) => (
          <div key={term}>
            <dt>
              <dfn>{term}</dfn>
            </dt>
            <dd>
              <HandText text={meaning} />
            </dd>
          </div>
        ))}
      </dl>
      {terms.map(({ term, meaning }) => (
        <div key={term} id={explainer.boxOf(term)} popover="auto" className={styles.box}>
          <p>
            <strong>{term}</strong>
          </p>
          <p>
            <HandText text={meaning} />
          </p>
          <button
            type="button"
            className="quiet"
            popoverTarget={explainer.boxOf(term)}
            popoverTargetAction="hide"
          >
            Close
          </button>
        </div>
      ))}
    </section>
  );
