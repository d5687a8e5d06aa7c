import type { Metadata } from 'next';
import Link from 'next/link';
import { memberPage } from '#app/http/member-page.ts';
import { SearchForm } from '#app/search/search-form.tsx';
import { searchQuery } from '#app/search/search-query.ts';
import { SearchResults } from '#app/search/search-results.tsx';
import { dayOf } from '#app/words/days.ts';
import { roleSuffices } from '#lib/access/caller.ts';
import { findWorkshopsOf } from '#lib/access/session.ts';
import { openBench } from '#lib/bench/bench.ts';
import { DEMO_WORKSHOP_SLUG } from '#lib/bench/demo-workshop.ts';
import { searchDrafts } from '#lib/bench/search-lessons.ts';
import { findLessons, type ListedLesson } from '#lib/data/lesson-list.ts';
import { BringInCopy } from './bring-in-copy.client.tsx';
import { CreateLessonForm } from './create-lesson-form.client.tsx';
import { DeleteLesson } from './delete-lesson.client.tsx';
import styles from './lesson-list.module.css';

export const metadata: Metadata = { title: 'Lessons' };

export default async function LessonsPage({ params, searchParams }: PageProps<'/bench/[workshop]'>) {
  const { workshop: slug } = await params;
  const at = await memberPage(slug, 'viewer');
  const { db } = openBench();
  const lessons = await findLessons(db, at.workshop.id);
  const { words, lesson: only } = searchQuery(await searchParams);
  const findings = words === '' ? null : await searchDrafts(db, at.workshop.id, words);
  const page = `/bench/${encodeURIComponent(slug)}`;
  const edits = roleSuffices(at.role, 'editor');
  const seesDemo = (await findWorkshopsOf(at.caller)).some((own) => own.slug === DEMO_WORKSHOP_SLUG);
  const showsDemo = lessons.length === 0 && slug !== DEMO_WORKSHOP_SLUG && seesDemo;
  return (
    <main className="page">
      <div className={styles['top']}>
        <div>
          <h1>Lessons</h1>
          <p className="soft">
            Pupils see published ones on{' '}
            <Link href={`/workshop/${slug}`}>the page of {at.workshop.name}</Link>.
          </p>
        </div>
        {edits && <CreateLessonForm workshop={slug} first={lessons.length === 0} />}
      </div>
      {lessons.length > 0 && (
        <div className={styles['search']}>
          <SearchForm where="all transcripts and chapters" typed={words} page={page} />
        </div>
      )}
      {findings && (
        <SearchResults
          findings={findings}
          page={page}
          only={only}
          placeOf={({ id }, passage) => `${page}/lessons/${id}/transcript#${encodeURIComponent(passage.id)}`}
        />
      )}
      {lessons.length === 0 ? (
        <div className="panel">
          <h2>No lesson yet</h2>
          <p>
            {edits
              ? 'A lesson begins with a title; then bring in its recording or its transcript, whichever you have first.'
              : 'Here the lessons of this workshop will stand, once an editor begins one.'}
          </p>
          {showsDemo && (
            <p>
              You are an owner of the <Link href={`/bench/${DEMO_WORKSHOP_SLUG}`}>demo workshop</Link> too:
              look behind its lesson to see what one holds.
            </p>
          )}
        </div>
      ) : (
        <ul className={styles['lessons']}>
          {lessons.map((lesson) => (
            <li key={lesson.id} className={styles['lesson']}>
              <div>
                <h2>
                  <Link href={placeOf(slug, lesson)}>{lesson.title || 'Lesson without a title'}</Link>
                </h2>
                <p className={styles['state']}>
                  <StateOf lesson={lesson} />
                  <span className="soft">
                    Changed <time dateTime={lesson.changedAt.toISOString()}>{dayOf(lesson.changedAt)}</time>
                  </span>
                </p>
              </div>
              <div className={styles['doings']}>
                {lesson.published && (
                  <Link className="button quiet" href={`/workshop/${slug}/lesson/${lesson.slug}`}>
                    Lesson page<span className="unseen"> of {lesson.title}</span>
                  </Link>
                )}
                {(lesson.published ? at.role === 'owner' : edits) && (
                  <DeleteLesson workshop={slug} id={lesson.id} title={lesson.title} holds={lesson.holds} />
                )}
              </div>
            </li>
          ))}
        </ul>
      )}
      {edits && <BringInCopy workshop={slug} />}
    </main>
  );
}

function StateOf({ lesson: { published, changedSince } }: { lesson: ListedLesson }) {
  if (!published) return <span className={styles['draft']}>Draft</span>;
  return (
    <>
      <span className={styles['published']}>Published, revision {published.number}</span>
      {changedSince && <span className={styles['changed']}>Changed since</span>}
    </>
  );
}

/** Where work on a lesson goes on: nothing is there yet, or there is something to read. */
const placeOf = (slug: string, { id, holds }: ListedLesson): string =>
  `/bench/${slug}/lessons/${id}/${holds.recordings + holds.cues === 0 ? 'bring-in' : 'transcript'}`;
