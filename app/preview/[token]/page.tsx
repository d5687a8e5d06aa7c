import type { Metadata } from 'next';
import { previewOf } from '#app/http/with-preview.ts';
import { LessonPage } from '#app/lesson-page/lesson-page.tsx';
import { NothingHere } from '#app/lesson-page/nothing-here.tsx';
import { lessonPath, type PageAddresses, revisionPath, shelfPath } from '#app/lesson-page/page-addresses.ts';
import type { Query } from '#app/lesson-page/show-lesson.tsx';
import { toBePictured } from '#app/pictures/own-shapes.ts';
import { fragmentOfQuery, measureOfQuery } from '#lib/lesson/asked-measure.ts';

interface SecretPreviewProps {
  readonly params: Promise<{ token: string }>;
  readonly searchParams: Promise<Query>;
}

export const metadata: Metadata = {
  title: 'Preview',
  robots: { index: false, follow: false },
  referrer: 'no-referrer',
};

/** The draft as its page would look, for whoever was given the address. */
export default async function SecretPreview({ params, searchParams }: SecretPreviewProps) {
  const { token } = await params;
  const found = await previewOf(token);
  if (!found) return <NothingHere wanted={null} />;
  const { of } = found;
  const revision = { ...found.revision, content: await toBePictured(found.revision.content) };
  const page = `/preview/${encodeURIComponent(token)}`;
  const addresses: PageAddresses = {
    page,
    latest: lessonPath(of.workshop.slug, of.lessonSlug),
    shelf: shelfPath(of.workshop.slug),
    recording: `${page}/recording`,
    poster: `${page}/poster.jpg`,
    textFile: (name) => `${page}/${name}`,
    // Made of what is published only; the preview has none to link to.
    madeFile: () => '',
    annotations: null,
    description: null,
    sheet: `${page}/sheet.pdf`,
    kitFiles: null,
    still: (_of, atMs) => `${page}/stills/${atMs}`,
    picture: (id, form = 'svg') => `${page}/pictures/${encodeURIComponent(id)}.${form}`,
    revision: (number) => revisionPath(of.workshop.slug, of.lessonSlug, number),
  };
  const query = await searchParams;
  return (
    <LessonPage
      revision={revision}
      madeFiles={[]}
      poster={revision.recording?.posterKey ? addresses.poster : null}
      addresses={addresses}
      latest={null}
      previewFor="whoever has its secret address"
      asked={measureOfQuery(query, revision.content)}
      held={null}
      earlier={[]}
      history={[]}
      playAt={fragmentOfQuery(query)}
    />
  );
}
