/** Finds lines of lessons that hold sought words: drafts for members, published lines for everyone. */
import type { Revision } from '#lib/lesson/revision.ts';
import type { FoundLine } from '#lib/search/passages.ts';
import type { Queries } from './database.ts';

/** More lines than this are not looked at: the words are then said in nearly every sentence. */
const MOST_LINES = 10_000;

export interface SoughtLesson {
  readonly id: string;
  readonly slug: string;
  readonly title: string;
}

export interface FoundLines {
  /** Indexes of the terms that the search can look for; words such as `the` are in every line and in no index. */
  readonly needed: readonly number[];
  readonly lines: readonly FoundLine[];
  readonly lessons: readonly SoughtLesson[];
  /** Whether there are more lines than were looked at. */
  readonly cut: boolean;
}

/** Lines of all drafts of a workshop in which at least one term stands. */
export async function findDraftLines(
  db: Queries,
  workshopId: string,
  terms: readonly string[],
): Promise<FoundLines> {
  const list = [...terms];
  const [needed, lessons, lines] = await Promise.all([
    findableTerms(db, terms),
    db.$queryRaw<SoughtLesson[]>`
      SELECT "id", "slug", "content"->>'title' AS "title" FROM "lesson" WHERE "workshopId" = ${workshopId}`,
    db.$queryRaw<FoundLine[]>`
      WITH term AS (
        SELECT plainto_tsquery('english', word) AS query, place::int - 1 AS place
        FROM unnest(${list}::text[]) WITH ORDINALITY AS each (word, place)
      ), line AS (
        SELECT cue."lessonId", 'cue' AS "kind", cue."id", cue."startMs", cue."endMs", cue."text"
        FROM "cue" JOIN "lesson" ON lesson."id" = cue."lessonId"
        WHERE lesson."workshopId" = ${workshopId}
          AND to_tsvector('english', cue."text") @@ to_tsquery('english', ${anyOf(terms)})
        UNION ALL
        SELECT lesson."id", 'chapter', chapter->>'id', (chapter->>'startMs')::int, (chapter->>'startMs')::int,
          chapter->>'title'
        FROM "lesson" CROSS JOIN LATERAL jsonb_array_elements(lesson."content"->'chapters') AS chapter
        WHERE lesson."workshopId" = ${workshopId}
          AND to_tsvector('english', chapter->>'title') @@ to_tsquery('english', ${anyOf(terms)})
      )
      SELECT line.*, ARRAY(SELECT term.place FROM term WHERE said.words @@ term.query) AS "hits"
      FROM line CROSS JOIN LATERAL (SELECT to_tsvector('english', line."text") AS words OFFSET 0) AS said
      ORDER BY line."lessonId", line."startMs" LIMIT ${MOST_LINES}`,
  ]);
  return { needed, lessons, lines, cut: lines.length === MOST_LINES };
}

/** Lines of the latest revisions of a workshop in which at least one term stands; drafts are never looked at. */
export async function findPublishedLines(
  db: Queries,
  workshopSlug: string,
  terms: readonly string[],
): Promise<FoundLines> {
  const list = [...terms];
  const [needed, lessons, lines] = await Promise.all([
    findableTerms(db, terms),
    db.$queryRaw<SoughtLesson[]>`
      SELECT lesson."id", lesson."slug", (
        SELECT revision."document"->'content'->>'title' FROM "revision"
        WHERE revision."lessonId" = lesson."id" ORDER BY revision."number" DESC LIMIT 1
      ) AS "title"
      FROM "lesson" JOIN "workshop" ON workshop."id" = lesson."workshopId"
      WHERE workshop."slug" = ${workshopSlug}
        AND EXISTS (SELECT 1 FROM "revision" WHERE revision."lessonId" = lesson."id")`,
    db.$queryRaw<FoundLine[]>`
      WITH term AS (
        SELECT plainto_tsquery('english', word) AS query, place::int - 1 AS place
        FROM unnest(${list}::text[]) WITH ORDINALITY AS each (word, place)
      )
      SELECT line."lessonId", line."kind", '' AS "id", line."startMs", line."endMs", line."text",
        ARRAY(SELECT term.place FROM term WHERE said.words @@ term.query) AS "hits"
      FROM "published_line" AS line
        CROSS JOIN LATERAL (SELECT to_tsvector('english', line."text") AS words OFFSET 0) AS said
        JOIN "lesson" ON lesson."id" = line."lessonId"
        JOIN "workshop" ON workshop."id" = lesson."workshopId"
      WHERE workshop."slug" = ${workshopSlug}
        AND to_tsvector('english', line."text") @@ to_tsquery('english', ${anyOf(terms)})
      ORDER BY line."lessonId", line."startMs" LIMIT ${MOST_LINES}`,
  ]);
  return { needed, lessons, lines, cut: lines.length === MOST_LINES };
}

/** Puts what a revision says in the place of what the lesson's former one said. */
export async function writePublishedLines(
  tx: Queries,
  lessonId: string,
  { content, cues }: Pick<Revision, 'content' | 'cues'>,
): Promise<void> {
  const lines = [
    ...content.chapters.map(({ startMs, title }) => ({
      kind: 'chapter',
      startMs,
      endMs: startMs,
      text: title,
    })),
    ...cues.map(({ startMs, endMs, text }) => ({ kind: 'cue', startMs, endMs, text })),
  ];
  await tx.$executeRaw`DELETE FROM "published_line" WHERE "lessonId" = ${lessonId}`;
  await tx.$executeRaw`
    INSERT INTO "published_line" ("lessonId", "place", "kind", "startMs", "endMs", "text")
    SELECT ${lessonId}, * FROM unnest(
      ${lines.map((_, place) => place)}::int[],
      ${lines.map(({ kind }) => kind)}::text[],
      ${lines.map(({ startMs }) => startMs)}::int[],
      ${lines.map(({ endMs }) => endMs)}::int[],
      ${lines.map(({ text }) => text)}::text[])`;
}

/** Quoted, so that nothing in a term is an operator of the search. */
const anyOf = (terms: readonly string[]): string =>
  terms.map((term) => `'${term.replaceAll('\\', ' ').replaceAll("'", "''")}'`).join(' | ');

async function findableTerms(db: Queries, terms: readonly string[]): Promise<readonly number[]> {
  const rows = await db.$queryRaw<{ place: number }[]>`
    SELECT place::int - 1 AS "place"
    FROM unnest(${[...terms]}::text[]) WITH ORDINALITY AS each (word, place)
    WHERE numnode(plainto_tsquery('english', word)) > 0 ORDER BY 1`;
  return rows.map(({ place }) => place);
}
