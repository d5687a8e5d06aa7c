/** Gathers what a workshop's feeds tell: its published lessons with the addresses of their files. */
import { lessonPath, publicAddresses, shelfPath } from '#app/lesson-page/page-addresses.ts';
import { environment } from '#lib/config/environment.ts';
import { database } from '#lib/data/database.ts';
import { findPublicWorkshop, getRevision, type PublicLesson } from '#lib/data/revisions.ts';
import { firstSlug } from '#lib/data/workshop-slugs.ts';
import type { FeedOf, PublishedLesson } from '#lib/feeds/published-lesson.ts';
import type { Content } from '#lib/lesson/content.ts';
import { correctionsNewestFirst } from '#lib/lesson/corrections.ts';
import type { FrozenRecording } from '#lib/lesson/revision.ts';
import { openStorage } from '#lib/storage/open-storage.ts';

/** Lessons that a feed holds at most, the ones published last. */
const MOST_LESSONS = 50;

/** @param path of the feed itself @returns null where there is no such workshop */
export async function feedOf(slug: string, path: string): Promise<FeedOf | null> {
  const workshop = await findPublicWorkshop(database(), slug);
  if (!workshop) return null;
  const site = environment().BENCHLEAF_ADDRESS;
  const first = await firstSlug(database(), slug);
  const lessons: PublishedLesson[] = [];
  // One after the other: documents are large, and a feed is not urgent.
  for (const lesson of workshop.lessons.slice(0, MOST_LESSONS)) {
    lessons.push(await publishedLesson(site, { now: slug, first }, lesson));
  }
  const { name, about, language } = workshop;
  return {
    name,
    about,
    language,
    id: `${site}${shelfPath(first)}`,
    address: `${site}${shelfPath(slug)}`,
    feedAddress: `${site}${path}`,
    lessons,
  };
}

async function publishedLesson(
  site: string,
  workshop: { readonly now: string; readonly first: string },
  { slug, revisions }: Pick<PublicLesson, 'slug' | 'revisions'>,
): Promise<PublishedLesson> {
  const [latest] = revisions;
  const first = revisions.at(-1);
  if (!latest || !first) throw new Error(`Lesson ${slug} counts as published and has no revision.`);
  const { content, recording } = await getRevision(database(), latest.id);
  const files = publicAddresses(workshop.now, slug, latest.number, 'latest');
  return {
    id: `${site}${lessonPath(workshop.first, slug)}`,
    address: `${site}${lessonPath(workshop.now, slug)}`,
    title: content.title,
    summary: content.summary,
    language: content.language,
    firstPublished: first.publishedAt,
    lastPublished: latest.publishedAt,
    revision: latest.number,
    corrections: correctionsNewestFirst(content.corrections).map(correctionSentence),
    recording: recording && (await recordingFile(site, files, recording)),
    posterAddress: recording?.posterKey ? `${site}${files.poster}` : null,
  };
}

async function recordingFile(
  site: string,
  files: ReturnType<typeof publicAddresses>,
  { mediaKey, mediaType, durationMs }: FrozenRecording,
): Promise<PublishedLesson['recording']> {
  return {
    address: `${site}${files.recording}`,
    mediaType,
    bytes: (await openStorage().size(mediaKey)) ?? 0,
    durationMs,
    captionsAddress: `${site}${files.textFile('captions.vtt')}`,
    chaptersAddress: `${site}${files.textFile('chapters.json')}`,
  };
}

const correctionSentence = ({ wrong, right, affects }: Content['corrections'][number]): string =>
  [
    `Corrected: “${wrong}” Right: “${right}”`,
    ...(affects.trim() === '' ? [] : [`Concerns: ${affects.trim()}`]),
  ].join(' ');
