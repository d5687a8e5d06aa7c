/** Queries of what was taken along to places outside. */
import type { Queries } from './database.ts';

export interface PlaceMark {
  /** A place (lib/description/places.ts), or `batch-` with a batch's id. */
  readonly place: string;
  /** Number of the revision that was taken there. */
  readonly revision: number;
  /** Whether somebody said that it is there. */
  readonly ticked: boolean;
  readonly at: Date;
}

export const findPlaceMarks = (db: Queries, lessonId: string): Promise<readonly PlaceMark[]> =>
  db.placeMark.findMany({
    where: { lessonId },
    select: { place: true, revision: true, ticked: true, at: true },
  });

/** Keeps a mark; the newer one of a place stands. */
export async function putPlaceMark(db: Queries, lessonId: string, mark: PlaceMark): Promise<void> {
  const { place, ...data } = mark;
  await db.placeMark.upsert({
    where: { lessonId_place: { lessonId, place } },
    create: { lessonId, ...mark },
    update: data,
  });
}

export async function removePlaceMark(db: Queries, lessonId: string, place: string): Promise<void> {
  await db.placeMark.deleteMany({ where: { lessonId, place } });
}
