/** Where in a workshop's lessons the sought words are said, each place leading to its second. */

import type { Findings, FoundLesson } from '#lib/bench/search-lessons.ts';
import { markSought } from '#lib/search/marks.ts';
import type { Passage } from '#lib/search/passages.ts';
import type { Sought } from '#lib/search/sought.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';
import styles from './search.module.css';

interface SearchResultsProps {
  readonly findings: Findings;
  /** The page without its search. */
  readonly page: string;
  /** The one lesson of which all places are shown, by its id; else the first few of each are. */
  readonly only: string | null;
  readonly placeOf: (lesson: FoundLesson, passage: Passage) => string;
}

const FIRST_FEW = 5;
/** More places of one lesson than this are not shown: the words say too little. */
const MOST_SHOWN = 200;

export function SearchResults({ findings, page, only, placeOf }: SearchResultsProps) {
  const { sought, lessons } = findings;
  const shown = only === null ? lessons : lessons.filter(({ id }) => id === only);
  const places = shown.reduce((sum, { passages }) => sum + passages.length, 0);
  return (
    <section aria-labelledby="found-heading" className={styles.found}>
      <div className={styles.foundTop}>
        <h2 id="found-heading">{headingOf(findings, places, shown.length)}</h2>
        <a href={only === null ? page : `${page}?words=${encodeURIComponent(sought.typed)}`}>
          {only === null ? 'Clear the search' : 'Search all lessons'}
        </a>
      </div>
      {places === 0 && (
        <p className="soft">
          {findings.findable
            ? 'All the words must be said within 20 seconds of each other. Try fewer, or another form of a word.'
            : 'These words are in every sentence. Add one that names something.'}
        </p>
      )}
      {findings.cut && (
        <p className="soft">
          These words are said so often that not every place was looked at. Add a word that is said less
          often.
        </p>
      )}
      {shown.map((lesson) => (
        <FoundIn
          key={lesson.id}
          lesson={lesson}
          sought={sought}
          most={only === null ? FIRST_FEW : MOST_SHOWN}
          more={`${page}?words=${encodeURIComponent(sought.typed)}&lesson=${encodeURIComponent(lesson.id)}`}
          placeOf={placeOf}
        />
      ))}
    </section>
  );
}

function headingOf({ sought }: Findings, places: number, lessons: number): string {
  const words = `“${sought.typed}”`;
  if (places === 0) return `${words} was not found`;
  const where = lessons === 1 ? 'one lesson' : `${lessons} lessons`;
  return places === 1 ? `${words}: one place` : `${words}: ${places} places in ${where}`;
}

interface FoundInProps extends Pick<SearchResultsProps, 'placeOf'> {
  readonly lesson: FoundLesson;
  readonly sought: Sought;
  readonly most: number;
  readonly more: string;
}

function FoundIn({ lesson, sought, most, more, placeOf }: FoundInProps) {
  const shown = lesson.passages.slice(0, most);
  return (
    <article className={styles.lesson}>
      <h3>{lesson.title || 'Lesson without a title'}</h3>
      <ol className={styles.places}>
        {shown.map((passage) => (
          <li key={`${passage.kind} ${passage.startMs} ${passage.text}`}>
            <a href={placeOf(lesson, passage)}>
              <span className={styles.time}>{formatTimeCode(passage.startMs)}</span>
              <span className={passage.kind === 'chapter' ? styles.chapter : styles.said}>
                {passage.kind === 'chapter' && <span className="label">Chapter</span>}{' '}
                <Marked text={passage.text} sought={sought} />
              </span>
            </a>
          </li>
        ))}
      </ol>
      {lesson.passages.length > shown.length && most === FIRST_FEW && (
        <a href={more} className={styles.more}>
          All {lesson.passages.length} places<span className="unseen"> in {lesson.title}</span>
        </a>
      )}
    </article>
  );
}

const Marked = ({ text, sought }: { readonly text: string; readonly sought: Sought }) =>
  markSought(text, sought).map((piece, index) =>
    piece.sought ? (
      // biome-ignore lint/suspicious/noArrayIndexKey: pieces of one text never move
      <mark key={index} className={styles.mark}>
        {piece.text}
      </mark>
    ) : (
      piece.text
    ),
  );
