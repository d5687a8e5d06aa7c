import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { correctionsFeedPath, lessonPath, publicAddresses } from '#app/lesson-page/page-addresses.ts';
import { lessonRead, type Query, ShowLesson } from '#app/lesson-page/show-lesson.tsx';
import { SOCIAL } from '#app/pictures/make-png.ts';
import { environment } from '#lib/config/environment.ts';
import { mayBePictured } from '#lib/lesson/lesson-pictures.ts';

interface LessonProps {
  readonly params: Promise<{ workshop: string; lesson: string }>;
  readonly searchParams: Promise<Query>;
}

export async function generateMetadata({ params }: LessonProps): Promise<Metadata> {
  const { workshop, lesson } = await params;
  const read = await lessonRead(workshop, lesson, null, null);
  if (!read) notFound();
  const { content, number } = read.revision;
  const { title, summary } = content;
  const description = summary.slice(0, 300);
  const site = environment().BENCHLEAF_ADDRESS;
  const url = `${site}${lessonPath(workshop, lesson)}`;
  const { picture } = publicAddresses(workshop, lesson, number, 'latest');
  // Open Graph protocol, ogp.me: what is shown where the address is passed on.
  const images = mayBePictured(content)
    ? [{ url: `${site}${picture('social', 'png')}`, ...SOCIAL, alt: `The weave of ${title}, drawn.` }]
    : [];
  return {
    title,
    description,
    alternates: {
      canonical: url,
      types: {
        'application/atom+xml': [
          { url: correctionsFeedPath(lessonPath(workshop, lesson)), title: `Corrections of ${title}` },
        ],
      },
    },
    openGraph: { title, description, url, type: 'article', images },
  };
}

/** The latest revision of a lesson, for everyone. */
export default async function PublicLesson({ params, searchParams }: LessonProps) {
  return <ShowLesson {...(await params)} number={null} query={await searchParams} />;
}
