import type { Metadata } from 'next';
import { headOfNothing } from '#app/lesson-page/nothing-here.tsx';
import { correctionsFeedPath, lessonPath, oEmbedPath } from '#app/lesson-page/page-addresses.ts';
import { lessonRead, type Query, ShowLesson } from '#app/lesson-page/show-lesson.tsx';
import { environment } from '#lib/config/environment.ts';

interface LessonProps {
  readonly params: Promise<{ workshop: string; lesson: string }>;
  readonly searchParams: Promise<Query>;
}

export async function generateMetadata({ params }: LessonProps): Promise<Metadata> {
  const { workshop, lesson } = await params;
  const read = await lessonRead(workshop, lesson, null, null);
  if (!read) return headOfNothing({ workshop, lesson });
  const { title, summary } = read.revision.content;
  const page = `${environment().BENCHLEAF_ADDRESS}${lessonPath(workshop, lesson)}`;
  return {
    title,
    description: summary.slice(0, 300),
    alternates: {
      canonical: page,
      types: {
        'application/atom+xml': [
          { url: correctionsFeedPath(lessonPath(workshop, lesson)), title: `Corrections of ${title}` },
        ],
        'application/json+oembed': [{ url: `${environment().BENCHLEAF_ADDRESS}${oEmbedPath(page)}`, title }],
      },
    },
  };
}

/** The latest revision of a lesson, for everyone. */
export default async function PublicLesson({ params, searchParams }: LessonProps) {
  return <ShowLesson {...(await params)} number={null} query={await searchParams} />;
}
