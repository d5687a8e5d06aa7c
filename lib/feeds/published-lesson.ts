/** A published lesson as feeds tell of it; every address is whole. */
export interface PublishedLesson {
  /** Names the lesson for good: the address of its page under the first slug that its workshop had. */
  readonly id: string;
  /** The lesson page. */
  readonly address: string;
  readonly title: string;
  readonly summary: string;
  readonly language: string;
  readonly firstPublished: Date;
  readonly lastPublished: Date;
  /** Number of the latest revision. */
  readonly revision: number;
  /** What was corrected, newest first: a sentence each. */
  readonly corrections: readonly string[];
  readonly recording: {
    readonly address: string;
    readonly mediaType: string;
    readonly bytes: number;
    readonly durationMs: number;
    readonly captionsAddress: string;
    readonly chaptersAddress: string;
  } | null;
  readonly posterAddress: string | null;
}

/** The workshop whose lessons a feed tells of. */
export interface FeedOf {
  readonly name: string;
  readonly about: string;
  readonly language: string;
  /** Names the feed for good: the address of the workshop's page under the first slug that it had. */
  readonly id: string;
  /** The workshop's page. */
  readonly address: string;
  /** Of the feed itself. */
  readonly feedAddress: string;
  /** Newest first. */
  readonly lessons: readonly PublishedLesson[];
}

// Characters that XML 1.0 cannot hold (section 2.2).
const NOT_XML = /[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu;

// The feed writer turns `&apos;` inside a text into an apostrophe. This character, which belongs to nobody
// (Unicode's private use), is put between, doubled where a text holds it itself, and taken out of what was written.
const MARK = '\uE000';

/** A text without what no XML document can hold, to be written by the feed writer and `finishFeed`. */
export const feedText = (text: string): string =>
  text
    .toWellFormed()
    .replace(NOT_XML, '')
    .replaceAll(MARK, `${MARK}${MARK}`)
    .replaceAll('&apos;', `&${MARK}apos;`);

/** What the feed writer wrote, with every text as it was. */
export const finishFeed = (xml: string): string => xml.replaceAll(/\uE000(\uE000?)/g, '$1');
