/**
 * A workshop's recordings as a podcast: RSS 2.0 with the podcast namespace's
 * transcripts and chapters. Lessons without a recording are not in it.
 */
import { generateRssFeed } from 'feedsmith';
import { type FeedOf, feedText, finishFeed, type PublishedLesson } from './published-lesson.ts';

export function podcastFeed(of: FeedOf): string {
  const cover = of.lessons.find(({ posterAddress }) => posterAddress !== null)?.posterAddress;
  return finishFeed(
    generateRssFeed({
      title: feedText(of.name),
      link: of.address,
      description: feedText(of.about.trim() || `Lessons of ${of.name}`),
      language: of.language,
      atom: { links: [{ rel: 'self', href: of.feedAddress, type: 'application/rss+xml' }] },
      itunes: {
        author: feedText(of.name),
        explicit: false,
        type: 'episodic',
        ...(cover ? { image: cover } : {}),
        categories: [{ text: 'Leisure', categories: [{ text: 'Crafts' }] }],
      },
      items: of.lessons.flatMap((lesson) => (lesson.recording ? [item(lesson, lesson.recording)] : [])),
    }),
  );
}

const item = (lesson: PublishedLesson, recording: NonNullable<PublishedLesson['recording']>) => ({
  title: feedText(lesson.title),
  link: lesson.address,
  guid: { value: lesson.id, isPermaLink: true },
  pubDate: lesson.firstPublished,
  description: feedText(lesson.summary.trim() || lesson.title),
  enclosures: [{ url: recording.address, length: recording.bytes, type: recording.mediaType }],
  itunes: {
    duration: Math.round(recording.durationMs / 1000),
    ...(lesson.posterAddress ? { image: lesson.posterAddress } : {}),
  },
  podcast: {
    transcripts: [
      { url: recording.captionsAddress, type: 'text/vtt', language: lesson.language, rel: 'captions' },
    ],
    chapters: { url: recording.chaptersAddress, type: 'application/json+chapters' },
  },
});
