/**
 * Holds back guessing of passwords. Counts stand in the database, so a restart
 * does not forget them, and are keyed by hashes, so it keeps no list of who
 * tried from where.
 */
import { createHash } from 'node:crypto';
import type { Queries } from '#lib/data/database.ts';

const MINUTE_MS = 60_000;

/**
 * Tries allowed in a window. From one place on one account ten; on one account
 * from anywhere a hundred, the most that NIST SP 800-63B-4, 3.2.2, allows in a
 * row; from one place on whatever accounts a hundred.
 */
const LIMITS = {
  pair: { tries: 10, windowMs: 10 * MINUTE_MS },
  account: { tries: 100, windowMs: 60 * MINUTE_MS },
  place: { tries: 100, windowMs: 10 * MINUTE_MS },
} as const;

/** A try to prove who one is: on which account, from which network address. */
export interface Try {
  readonly account: string;
  readonly place: string;
}

/**
 * Counts a try and tells until when to wait, or null where it may go ahead.
 * Counting comes before checking the password, so that tries sent at once
 * cannot slip through together.
 */
export async function countTry(db: Queries, tried: Try, now: Date): Promise<Date | null> {
  const waits: Date[] = [];
  for (const [limit, { tries, windowMs }] of Object.entries(LIMITS)) {
    const key = keyOf(limit as keyof typeof LIMITS, tried);
    const resetsAt = new Date(now.getTime() + windowMs);
    const rows = await db.$queryRaw<{ attempts: number; resetsAt: Date }[]>`
      INSERT INTO "sign_in_limit" ("key", "attempts", "resetsAt") VALUES (${key}, 1, ${resetsAt})
      ON CONFLICT ("key") DO UPDATE SET
        "attempts" = CASE WHEN "sign_in_limit"."resetsAt" <= ${now} THEN 1 ELSE "sign_in_limit"."attempts" + 1 END,
        "resetsAt" = CASE WHEN "sign_in_limit"."resetsAt" <= ${now} THEN ${resetsAt} ELSE "sign_in_limit"."resetsAt" END
      RETURNING "attempts", "resetsAt"`;
    const row = rows[0];
    if (row && row.attempts > tries) waits.push(row.resetsAt);
  }
  return waits.length === 0 ? null : new Date(Math.max(...waits.map((wait) => wait.getTime())));
}

/** After a right password: forgets the tries of this person from this place, and whatever has run out. */
export async function forgetTries(db: Queries, tried: Try, now: Date): Promise<void> {
  await db.signInLimit.deleteMany({
    where: { OR: [{ key: keyOf('pair', tried) }, { resetsAt: { lte: now } }] },
  });
}

function keyOf(limit: keyof typeof LIMITS, { account, place }: Try): string {
  const parts = { pair: [account, place], account: [account], place: [place] }[limit];
  return createHash('sha256')
    .update(JSON.stringify([limit, ...parts.map((part) => part.toLowerCase())]))
    .digest('hex');
}
