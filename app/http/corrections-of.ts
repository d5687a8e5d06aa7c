/** Gathers what a feed of corrections tells: of one lesson, or of all that a workshop has published. */
import {
  correctionAnchor,
  correctionsFeedPath,
  lessonPath,
  shelfPath,
} from '#app/lesson-page/page-addresses.ts';
import { correctionSentences } from '#app/words/correction-words.ts';
import { environment } from '#lib/config/environment.ts';
import { database } from '#lib/data/database.ts';
import { findPublicLesson, findPublicWorkshop, getRevision, type PublicLesson } from '#lib/data/revisions.ts';
import { firstSlug } from '#lib/data/workshop-slugs.ts';
import type { CorrectionsOf, PublishedCorrection } from '#lib/feeds/corrections-feed.ts';
import { correctionsNewestFirst } from '#lib/lesson/corrections.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';

/** Lessons of a workshop that are looked through, the ones published last. */
const MOST_LESSONS = 50;

/** Null where nothing is published there. */
export async function correctionsOfLesson(workshop: string, slug: string): Promise<CorrectionsOf | null> {
  const lesson = await findPublicLesson(database(), workshop, slug);
  const first = lesson?.revisions.at(-1);
  if (!lesson || !first) return null;
  const of = { now: workshop, first: await firstSlug(database(), workshop) };
  const { title, corrections } = await publishedCorrections(of, lesson);
  return {
    ...addressesOf(lessonPath(workshop, slug), lessonPath(of.first, slug)),
    title: `Corrections of ${title}`,
    author: lesson.workshop.name,
    begun: first.publishedAt,
    corrections,
  };
}

/** Null where there is no such workshop. */
export async function correctionsOfWorkshop(slug: string): Promise<CorrectionsOf | null> {
  const workshop = await findPublicWorkshop(database(), slug);
  if (!workshop) return null;
  const first = await firstSlug(database(), slug);
  const corrections: PublishedCorrection[] = [];
  // One after the other: documents are large, and a feed is not urgent.
  for (const lesson of workshop.lessons.slice(0, MOST_LESSONS))
    corrections.push(...(await publishedCorrections({ now: slug, first }, lesson)).corrections);
  return {
    ...addressesOf(shelfPath(slug), shelfPath(first)),
    title: `Corrections by ${workshop.name}`,
    author: workshop.name,
    // A feed must state a day even where nothing is published yet.
    begun: workshop.lessons.at(-1)?.revisions.at(-1)?.publishedAt ?? new Date(0),
    corrections: corrections.toSorted((one, other) => other.published.getTime() - one.published.getTime()),
  };
}

/** @param first the path as it was under the first slug of the workshop */
function addressesOf(path: string, first: string): Pick<CorrectionsOf, 'id' | 'address' | 'feedAddress'> {
  const site = environment().BENCHLEAF_ADDRESS;
  return {
    id: `${site}${correctionsFeedPath(first)}`,
    address: `${site}${path}`,
    feedAddress: `${site}${correctionsFeedPath(path)}`,
  };
}

async function publishedCorrections(
  workshop: { readonly now: string; readonly first: string },
  { slug, revisions }: Pick<PublicLesson, 'slug' | 'revisions'>,
): Promise<{ readonly title: string; readonly corrections: readonly PublishedCorrection[] }> {
  const [latest] = revisions;
  if (!latest) throw new Error(`Lesson ${slug} counts as published and has no revision.`);
  const { content } = await getRevision(database(), latest.id);
  const site = environment().BENCHLEAF_ADDRESS;
  const place = (workshopSlug: string, id: string): string =>
    `${site}${lessonPath(workshopSlug, slug)}#${correctionAnchor(id)}`;
  const corrections = correctionsNewestFirst(content.corrections).flatMap((correction) => {
    const published = revisions.find(({ number }) => number === correction.revision)?.publishedAt;
    if (!published) return [];
    const at = correction.startMs === null ? '' : `, at ${formatTimeCode(correction.startMs)}`;
    return [
      {
        id: place(workshop.first, correction.id),
        address: place(workshop.now, correction.id),
        lesson: content.title,
        language: content.language,
        about: `${correction.kind}${at}`,
        sentences: correctionSentences(correction),
        published,
      },
    ];
  });
  return { title: content.title, corrections };
}
