/** People with a password, signed in without walking through an invitation. */
import { randomUUID } from 'node:crypto';
import { hashPassword } from 'better-auth/crypto';
import type { Page } from 'playwright-core';
import type { Database } from '#lib/data/database.ts';

const PASSWORD = 'copper rings on a peg 41';

/** Gives a person the password that `signIn` uses. */
export async function givePassword(db: Database, userId: string): Promise<void> {
  await db.account.create({
    data: {
      id: randomUUID(),
      accountId: userId,
      providerId: 'credential',
      userId,
      password: await hashPassword(PASSWORD),
    },
  });
}

/** Signs the person in, in the window of this page. */
export async function signIn(page: Page, address: string, db: Database, userId: string): Promise<void> {
  const { email } = await db.user.findUniqueOrThrow({ where: { id: userId } });
  const response = await page.request.post(`${address}/api/auth/sign-in`, {
    data: { email, password: PASSWORD },
  });
  if (!response.ok()) throw new Error(`Signing in failed: ${response.status()} ${await response.text()}`);
}
