/** Addresses of a lesson page and of the files that belong to its revision. */
import { secondsOf } from '#lib/lesson/asked-measure.ts';
import type { MadeFileName } from '#lib/lesson/made-files.ts';
import type { TextFile } from '#lib/lesson/text-files.ts';

export interface PageAddresses {
  /** The page that is being shown, without a query. */
  readonly page: string;
  /** The page of the latest revision. */
  readonly latest: string;
  /** The workshop's page. */
  readonly shelf: string;
  readonly recording: string;
  readonly poster: string;
  /** One of the files that can be taken along. */
  readonly textFile: (name: TextFile) => string;
  /** One of the files that the worker makes. */
  readonly madeFile: (name: MadeFileName) => string;
  /** The steps as annotations of the recording; null where they are not offered. */
  readonly annotations: string | null;
  /** Null where the text is not offered. */
  readonly description: string | null;
  /** The lesson on paper; null where none is offered. */
  readonly sheet: string | null;
  /** Below it the files of a kit; null where none are offered. */
  readonly kitFiles: string | null;
  /** @param of id of a placement or step @param atMs its moment */
  readonly still: (of: string, atMs: number) => string;
  /** @param of id of a placement, `piece` or `whole`: a picture computed from the sequence; `json`: to be turned by hand; `png`: to print */
  readonly picture: (of: string, form?: 'svg' | 'json' | 'png') => string;
  /** @param number of an older revision */
  readonly revision: (number: number) => string;
}

export const shelfPath = (workshop: string): string => `/workshop/${encodeURIComponent(workshop)}`;
/** A workshop's lessons as a feed: for readers of news, and for players of podcasts. */
export const feedPath = (workshop: string): string => `${shelfPath(workshop)}/feed.atom`;
export const podcastPath = (workshop: string): string => `${shelfPath(workshop)}/podcast.xml`;
/** @param path of a workshop's or a lesson's page */
export const correctionsFeedPath = (path: string): string => `${path}/corrections.atom`;
/** Where a correction stands on its lesson page. */
export const correctionAnchor = (id: string): string => `correction-${encodeURIComponent(id.toWellFormed())}`;
export const lessonPath = (workshop: string, lesson: string): string =>
  `${shelfPath(workshop)}/lesson/${encodeURIComponent(lesson)}`;
/** The lesson's player for frames of other sites. */
export const embedPath = (workshop: string, lesson: string): string =>
  `${lessonPath(workshop, lesson)}/embed`;
export const oEmbedPath = (page: string): string => `/oembed?url=${encodeURIComponent(page)}&format=json`;
export const revisionPath = (workshop: string, lesson: string, number: number): string =>
  revisionPathOf(lessonPath(workshop, lesson), number);
/** @param lesson path of the lesson page */
export const revisionPathOf = (lesson: string, number: number): string => `${lesson}/revision/${number}`;

/** Where a pupil's report is sent. @param lesson path of the lesson page */
export const reportPath = (lesson: string): string => `${lesson}/report`;
/** Id of the part of the page with the form. */
export const REPORT_PLACE = 'report';
const REPORTED = ['yes', 'not-complete', 'too-many'] as const;
/** What became of a report. */
export type Reported = (typeof REPORTED)[number];
/** Back on the lesson page after a report was sent. */
export const reportedPath = (lesson: string, reported: Reported): string =>
  `${lesson}?reported=${reported}#${REPORT_PLACE}`;
/** What an address says about a report that was just sent, or null. */
export const reportedOfQuery = (asked: string | string[] | undefined): Reported | null =>
  REPORTED.find((one) => one === asked) ?? null;

/**
 * Where the holder of a kit reads what it is and what differs by now; stands on
 * its label and insert, so it never changes its form.
 * @param lesson path or whole address of the lesson page
 */
export const kitAddress = (lesson: string, revision: number, bodyMm: number): string =>
  `${lesson}/kit/${revision}?measure=${bodyMm}`;

/** Public addresses; files always hang below the revision that they belong to. */
export function publicAddresses(
  workshop: string,
  lesson: string,
  number: number,
  shown: 'latest' | 'revision',
): PageAddresses {
  const latest = lessonPath(workshop, lesson);
  const files = revisionPath(workshop, lesson, number);
  return {
    page: shown === 'latest' ? latest : files,
    latest,
    shelf: shelfPath(workshop),
    recording: `${files}/recording`,
    poster: `${files}/poster.jpg`,
    textFile: (name) => `${files}/${name}`,
    madeFile: (name) => `${files}/${name}`,
    annotations: `${files}/steps.jsonld`,
    description: `${files}/description.txt`,
    sheet: `${files}/sheet.pdf`,
    kitFiles: `${files}/kit`,
    still: (of) => `${files}/stills/${encodeURIComponent(of)}.jpg`,
    picture: (of, form = 'svg') => `${files}/pictures/${encodeURIComponent(of)}.${form}`,
    revision: (older) => revisionPath(workshop, lesson, older),
  };
}

/** A link to the page with the player at a moment; works without script. */
export const momentLink = (page: string, atMs: number): string => `${page}?t=${secondsOf(atMs)}#player`;
