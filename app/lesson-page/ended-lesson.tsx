/** What the addresses of a deleted lesson answer: its page and revisions, and the code on a kit's label. */
import { dayOf } from '#app/words/days.ts';
import type { EndedLesson as Ended } from '#lib/data/ended-lessons.ts';
import styles from './held-kit.module.css';
import { shelfPath } from './page-addresses.ts';

interface EndedLessonProps {
  readonly ended: Ended;
  /** Number of the revision that a kit was packed by; null on other addresses. */
  readonly kitOf: number | null;
}

export const EndedLesson = ({ ended: { title, endedAt, workshop }, kitOf }: EndedLessonProps) => (
  <main className={`page ${styles.page}`}>
    <h1>{kitOf === null ? title : 'Your kit'}</h1>
    {kitOf === null ? null : (
      <p>
        It was packed by revision {kitOf} of “{title}”.
      </p>
    )}
    <div className="notice caution">
      <p>
        <strong>This lesson has ended.</strong> {workshop.name} took it away on {dayOf(endedAt)}; its pages,
        sheets and captions are not here any more.
      </p>
      {kitOf === null ? null : (
        <p>
          Whether something in your kit should differ by now cannot be told. What was packed stands on the
          insert that came with it.
        </p>
      )}
    </div>
    <p>
      Ask <a href={shelfPath(workshop.slug)}>{workshop.name}</a>
      {kitOf === null ? '' : `, and name revision ${kitOf}`}.
    </p>
  </main>
);
