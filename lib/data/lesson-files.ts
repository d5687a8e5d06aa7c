/** Which stored files a lesson's revisions and its draft refer to; documents are never read whole for it. */
import { z } from 'zod';
import type { Queries } from './database.ts';

/** A recording of a lesson with its pictures. */
export interface RecordingFiles {
  readonly id: string;
  readonly name: string;
  readonly mediaType: string;
  readonly mediaKey: string;
  readonly posterKey: string | null;
  readonly posterAtMs: number | null;
  /** Its pictures that something shows, by key; the moment is null where nobody noted it. */
  readonly pictures: readonly { readonly key: string; readonly atMs: number | null }[];
}

const frozen = z.array(
  z.object({
    recordingId: z.string(),
    posterKey: z.string().nullable(),
    stills: z.array(z.object({ atMs: z.int(), key: z.string() })),
  }),
);

const played = z.object({ playable: z.object({ type: z.string() }) });

/**
 * The recordings that revisions show, in the order in which they came, and
 * the one that the draft is about.
 * @param draft the draft's moments whose pictures belong too; null leaves the draft out
 */
export async function findLessonFiles(
  db: Queries,
  lessonId: string,
  draft: { readonly recordingId: string | null; readonly momentsMs: readonly number[] } | null,
): Promise<readonly RecordingFiles[]> {
  const shown = frozen.parse(
    await db.$queryRaw`
      SELECT "document"->'recording'->>'id' AS "recordingId", "document"->'recording'->>'posterKey' AS "posterKey",
        "document"->'stills' AS "stills"
      FROM "revision" WHERE "lessonId" = ${lessonId} AND jsonb_typeof("document"->'recording') = 'object'`,
  );
  const ids = new Set([
    ...shown.map(({ recordingId }) => recordingId),
    ...(draft?.recordingId ? [draft.recordingId] : []),
  ]);
  const rows = await db.recording.findMany({
    where: { lessonId, id: { in: [...ids] }, state: 'ready' },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
    include: { stills: true },
  });
  return rows.flatMap((row) => {
    if (row.playableKey === null || row.facts === null) return [];
    const moments = new Map(row.stills.map(({ storageKey, atMs }) => [storageKey, atMs]));
    for (const { recordingId, stills } of shown)
      if (recordingId === row.id)
        for (const { key, atMs } of stills) if (!moments.has(key)) moments.set(key, atMs);
    const keys = new Set([
      ...shown
        .filter(({ recordingId }) => recordingId === row.id)
        .flatMap(({ posterKey, stills }) => [posterKey, ...stills.map(({ key }) => key)]),
      row.posterKey,
      ...row.stills
        .filter(({ atMs }) => row.id === draft?.recordingId && draft.momentsMs.includes(atMs))
        .map(({ storageKey }) => storageKey),
    ]);
    return [
      {
        id: row.id,
        name: row.originalName,
        mediaType: played.parse(row.facts).playable.type,
        mediaKey: row.playableKey,
        posterKey: row.posterKey,
        posterAtMs: row.posterAtMs,
        pictures: [...keys]
          .filter((key) => key !== null)
          .sort()
          .map((key) => ({ key, atMs: moments.get(key) ?? null })),
      },
    ];
  });
}
