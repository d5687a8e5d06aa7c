import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { cache } from 'react';
import { lessonPath, revisionPath } from '#app/lesson-page/page-addresses.ts';
import { database } from '#lib/data/database.ts';
import { findShelf, type ShelfLesson } from '#lib/data/revisions.ts';
import styles from './shelf.module.css';

interface ShelfProps {
  readonly params: Promise<{ workshop: string }>;
}

const shelfOf = cache((workshop: string) => findShelf(database(), workshop));

export async function generateMetadata({ params }: ShelfProps): Promise<Metadata> {
  const shelf = await shelfOf((await params).workshop);
  if (!shelf) notFound();
  return { title: shelf.name, description: shelf.about.slice(0, 300) };
}

/** A workshop's published lessons, for everyone. */
export default async function PublicWorkshop({ params }: ShelfProps) {
  const { workshop } = await params;
  const shelf = await shelfOf(workshop);
  if (!shelf) notFound();
  return (
    <main className="page">
      <h1>{shelf.name}</h1>
      {shelf.about.trim() === '' ? null : <p className="reading">{shelf.about}</p>}
      {shelf.lessons.length === 0 ? (
        <p className="soft">No lesson is published yet.</p>
      ) : (
        <ul className={styles.shelf}>
          {shelf.lessons.map((lesson) => (
            <LessonCard key={lesson.slug} workshop={workshop} lesson={lesson} />
          ))}
        </ul>
      )}
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
