import { beforeAll, beforeEach, expect, test } from 'vitest';
import { countTry, forgetTries } from '#lib/access/sign-in-limit.ts';
import type { Database } from '#lib/data/database.ts';
import { testDatabase } from '#tests/support/database.ts';

const NOW = new Date('2026-03-01T10:00:00Z');
const minutes = (count: number): Date => new Date(NOW.getTime() + count * 60_000);
const ines = { account: 'ines@example.org', place: '192.0.2.1' };

let db: Database;

beforeAll(async () => {
  ({ db } = await testDatabase());
});

beforeEach(async () => {
  await db.signInLimit.deleteMany();
});

async function tries(count: number, tried: typeof ines): Promise<number> {
  let allowed = 0;
  for (let at = 0; at < count; at++) if ((await countTry(db, tried, NOW)) === null) allowed += 1;
  return allowed;
}

test('ten tries from one place on one account, then a wait of ten minutes', async () => {
  expect(await tries(12, ines)).toBe(10);
  expect(await countTry(db, ines, NOW)).toEqual(minutes(10));
  expect(await countTry(db, ines, minutes(10))).toBeNull();
});

test('tries sent at once are counted one by one', async () => {
  const waits = await Promise.all(Array.from({ length: 30 }, () => countTry(db, ines, NOW)));
  expect(waits.filter((wait) => wait === null)).toHaveLength(10);
});

test('another person, or the same from elsewhere, is not held up', async () => {
  await tries(12, ines);
  expect(await countTry(db, { ...ines, place: '192.0.2.2' }, NOW)).toBeNull();
  expect(await countTry(db, { ...ines, account: 'edda@example.org' }, NOW)).toBeNull();
});

test('letters of an address in another case are the same account', async () => {
  await tries(10, ines);
  expect(await countTry(db, { ...ines, account: 'INES@example.org' }, NOW)).not.toBeNull();
});

// NIST SP 800-63B-4, 3.2.2: no more than 100 tries in a row on one account.
test('from ever new places, a hundred tries on one account', async () => {
  let allowed = 0;
  for (let at = 0; at < 110; at++) {
    if ((await countTry(db, { ...ines, place: `198.51.100.${at}` }, NOW)) === null) allowed += 1;
  }
  expect(allowed).toBe(100);
});

test('a right password forgets the wrong ones before it', async () => {
  await tries(9, ines);
  await forgetTries(db, ines, NOW);
  expect(await tries(10, ines)).toBe(10);
});
