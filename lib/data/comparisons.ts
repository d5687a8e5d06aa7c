/** Comparisons of a lesson's recording: with one that may take its place, or with another lesson's whose transcript may be placed on it. */
import { type EditList, editList } from '#lib/retiming/edit-list.ts';
import { type Move, move } from '#lib/retiming/take-back.ts';
import type { Queries } from './database.ts';
import { type ComparisonState, Prisma } from './generated/client.ts';
import type { LessonAddress } from './lessons.ts';

export type { ComparisonState };

export interface Comparison {
  readonly id: string;
  readonly lessonId: string;
  /** The other lesson whose recording the old one is, and whose transcript may be placed; null where both are the lesson's own. */
  readonly fromLessonId: string | null;
  readonly oldRecordingId: string;
  readonly newRecordingId: string;
  readonly state: ComparisonState;
  /** What the worker is at, and how far, 0 to 100. */
  readonly step: string | null;
  readonly percent: number;
  readonly list: EditList | null;
}

/** States in which nobody has decided yet. */
const OPEN = ['waiting', 'comparing', 'ready', 'failed'] satisfies ComparisonState[];

const COLUMNS = {
  id: true,
  lessonId: true,
  oldRecordingId: true,
  newRecordingId: true,
  state: true,
  step: true,
  percent: true,
  edits: true,
  oldRecording: { select: { lessonId: true } },
} as const;

type Row = Omit<Comparison, 'list' | 'fromLessonId'> & {
  readonly edits: unknown;
  readonly oldRecording: { readonly lessonId: string };
};

const toComparison = ({ edits, oldRecording, ...row }: Row): Comparison => ({
  ...row,
  fromLessonId: oldRecording.lessonId === row.lessonId ? null : oldRecording.lessonId,
  list: edits === null ? null : editList.parse(edits),
});

/** Begins one; an undecided one of the lesson gives way, since a newer recording came, or another transcript is wanted. */
export async function addComparison(
  db: Queries,
  of: Pick<Comparison, 'id' | 'lessonId' | 'oldRecordingId' | 'newRecordingId'>,
): Promise<void> {
  await db.recordingComparison.updateMany({
    where: { lessonId: of.lessonId, state: { in: OPEN } },
    data: { state: 'refused' },
  });
  await db.recordingComparison.create({ data: of });
}

/** The lesson's undecided one, or null. */
export async function openComparison(db: Queries, lessonId: string): Promise<Comparison | null> {
  const row = await db.recordingComparison.findFirst({
    where: { lessonId, state: { in: OPEN } },
    select: COLUMNS,
    orderBy: { createdAt: 'desc' },
  });
  return row && toComparison(row);
}

/** One of a lesson, decided or not. */
export async function findComparison(db: Queries, lessonId: string, id: string): Promise<Comparison | null> {
  const row = await db.recordingComparison.findFirst({ where: { id, lessonId }, select: COLUMNS });
  return row && toComparison(row);
}

/** Those that a worker still has to do, oldest first. */
export async function comparisonsToDo(db: Queries): Promise<readonly string[]> {
  const rows = await db.recordingComparison.findMany({
    where: { state: { in: ['waiting', 'comparing'] } },
    select: { id: true },
    orderBy: { createdAt: 'asc' },
  });
  return rows.map(({ id }) => id);
}

/** Takes one to work on; null where it is done, or decided. */
export async function takeComparison(db: Queries, id: string): Promise<Comparison | null> {
  const [row] = await db.recordingComparison.updateManyAndReturn({
    where: { id, state: { in: ['waiting', 'comparing'] } },
    data: { state: 'comparing', step: null, percent: 0 },
    select: COLUMNS,
  });
  return row ? toComparison(row) : null;
}

/** @returns false where somebody decided meanwhile: then there is nothing to go on with. */
export async function noteComparing(
  db: Queries,
  id: string,
  at: { step: string; percent: number },
): Promise<boolean> {
  return (await db.recordingComparison.updateMany({ where: { id, state: 'comparing' }, data: at })).count > 0;
}

export async function finishComparison(db: Queries, id: string, list: EditList): Promise<void> {
  await db.recordingComparison.updateMany({
    where: { id, state: 'comparing' },
    data: { state: 'ready', step: null, percent: 100, edits: list },
  });
}

export async function failComparison(db: Queries, id: string): Promise<void> {
  await db.recordingComparison.updateMany({
    where: { id, state: 'comparing' },
    data: { state: 'failed', step: null },
  });
}

/** Ends one by a person's word. @returns false where it was decided before. */
export async function decideComparison(
  db: Queries,
  id: string,
  state: 'accepted' | 'refused',
): Promise<boolean> {
  const decided = await db.recordingComparison.updateMany({
    where: { id, state: { in: OPEN } },
    data: { state },
  });
  return decided.count > 0;
}

/** The accepted one that gave the lesson the recording it has; null where there is none. */
export async function acceptedComparison(db: Queries, lessonId: string): Promise<Comparison | null> {
  const lesson = await db.lesson.findUnique({ where: { id: lessonId }, select: { recordingId: true } });
  if (!lesson?.recordingId) return null;
  const row = await db.recordingComparison.findFirst({
    where: {
      lessonId,
      newRecordingId: lesson.recordingId,
      state: 'accepted',
      oldRecording: { lessonId },
    },
    select: COLUMNS,
  });
  return row && toComparison(row);
}

/** Values of changes are checked as the changes are made; here they are kept as they are. */
export async function keepMove(db: Queries, id: string, move: Move): Promise<void> {
  await db.recordingComparison.update({
    where: { id },
    data: { move: move as unknown as Prisma.InputJsonObject },
  });
}

/** What taking the new recording moved; null where all stayed as it was. */
export async function findMove(db: Queries, id: string): Promise<Move | null> {
  const row = await db.recordingComparison.findUnique({ where: { id }, select: { move: true } });
  return row?.move ? move.parse(row.move) : null;
}

/** Opens an accepted one for decision again. */
export async function reopenComparison(db: Queries, { id, list }: Comparison): Promise<void> {
  await db.recordingComparison.update({
    where: { id },
    data: { state: list ? 'ready' : 'failed', move: Prisma.DbNull },
  });
}

/** A lesson whose transcript may be placed on the recording of another. */
export interface PlaceableLesson {
  readonly id: string;
  readonly title: string;
  readonly cues: number;
}

/** The other lessons of a workshop that have cues and a recording that can be heard, by title. */
export const findPlaceableLessons = (
  db: Queries,
  { workshopId, lessonId }: LessonAddress,
): Promise<readonly PlaceableLesson[]> => db.$queryRaw<PlaceableLesson[]>`
  SELECT l."id", COALESCE(l."content"->>'title', '') AS "title",
    (SELECT count(*)::int FROM "cue" WHERE "lessonId" = l."id") AS "cues"
  FROM "lesson" l JOIN "recording" r ON r."id" = l."recordingId" AND r."state" = 'ready' AND r."peaksKey" IS NOT NULL
  WHERE l."workshopId" = ${workshopId} AND l."id" <> ${lessonId}
    AND EXISTS (SELECT 1 FROM "cue" WHERE "lessonId" = l."id")
  ORDER BY 2, 1`;
