import type { Metadata } from 'next';
import { numberOfAddress } from '#app/http/with-revision.ts';
import { headOfNothing, NothingHere } from '#app/lesson-page/nothing-here.tsx';
import { lessonRead, type Query, revisionTitle, ShowLesson } from '#app/lesson-page/show-lesson.tsx';

interface RevisionProps {
  readonly params: Promise<{ workshop: string; lesson: string; number: string }>;
  readonly searchParams: Promise<Query>;
}

export async function generateMetadata({ params }: RevisionProps): Promise<Metadata> {
  const { workshop, lesson, number } = await params;
  const wanted = numberOfAddress(number);
  const read = wanted === null ? null : await lessonRead(workshop, lesson, wanted, null);
  if (!read) return headOfNothing({ workshop, lesson });
  // Searching people are led to the latest revision.
  return { title: revisionTitle(read), robots: { index: false } };
}

/** One revision of a lesson, for everyone. */
export default async function PublicRevision({ params, searchParams }: RevisionProps) {
  const { workshop, lesson, number } = await params;
  const wanted = numberOfAddress(number);
  if (wanted === null) return <NothingHere wanted={{ workshop, lesson }} />;
  return <ShowLesson workshop={workshop} lesson={lesson} number={wanted} query={await searchParams} />;
}
