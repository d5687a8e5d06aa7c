/** How the chapters of a workshop's lessons begin: what a new lesson's proposals learn from. */
import type { ChapterBeginning } from '#lib/chapters/habits.ts';
import type { Queries } from './database.ts';
import type { LessonAddress } from './lessons.ts';

/** Lessons that are looked at, the last changed first. */
const MOST_LESSONS = 30;
/** Cues that hold the first sentence of a chapter. */
const FIRST_CUES = 4;

interface Row {
  readonly number: number;
  readonly lengthMs: number | null;
  readonly id: string;
  readonly startMs: number;
  readonly endMs: number;
  readonly text: string;
}

/**
 * The beginnings of all chapters but the first, in the other lessons of the
 * workshop that have three chapters or more.
 */
export async function findChapterBeginnings(
  db: Queries,
  at: LessonAddress,
): Promise<readonly ChapterBeginning[]> {
  const rows = await db.$queryRaw<Row[]>`
    WITH other AS (
      SELECT "id", "content" FROM "lesson"
      WHERE "workshopId" = ${at.workshopId} AND "id" <> ${at.lessonId}
        AND jsonb_array_length("content"->'chapters') >= 3
      ORDER BY "updatedAt" DESC LIMIT ${MOST_LESSONS}
    ), chapter AS (
      SELECT other."id" AS "lessonId", (item->>'startMs')::int AS "startMs",
        lead((item->>'startMs')::int) OVER each AS "nextMs",
        row_number() OVER each AS "place",
        row_number() OVER (ORDER BY other."id", (item->>'startMs')::int)::int AS "number"
      FROM other CROSS JOIN LATERAL jsonb_array_elements(other."content"->'chapters') AS item
      WINDOW each AS (PARTITION BY other."id" ORDER BY (item->>'startMs')::int)
    )
    SELECT chapter."number", chapter."nextMs" - chapter."startMs" AS "lengthMs",
      said."id", said."startMs", said."endMs", said."text"
    FROM chapter CROSS JOIN LATERAL (
      SELECT "id", "startMs", "endMs", "text" FROM "cue"
      WHERE "lessonId" = chapter."lessonId" AND ("startMs" + "endMs") / 2 >= chapter."startMs"
      ORDER BY "startMs" LIMIT ${FIRST_CUES}
    ) AS said
    WHERE chapter."place" > 1
    ORDER BY chapter."number", said."startMs"`;
  const beginnings = new Map<number, Row[]>();
  for (const row of rows) beginnings.set(row.number, [...(beginnings.get(row.number) ?? []), row]);
  return [...beginnings.values()].map((cues) => ({
    lengthMs: cues[0]?.lengthMs ?? null,
    cues: cues.map(({ id, startMs, endMs, text }) => ({ id, startMs, endMs, text, settings: '' })),
  }));
}
