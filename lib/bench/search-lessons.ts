/** Looks for words in all lessons of a workshop: members in the drafts, everyone in what is published. */
import type { Database } from '#lib/data/database.ts';
import { type FoundLines, findDraftLines, findPublishedLines, type SoughtLesson } from '#lib/data/search.ts';
import { type LessonPassages, passagesOf } from '#lib/search/passages.ts';
import { readSought, type Sought } from '#lib/search/sought.ts';

export interface FoundLesson extends SoughtLesson, Pick<LessonPassages, 'passages'> {}

export interface Findings {
  readonly sought: Sought;
  /** Whether any of the words can be looked for; a search for `the` cannot. */
  readonly findable: boolean;
  readonly lessons: readonly FoundLesson[];
  /** Whether the words are said so often that not every place was looked at. */
  readonly cut: boolean;
}

/** @param typed what a member of the workshop looks for */
export const searchDrafts = (db: Database, workshopId: string, typed: string): Promise<Findings> =>
  search(typed, (terms) => findDraftLines(db, workshopId, terms));

/** @param typed what a visitor of the workshop's public page looks for */
export const searchPublished = (db: Database, workshopSlug: string, typed: string): Promise<Findings> =>
  search(typed, (terms) => findPublishedLines(db, workshopSlug, terms));

async function search(
  typed: string,
  find: (terms: readonly string[]) => Promise<FoundLines>,
): Promise<Findings> {
  const sought = readSought(typed);
  if (sought.terms.length === 0) return { sought, findable: false, lessons: [], cut: false };
  const { needed, lines, lessons, cut } = await find(sought.terms);
  const byId = new Map(lessons.map((lesson) => [lesson.id, lesson]));
  const found = passagesOf(lines, sought, needed).flatMap(({ lessonId, passages }) => {
    const lesson = byId.get(lessonId);
    return lesson ? [{ ...lesson, passages }] : [];
  });
  return { sought, findable: needed.length > 0, lessons: found, cut };
}
