/**
 * People who are signed in without having walked through an invitation or the
 * sign-in screen (tests of accounts do that): a session as the program keeps
 * it, and its cookie.
 */
import { createHmac, randomUUID } from 'node:crypto';
import type { Page } from 'playwright-core';
import type { Database } from '#lib/data/database.ts';
import { TEST_SECRET } from './test-secret.ts';

/** Begins a session of the person. @returns its cookie. */
export async function beginSession(
  db: Database,
  userId: string,
): Promise<{ readonly name: string; readonly value: string }> {
  const token = randomUUID();
  const expiresAt = new Date(Date.now() + 24 * 3_600_000);
  await db.session.create({ data: { id: randomUUID(), token, userId, expiresAt } });
  // The account library takes a token only with its HMAC (SHA-256, base64) behind it.
  const signature = createHmac('sha256', TEST_SECRET).update(token).digest('base64');
  return { name: 'benchleaf.session_token', value: encodeURIComponent(`${token}.${signature}`) };
}

/** Signs the person in, in the window of this page. */
export async function signIn(page: Page, address: string, db: Database, userId: string): Promise<void> {
  const cookie = await beginSession(db, userId);
  await page.context().addCookies([{ ...cookie, url: address, httpOnly: true, sameSite: 'Lax' }]);
}
