import { execFile } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { beforeAll, describe, expect, test } from 'vitest';
import {
  findNewPassword,
  issueNewPassword,
  NEW_PASSWORD_HOURS,
  takeNewPassword,
} from '#lib/access/new-password.ts';
import type { Database } from '#lib/data/database.ts';
import { testDatabase } from '#tests/support/database.ts';

const NOW = new Date('2026-03-01T10:00:00Z');
const later = (hours: number): Date => new Date(NOW.getTime() + hours * 3_600_000);
const ROOT = join(import.meta.dirname, '..', '..');

let db: Database;
let address: string;

beforeAll(async () => {
  ({ db, address } = await testDatabase());
});

/** Somebody with an old password and an open session. */
async function person(): Promise<{ userId: string; email: string }> {
  const userId = randomUUID();
  const email = `${userId}@example.org`;
  await db.user.create({ data: { id: userId, name: 'Ines', email } });
  await db.account.create({
    data: { id: randomUUID(), accountId: userId, providerId: 'credential', userId, password: 'old' },
  });
  const session = { id: randomUUID(), token: randomUUID(), userId };
  await db.session.create({ data: { ...session, expiresAt: later(1_000) } });
  return { userId, email };
}

const tokenOf = (path: string | undefined): string => path?.split('/').at(-1) ?? '';
const issue = async (email: string): Promise<string> =>
  tokenOf((await issueNewPassword(db, email, NOW))?.path);

describe('an address for a new password', () => {
  test('is found by its token alone, ends the one before, and lasts a day', async () => {
    const { email, userId } = await person();
    const first = await issue(email.toUpperCase());
    const second = await issue(email);
    expect(await findNewPassword(db, first, NOW)).toBeNull();
    expect(await findNewPassword(db, second, NOW)).toEqual({ userId, email, name: 'Ines' });
    expect(await findNewPassword(db, second, later(NEW_PASSWORD_HOURS))).toBeNull();
    expect(JSON.stringify(await db.verification.findMany())).not.toContain(second);
    expect(await issueNewPassword(db, 'nobody@example.org', NOW)).toBeNull();
  });

  test('stays open where the password will not do', async () => {
    const { email } = await person();
    const token = await issue(email);
    const faultOf = async (password: string) => {
      const taken = await takeNewPassword(db, { token, password }, NOW);
      return taken.ok ? null : taken.fault.code;
    };
    expect(await faultOf('short')).toBe('password-too-short');
    expect(await faultOf(email)).toBe('password-easily-guessed');
    expect(await findNewPassword(db, token, NOW)).not.toBeNull();
  });

  test('serves one of two who use it at once, and ends what was signed in', async () => {
    const { email, userId } = await person();
    const other = await person();
    const token = await issue(email);
    const taken = await Promise.all(
      ['kettle orchard violin seven', 'lantern meadow copper nine'].map((password) =>
        takeNewPassword(db, { token, password }, NOW),
      ),
    );
    expect(taken.map((one) => (one.ok ? 'taken' : one.fault.code)).sort()).toEqual([
      'invitation-not-open',
      'taken',
    ]);
    expect((await db.account.findFirstOrThrow({ where: { userId } })).password).not.toBe('old');
    expect(await db.session.count({ where: { userId } })).toBe(0);
    expect(await db.session.count({ where: { userId: other.userId } })).toBe(1);
    expect((await db.account.findFirstOrThrow({ where: { userId: other.userId } })).password).toBe('old');
  });
});

describe('the command', () => {
  const run = (...args: string[]) =>
    promisify(execFile)(process.execPath, [join(ROOT, 'scripts/new-password.ts'), ...args], {
      env: { ...process.env, DATABASE_URL: address, BENCHLEAF_ADDRESS: 'https://lessons.example.org' },
    });

  test('prints an address that is open', async () => {
    const { email, userId } = await person();
    const { stdout } = await run(email);
    const [, token] = /https:\/\/lessons\.example\.org\/new-password\/(\S+)/.exec(stdout) ?? [];
    expect(await findNewPassword(db, token ?? '', new Date())).toMatchObject({ userId });
  });

  test('says in a sentence what was wrong', async () => {
    await expect(run('nobody@example.org')).rejects.toMatchObject({
      code: 1,
      stderr: 'Nobody has an account under nobody@example.org here.\n',
    });
    await expect(run()).rejects.toMatchObject({ code: 1, stderr: expect.stringContaining('Say whose') });
  });
});
