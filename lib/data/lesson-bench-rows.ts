/** What a workshop keeps about a lesson beside its text, out for a portable copy and back in. */
import { type PortableBench, portableBench } from '#lib/portable/portable-bench.ts';
import type { Queries } from './database.ts';

/** Null where nothing is kept. The same rows give the same document, in whatever order a database has them. */
export async function findLessonBench(db: Queries, lessonId: string): Promise<PortableBench | null> {
  const where = { lessonId };
  const batches = (await db.kitBatch.findMany({ where })).toSorted(
    (one, other) =>
      one.madeOn.getTime() - other.madeOn.getTime() ||
      one.createdAt.getTime() - other.createdAt.getTime() ||
      compare(JSON.stringify([one.kits, one.note]), JSON.stringify([other.kits, other.note])),
  );
  const numbers = new Map(batches.map(({ id }, index) => [`batch-${id}`, `batch-${index + 1}`]));
  const reports = await db.report.findMany({ where });
  const marks = await db.placeMark.findMany({ where });
  const texts = await db.copiedText.findMany({ where, orderBy: { format: 'asc' } });
  if (batches.length + reports.length + marks.length + texts.length === 0) return null;
  return portableBench.parse({
    batches: batches.map(({ revision, madeOn, rule, kits, note, createdAt }) => ({
      revision,
      madeOn: madeOn.toISOString().slice(0, 10),
      rule,
      kits,
      note,
      recordedAt: createdAt.toISOString(),
    })),
    reports: reports
      .map(({ id: _, lessonId: __, createdAt, settledAt, ...report }) => ({
        ...report,
        createdAt: createdAt.toISOString(),
        settledAt: settledAt?.toISOString() ?? null,
      }))
      .toSorted((one, other) =>
        compare(`${one.createdAt} ${one.wrong}`, `${other.createdAt} ${other.wrong}`),
      ),
    // A mark of a batch that was forgotten says nothing any more.
    places: marks
      .flatMap(({ place, revision, ticked, at }) => {
        const named = place.startsWith('batch-') ? numbers.get(place) : place;
        return named === undefined ? [] : [{ place: named, revision, ticked, at: at.toISOString() }];
      })
      .toSorted((one, other) => compare(one.place, other.place)),
    copiedTexts: texts.map(({ format, text, copiedAt }) => ({
      format,
      text,
      copiedAt: copiedAt.toISOString(),
    })),
  } satisfies Record<keyof PortableBench, unknown>);
}

const compare = (one: string, other: string): number => (one < other ? -1 : one > other ? 1 : 0);

/** @param idFor an id for one thing of the lesson */
export async function addLessonBench(
  tx: Queries,
  lessonId: string,
  { batches, reports, places, copiedTexts }: PortableBench,
  idFor: (thing: string) => string,
): Promise<void> {
  const ids = batches.map((_, index) => idFor(`${lessonId} batch ${index + 1}`));
  await tx.kitBatch.createMany({
    data: batches.map(({ madeOn, kits, recordedAt, ...batch }, index) => ({
      ...batch,
      id: ids[index] ?? '',
      lessonId,
      madeOn: new Date(`${madeOn}T00:00:00Z`),
      kits: [...kits],
      createdAt: new Date(recordedAt),
    })),
  });
  await tx.report.createMany({
    data: reports.map((report, index) => ({
      ...report,
      id: idFor(`${lessonId} report ${index + 1}`),
      lessonId,
    })),
  });
  await tx.placeMark.createMany({
    data: places.map((mark) => {
      const batch = ids[Number(/^batch-(\d+)$/.exec(mark.place)?.[1] ?? 0) - 1];
      return { ...mark, lessonId, place: batch === undefined ? mark.place : `batch-${batch}` };
    }),
  });
  await tx.copiedText.createMany({ data: copiedTexts.map((copied) => ({ ...copied, lessonId })) });
}
