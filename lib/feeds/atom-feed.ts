/** A workshop's lessons as an Atom feed (RFC 4287): an entry changes whenever a lesson's next revision is published. */
import { generateAtomFeed } from 'feedsmith';
import { type FeedOf, feedText, finishFeed, type PublishedLesson } from './published-lesson.ts';

/** When a workshop has published nothing yet, a feed must still state a day. */
const NOTHING_YET = new Date(0);

export function atomFeed(of: FeedOf): string {
  const updated = of.lessons
    .map((lesson) => lesson.lastPublished)
    .reduce((latest, day) => (day > latest ? day : latest), NOTHING_YET);
  return finishFeed(
    generateAtomFeed({
      id: of.id,
      title: { value: feedText(of.name) },
      ...(of.about.trim() === '' ? {} : { subtitle: { value: feedText(of.about) } }),
      updated,
      authors: [{ name: feedText(of.name) }],
      links: [
        { rel: 'self', href: of.feedAddress, type: 'application/atom+xml' },
        { rel: 'alternate', href: of.address, type: 'text/html' },
      ],
      entries: of.lessons.map(entry),
    }),
  );
}

const entry = (lesson: PublishedLesson) => ({
  id: lesson.id,
  title: { value: feedText(lesson.title) },
  published: lesson.firstPublished,
  updated: lesson.lastPublished,
  summary: { value: feedText([lesson.summary, ...corrected(lesson)].join('\n\n').trim() || lesson.title) },
  links: [
    { rel: 'alternate', href: lesson.address, type: 'text/html', hreflang: lesson.language },
    ...(lesson.recording
      ? [
          {
            rel: 'enclosure',
            href: lesson.recording.address,
            type: lesson.recording.mediaType,
            length: lesson.recording.bytes,
          },
        ]
      : []),
  ],
});

const corrected = ({ revision, corrections }: PublishedLesson): string[] =>
  revision === 1 ? [] : [[`Revision ${revision}.`, ...corrections].join('\n')];
