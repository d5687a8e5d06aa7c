/**
 * Holds back floods of reports. From where they come is kept only as a hash
 * made with a secret that is new each day and thrown away with it, so that
 * nothing kept tells an address, then or later.
 */
import { createHash, randomBytes } from 'node:crypto';
import type { Queries } from '#lib/data/database.ts';

const HOUR_MS = 3_600_000;

/** Reports in a window: from one place to whatever lessons, and to one lesson from anywhere. */
const LIMITS = {
  place: { reports: 5, windowMs: HOUR_MS },
  lesson: { reports: 200, windowMs: 24 * HOUR_MS },
} as const;

/** Counts a report and tells whether it may be taken. Counting comes first, so that many sent at once cannot slip through. */
export async function countReport(
  db: Queries,
  from: { readonly place: string; readonly lessonId: string },
  now: Date,
): Promise<boolean> {
  const salt = await saltOf(db, now);
  await db.reportLimit.deleteMany({ where: { resetsAt: { lte: now } } });
  const fromPlace = await count(db, hash('place', salt, from.place), LIMITS.place.windowMs, now);
  // What one place sends in vain does not use up what others may send.
  if (fromPlace > LIMITS.place.reports) return false;
  const toLesson = await count(db, hash('lesson', salt, from.lessonId), LIMITS.lesson.windowMs, now);
  return toLesson <= LIMITS.lesson.reports;
}

async function count(db: Queries, key: string, windowMs: number, now: Date): Promise<number> {
  const resetsAt = new Date(now.getTime() + windowMs);
  const { reports } = await db.reportLimit.upsert({
    where: { key },
    create: { key, reports: 1, resetsAt },
    update: { reports: { increment: 1 } },
    select: { reports: true },
  });
  return reports;
}

/** The day's secret; those of earlier days are thrown away. */
async function saltOf(db: Queries, now: Date): Promise<string> {
  const day = new Date(Date.UTC(now.getUTCFullYear(), now.getUTCMonth(), now.getUTCDate()));
  const known = await db.reportSalt.findUnique({ where: { day } });
  if (known) return known.salt;
  await db.reportSalt.deleteMany({ where: { day: { lt: day } } });
  await db.reportSalt.createMany({
    data: [{ day, salt: randomBytes(32).toString('base64') }],
    skipDuplicates: true,
  });
  return (await db.reportSalt.findUniqueOrThrow({ where: { day } })).salt;
}

const hash = (limit: keyof typeof LIMITS, salt: string, of: string): string =>
  createHash('sha256')
    .update(JSON.stringify([limit, salt, of]))
    .digest('hex');
