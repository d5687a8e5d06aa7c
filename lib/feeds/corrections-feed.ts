/** What was corrected in one lesson, or in all of a workshop, as an Atom feed (RFC 4287): one entry a published correction, which never changes. */
import { generateAtomFeed } from 'feedsmith';
import { feedText, finishFeed } from './published-lesson.ts';

/** A correction as its feed tells of it; every address is whole. */
export interface PublishedCorrection {
  /** Names the correction for good: its address under the first slug that its workshop had. */
  readonly id: string;
  /** Of the correction on its lesson page. */
  readonly address: string;
  /** Title of its lesson. */
  readonly lesson: string;
  readonly language: string;
  /** What it is about, in a few words: `said wrongly, at 1:02`. */
  readonly about: string;
  /** What was wrong, what is right, whom it concerns: a sentence each. */
  readonly sentences: readonly string[];
  /** When the revision that first carried it was published. */
  readonly published: Date;
}

export interface CorrectionsOf {
  /** Of the feed. */
  readonly title: string;
  /** Name of the workshop. */
  readonly author: string;
  /** Names the feed for good: its address under the first slug that its workshop had. */
  readonly id: string;
  /** The page that the feed belongs to. */
  readonly address: string;
  /** Of the feed itself. */
  readonly feedAddress: string;
  /** When the lesson or workshop had nothing to correct yet. */
  readonly begun: Date;
  /** Newest first. */
  readonly corrections: readonly PublishedCorrection[];
}

/** Corrections that a feed holds at most. */
const MOST = 100;

export function correctionsFeed({
  id,
  title,
  author,
  address,
  feedAddress,
  begun,
  corrections,
}: CorrectionsOf): string {
  return finishFeed(
    generateAtomFeed({
      // Not the page's own address: that is the id of the feed of lessons.
      id,
      title: { value: feedText(title) },
      updated: corrections[0]?.published ?? begun,
      authors: [{ name: feedText(author) }],
      links: [
        { rel: 'self', href: feedAddress, type: 'application/atom+xml' },
        { rel: 'alternate', href: address, type: 'text/html' },
      ],
      entries: corrections.slice(0, MOST).map((correction) => ({
        id: correction.id,
        title: { value: feedText(`${correction.lesson}: ${correction.about}`) },
        published: correction.published,
        updated: correction.published,
        summary: { value: feedText(correction.sentences.join('\n')) },
        links: [
          { rel: 'alternate', href: correction.address, type: 'text/html', hreflang: correction.language },
        ],
      })),
    }),
  );
}
