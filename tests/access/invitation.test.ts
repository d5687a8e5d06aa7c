import { createHash, randomUUID } from 'node:crypto';
import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import {
  findInvitation,
  foundingInvitation,
  INVITATION_DAYS,
  issueInvitation,
  spendInvitation,
} from '#lib/access/invitation.ts';
import type { Database } from '#lib/data/database.ts';
import { testDatabase } from '#tests/support/database.ts';

const NOW = new Date('2026-03-01T10:00:00Z');
const days = (count: number): Date => new Date(NOW.getTime() + count * 24 * 3600 * 1000);
const tokenOf = (path: string | null): string => path?.split('/').at(-1) ?? '';

let db: Database;
let workshopId: string;

beforeAll(async () => {
  ({ db } = await testDatabase());
});

beforeEach(async () => {
  await db.invitation.deleteMany();
  await db.workshop.deleteMany();
  await db.user.deleteMany();
  workshopId = randomUUID();
  await db.workshop.create({ data: { id: workshopId, slug: 'rowan', name: 'Rowan' } });
});

const invite = () => issueInvitation(db, { workshopId, role: 'editor', note: 'Marta' }, NOW);

describe('a one-time address', () => {
  test('carries 256 bits, of which only the hash is kept', async () => {
    const { path } = await invite();
    const token = tokenOf(path);
    expect(Buffer.from(token, 'base64url')).toHaveLength(32);
    const row = await db.invitation.findFirstOrThrow();
    expect(row.tokenHash).toBe(createHash('sha256').update(token).digest('hex'));
    expect(JSON.stringify(row)).not.toContain(token);
  });

  test('leads to its workshop and role', async () => {
    const { path } = await invite();
    expect(await findInvitation(db, tokenOf(path), NOW)).toMatchObject({
      kind: 'joining',
      role: 'editor',
      workshop: { slug: 'rowan' },
    });
  });

  test('ends when its days are over, and not before', async () => {
    const token = tokenOf((await invite()).path);
    expect(await findInvitation(db, token, new Date(days(INVITATION_DAYS).getTime() - 1))).not.toBeNull();
    expect(await findInvitation(db, token, days(INVITATION_DAYS))).toBeNull();
    expect(await spendInvitation(db, token, days(INVITATION_DAYS))).toBeNull();
  });

  test('is used by one of many who open it at once', async () => {
    const token = tokenOf((await invite()).path);
    const used = await Promise.all(
      Array.from({ length: 8 }, () => db.$transaction((tx) => spendInvitation(tx, token, NOW))),
    );
    expect(used.filter((open) => open !== null)).toHaveLength(1);
  });

  test('stays good where what it was used for fails', async () => {
    const token = tokenOf((await invite()).path);
    const failing = db.$transaction(async (tx) => {
      await spendInvitation(tx, token, NOW);
      throw new Error('the rest did not work out');
    });
    await expect(failing).rejects.toThrow('the rest');
    expect(await findInvitation(db, token, NOW)).not.toBeNull();
  });
});

describe('the founding address', () => {
  test('is a new one at each start, and ends the one before', async () => {
    const first = tokenOf(await foundingInvitation(db, NOW));
    const second = tokenOf(await foundingInvitation(db, NOW));
    expect(await findInvitation(db, first, NOW)).toBeNull();
    expect(await findInvitation(db, second, NOW)).toMatchObject({ kind: 'founding' });
  });

  test('is none once any workshop has an owner; a viewer is not enough', async () => {
    const userId = randomUUID();
    await db.user.create({ data: { id: userId, name: 'Ines', email: 'ines@example.org' } });
    const member = await db.member.create({ data: { id: randomUUID(), workshopId, userId, role: 'viewer' } });
    expect(await foundingInvitation(db, NOW)).not.toBeNull();
    await db.member.update({ where: { id: member.id }, data: { role: 'owner' } });
    expect(await foundingInvitation(db, NOW)).toBeNull();
  });
});
