import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { memberPage } from '#app/http/member-page.ts';
import { LessonPage } from '#app/lesson-page/lesson-page.tsx';
import { lessonPath, type PageAddresses, revisionPath, shelfPath } from '#app/lesson-page/page-addresses.ts';
import type { Query } from '#app/lesson-page/show-lesson.tsx';
import { toBePictured } from '#app/pictures/own-shapes.ts';
import { openLesson } from '#lib/bench/open-lesson.ts';
import { readPreview } from '#lib/bench/read-preview.ts';
import { database } from '#lib/data/database.ts';
import { fragmentOfQuery, measureOfQuery } from '#lib/lesson/asked-measure.ts';

interface PreviewProps {
  readonly params: Promise<{ workshop: string; lesson: string }>;
  readonly searchParams: Promise<Query>;
}

export const metadata: Metadata = { title: 'Preview', robots: { index: false } };

/**
 * The draft as its page would look, for members of the workshop; outside the
 * bench, whose head no pupil sees. In a frame (`?framed`) it does not say that
 * it is a preview: the bench says it around it.
 */
export default async function Preview({ params, searchParams }: PreviewProps) {
  const { workshop, lesson } = await params;
  const membership = await memberPage(workshop, 'viewer');
  const opened = await openLesson(membership, lesson);
  if (!opened) notFound();
  const read = await readPreview(database(), {
    workshop: membership.workshop,
    lessonId: opened.id,
    number: (opened.published ?? 0) + 1,
  });
  if (!read) notFound();
  const revision = { ...read, content: await toBePictured(read.content) };
  const { slug } = membership.workshop;
  const api = `/api/workshops/${encodeURIComponent(slug)}/lessons/${encodeURIComponent(opened.id)}`;
  const recording = `${api}/recordings/${encodeURIComponent(revision.recording?.id ?? '')}`;
  const addresses: PageAddresses = {
    page: `/draft/${encodeURIComponent(slug)}/${encodeURIComponent(opened.id)}`,
    latest: lessonPath(slug, opened.slug),
    shelf: shelfPath(slug),
    recording: `${recording}/media`,
    poster: `${recording}/poster`,
    textFile: (name) => `${api}/exports/${name}`,
    // Made of what is published only; the preview has none to link to.
    madeFile: () => '',
    annotations: null,
    description: null,
    sheet: `${api}/sheet.pdf`,
    kitFiles: null,
    still: (_of, atMs) => `${recording}/stills/${atMs}`,
    picture: (of, form = 'svg') => `${api}/pictures/${encodeURIComponent(of)}.${form}`,
    revision: (number) => revisionPath(slug, opened.slug, number),
  };
  const query = await searchParams;
  return (
    <LessonPage
      revision={revision}
      madeFiles={[]}
      poster={revision.recording?.posterKey ? addresses.poster : null}
      addresses={addresses}
      latest={null}
      previewFor={'framed' in query ? null : 'members of the workshop'}
      asked={measureOfQuery(query, revision.content)}
      held={null}
      earlier={[]}
      history={[]}
      playAt={fragmentOfQuery(query)}
    />
  );
}
