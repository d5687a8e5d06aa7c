/** How often the same place may report, and what is kept of it: nothing that tells where it is. */
import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { countReport } from '#lib/access/report-limit.ts';
import { testDatabase } from '#tests/support/database.ts';

const { db } = await testDatabase();
const at = (time: string): Date => new Date(`2026-05-${time}Z`);
const from = (place: string, lessonId = 'l') => ({ place, lessonId });

test('five reports an hour from one place; others go on; after an hour it may again', async () => {
  const taken: boolean[] = [];
  for (let sent = 0; sent < 7; sent += 1)
    taken.push(await countReport(db, from('192.0.2.1'), at('01T08:00:00')));
  expect(taken).toEqual([true, true, true, true, true, false, false]);
  expect(await countReport(db, from('192.0.2.2'), at('01T08:10:00'))).toBe(true);
  expect(await countReport(db, from('192.0.2.1'), at('01T08:59:59'))).toBe(false);
  expect(await countReport(db, from('192.0.2.1'), at('01T09:00:00'))).toBe(true);
});

test('many sent at once cannot slip through together', async () => {
  const taken = await Promise.all(
    Array.from({ length: 12 }, () => countReport(db, from('192.0.2.9'), at('02T08:00:00'))),
  );
  expect(taken.filter((one) => one)).toHaveLength(5);
});

test('one lesson takes at most two hundred a day, from wherever they come', async () => {
  let taken = 0;
  for (let sent = 0; sent < 210; sent += 1)
    if (await countReport(db, from(`2001:db8::${sent}`, 'flooded'), at('03T08:00:00'))) taken += 1;
  expect(taken).toBe(200);
  expect(await countReport(db, from('2001:db8::1', 'another'), at('03T08:00:00'))).toBe(true);
});

test('what is kept are hashes made with a secret of the day, and yesterday’s secret is gone', async () => {
  await countReport(db, from('192.0.2.7'), at('04T23:50:00'));
  const before = await db.reportLimit.findMany();
  const salts = await db.reportSalt.findMany();
  expect(salts).toHaveLength(1);
  const kept = JSON.stringify([before, salts]);
  for (const known of ['192.0.2.7', createHash('sha256').update('192.0.2.7').digest('hex')])
    expect(kept).not.toContain(known);
  await countReport(db, from('192.0.2.7'), at('05T00:10:00'));
  const now = await db.reportSalt.findMany();
  expect(now).toHaveLength(1);
  expect(now[0]?.salt).not.toBe(salts[0]?.salt);
  // The same place is another key by now: nobody can tell that it came again.
  const keys = new Set(before.map(({ key }) => key));
  expect((await db.reportLimit.findMany()).filter(({ key }) => !keys.has(key)).length).toBeGreaterThan(0);
});
