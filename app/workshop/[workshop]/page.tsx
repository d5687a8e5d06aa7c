import type { Metadata } from 'next';
import { cache } from 'react';
import { headOfNothing, NothingHere } from '#app/lesson-page/nothing-here.tsx';
import {
  correctionsFeedPath,
  feedPath,
  lessonPath,
  momentLink,
  podcastPath,
  revisionPath,
  shelfPath,
} from '#app/lesson-page/page-addresses.ts';
import { SearchForm } from '#app/search/search-form.tsx';
import { searchQuery } from '#app/search/search-query.ts';
import { SearchResults } from '#app/search/search-results.tsx';
import { searchPublished } from '#lib/bench/search-lessons.ts';
import { database } from '#lib/data/database.ts';
import { findShelf, type ShelfLesson } from '#lib/data/revisions.ts';
import styles from './shelf.module.css';

interface ShelfProps {
  readonly params: Promise<{ workshop: string }>;
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}

const shelfOf = cache((workshop: string) => findShelf(database(), workshop));

export async function generateMetadata({ params }: Pick<ShelfProps, 'params'>): Promise<Metadata> {
  const { workshop } = await params;
  const shelf = await shelfOf(workshop);
  if (!shelf) return headOfNothing(null);
  return {
    title: shelf.name,
    description: shelf.about.slice(0, 300),
    alternates: {
      types: {
        'application/atom+xml': [
          { url: feedPath(workshop), title: `Lessons of ${shelf.name}` },
          { url: correctionsFeedPath(shelfPath(workshop)), title: `Corrections by ${shelf.name}` },
        ],
        'application/rss+xml': [{ url: podcastPath(workshop), title: `Recordings of ${shelf.name}` }],
      },
    },
  };
}

/** A workshop's published lessons, for everyone, and what is said in them. */
export default async function PublicWorkshop({ params, searchParams }: ShelfProps) {
  const { workshop } = await params;
  const shelf = await shelfOf(workshop);
  if (!shelf) return <NothingHere wanted={null} />;
  const { words, lesson: only } = searchQuery(await searchParams);
  const findings = words === '' ? null : await searchPublished(database(), workshop, words);
  return (
    <main className="page">
      <h1>{shelf.name}</h1>
      {shelf.about.trim() === '' ? null : <p className="reading">{shelf.about}</p>}
      {shelf.lessons.length > 0 && (
        <SearchForm where="what is said in these lessons" typed={words} page={shelfPath(workshop)} />
      )}
      {findings && (
        <SearchResults
          findings={findings}
          page={shelfPath(workshop)}
          only={only}
          placeOf={(lesson, { startMs }) => momentLink(lessonPath(workshop, lesson.slug), startMs)}
        />
      )}
      {shelf.lessons.length === 0 ? (
        <p className="soft">No lesson is published yet.</p>
      ) : (
        <ul className={styles.shelf}>
          {shelf.lessons.map((lesson) => (
            <LessonCard key={lesson.slug} workshop={workshop} lesson={lesson} />
          ))}
        </ul>
      )}
      <p className={`soft ${styles.feeds}`}>
        To hear of new lessons and corrections: <a href={feedPath(workshop)}>feed (Atom)</a>,{' '}
        <a href={correctionsFeedPath(shelfPath(workshop))}>corrections alone (Atom)</a>,{' '}
        <a href={podcastPath(workshop)}>recordings as a podcast (RSS)</a>
      </p>
    </main>
  );
}

const LessonCard = ({ workshop, lesson }: { readonly workshop: string; readonly lesson: ShelfLesson }) => {
  const minutes = (lesson.prepareMinutes ?? 0) + (lesson.makeMinutes ?? 0);
  const facts = [lesson.weave, lesson.difficulty, minutes > 0 ? `${minutes} min` : ''];
  return (
    <li>
      {lesson.hasPoster ? (
        // biome-ignore lint/performance/noImgElement: posters are stored at the size at which they are shown
        <img
          src={`${revisionPath(workshop, lesson.slug, lesson.number)}/poster.jpg`}
          alt=""
          loading="lazy"
          decoding="async"
        />
      ) : null}
      <div>
        <h2>
          <a href={lessonPath(workshop, lesson.slug)}>{lesson.title}</a>
        </h2>
        <p className="soft">{facts.filter((fact) => fact.trim() !== '').join(' · ')}</p>
        <p>{firstWords(lesson.summary)}</p>
      </div>
    </li>
  );
};

/** The first paragraph, cut at a word where it is long. */
const firstWords = (summary: string): string => {
  const [first = ''] = summary.split('\n\n');
  return first.length <= 220 ? first : `${first.slice(0, 220).replace(/\s+\S*$/, '')} …`;
};
