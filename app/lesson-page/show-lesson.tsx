/** Reads a public lesson page for an address and shows it, or answers that there is none. */
import { cache } from 'react';
import { SOCIAL } from '#app/pictures/make-png.ts';
import { toBePictured } from '#app/pictures/own-shapes.ts';
import { type LessonPageRead, readLessonPage } from '#lib/bench/read-lesson-page.ts';
import { environment } from '#lib/config/environment.ts';
import { database } from '#lib/data/database.ts';
import { fragmentOfQuery, heldOfQuery, measureOfQuery } from '#lib/lesson/asked-measure.ts';
import { mayBePictured } from '#lib/lesson/lesson-pictures.ts';
import { CARD_SIZE, MADE_FILES } from '#lib/lesson/made-files.ts';
import { jsonForScript, structuredData } from '#lib/lesson/structured-data.ts';
import { openStorage } from '#lib/storage/open-storage.ts';
import { LessonPage } from './lesson-page.tsx';
import { posterOf } from './light-poster.ts';
import { type LinkPicture, LinkPreview } from './link-preview.tsx';
import { NothingHere } from './nothing-here.tsx';
import { momentLink, type PageAddresses, publicAddresses, reportedOfQuery } from './page-addresses.ts';

/** The same read serves a page and its head. */
export const lessonRead = cache(
  (workshop: string, lesson: string, number: number | null, held: number | null) =>
    readLessonPage(database(), { workshop, lesson, number, held }),
);

/** The title of a revision's own page. */
export const revisionTitle = ({ revision, latest }: Pick<LessonPageRead, 'revision' | 'latest'>): string =>
  `${revision.content.title}, ${revision.number < latest ? 'earlier revision' : 'revision'} ${revision.number}`;

export type Query = Readonly<Record<string, string | string[] | undefined>>;

interface ShowLessonProps {
  readonly workshop: string;
  readonly lesson: string;
  readonly number: number | null;
  readonly query: Query;
}

export async function ShowLesson({ workshop, lesson, number, query }: ShowLessonProps) {
  const read = await lessonRead(workshop, lesson, number, heldOfQuery(query));
  if (!read) return <NothingHere wanted={{ workshop, lesson }} />;
  const revision = { ...read.revision, content: await toBePictured(read.revision.content) };
  const addresses = publicAddresses(
    workshop,
    lesson,
    revision.number,
    number === null ? 'latest' : 'revision',
  );
  const site = environment().BENCHLEAF_ADDRESS;
  const firstPublished = (read.history.at(-1)?.publishedAt ?? new Date(revision.publishedAt)).toISOString();
  const places = {
    page: `${site}${addresses.page}`,
    shelf: `${site}${addresses.shelf}`,
    recording: `${site}${addresses.recording}`,
    captions: `${site}${addresses.textFile('captions.vtt')}`,
    still: (of: string) => `${site}${addresses.still(of, 0)}`,
    poster: revision.recording?.posterKey ? `${site}${addresses.poster}` : null,
    pageAt: (atMs: number) => `${site}${momentLink(addresses.page, atMs)}`,
  };
  return (
    <>
      <LinkPreview
        revision={revision}
        page={places.page}
        title={number === null ? revision.content.title : revisionTitle(read)}
        recording={revision.recording ? places.recording : null}
        picture={linkPicture({ ...read, revision }, site, addresses)}
      />
      <LessonPage
        revision={revision}
        madeFiles={read.madeFiles}
        poster={
          await posterOf(
            openStorage(),
            { posterKey: revision.recording?.posterKey ?? null, madeFiles: read.madeFiles },
            addresses,
          )
        }
        addresses={addresses}
        latest={read.latest}
        asked={measureOfQuery(query, revision.content)}
        held={read.held}
        earlier={read.earlier}
        history={read.history}
        playAt={fragmentOfQuery(query)}
        reported={reportedOfQuery(query['reported'])}
      />
      <script
        type="application/ld+json"
        // biome-ignore lint/security/noDangerouslySetInnerHtml: a data block; jsonForScript lets nothing close it
        dangerouslySetInnerHTML={{ __html: jsonForScript(structuredData(revision, places, firstPublished)) }}
      />
    </>
  );
}

/** The card, as soon as the worker has drawn it; until then the poster, or the weave. */
function linkPicture(
  { revision: { recording, content }, madeFiles }: LessonPageRead,
  site: string,
  addresses: PageAddresses,
): LinkPicture | null {
  if (madeFiles.some(({ name, state }) => name === 'card.png' && state === 'ready'))
    return {
      address: `${site}${addresses.madeFile('card.png')}`,
      type: MADE_FILES['card.png'],
      ...CARD_SIZE,
      text: recording?.posterKey
        ? `${content.title}, beside a picture from its recording`
        : `${content.title}, beside a picture of the weave`,
    };
  if (!recording?.posterKey) {
    return mayBePictured(content)
      ? {
          address: `${site}${addresses.picture('social', 'png')}`,
          type: 'image/png',
          ...SOCIAL,
          text: `The weave of ${content.title}, drawn`,
        }
      : null;
  }
  return {
    address: `${site}${addresses.poster}`,
    type: 'image/jpeg',
    width: recording.width,
    height: recording.height,
    text: `A picture from the recording of ${content.title}`,
  };
}
