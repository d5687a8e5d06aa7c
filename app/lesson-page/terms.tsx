/**
 * Terms explained where they occur: a word to press opens its meaning, and all
 * of them stand together further down. The browser does both without script.
 */
import { type ExplainedTerm, type TermPlace, termFinder } from '#lib/glossary/explained-term.ts';
import { HandText } from './hand-text.tsx';
import { TERM_BOX } from './term-box.ts';
import styles from './terms.module.css';

export interface Explainer {
  /** The first place of every term in a text. */
  readonly places: (text: string) => readonly TermPlace[];
  /** The same for texts that are read one after the other: a term is explained in the first that has it. */
  readonly placesInAll: (texts: readonly string[]) => readonly (readonly TermPlace[])[];
  /** Id of the box that opens. */
  readonly boxOf: (term: string) => string;
}

type Find = ReturnType<typeof termFinder>;
/** Finders of revisions that are in memory, with what they found: a long transcript takes a tenth of a second to go through. */
const finders = new WeakMap<readonly ExplainedTerm[], Find>();

function finderOf(terms: readonly ExplainedTerm[]): Find {
  const known = finders.get(terms);
  if (known) return known;
  const find = termFinder(terms);
  const found = new Map<string, readonly TermPlace[]>();
  const finder: Find = (text) => {
    const places = found.get(text) ?? find(text);
    found.set(text, places);
    return places;
  };
  finders.set(terms, finder);
  return finder;
}

export function explainerOf(terms: readonly ExplainedTerm[]): Explainer {
  const find = finderOf(terms);
  const numbers = new Map(terms.map(({ term }, index) => [term, index + 1]));
  const placesInAll: Explainer['placesInAll'] = (texts) => {
    const met = new Set<string>();
    return texts.map((text) => find(text).filter(({ term }) => !met.has(term) && met.add(term)));
  };
  return {
    places: (text) => placesInAll([text])[0] ?? [],
    placesInAll,
    boxOf: (term) => `${TERM_BOX}${numbers.get(term)}`,
  };
}

interface TermTextProps {
  readonly text: string;
  readonly explainer: Explainer;
}

/** A text whose terms can be pressed; words of hand turn round in it as elsewhere, unless it is what somebody said. */
export const TermText = ({
  text,
  explainer,
  places = explainer.places(text),
  isSpeech = false,
}: TermTextProps & {
  readonly places?: readonly TermPlace[] | undefined;
  readonly isSpeech?: boolean;
}) => {
  let at = 0;
  const part = (from: number, to?: number) =>
    isSpeech ? (
      text.slice(from, to)
    ) : (
      <HandText text={text} from={from} {...(to === undefined ? {} : { to })} />
    );
  return (
    <>
      {places.map(({ start, end, term }) => {
        const from = at;
        at = end;
        return (
          <span key={start}>
            {part(from, start)}
            <button type="button" className={styles.term} popoverTarget={explainer.boxOf(term)}>
              {part(start, end)}
            </button>
          </span>
        );
      })}
      {part(at)}
    </>
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
