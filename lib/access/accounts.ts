/**
 * Accounts and sessions, kept by the account library in our own tables. Only
 * this folder talks to it, and never through its own web addresses: each of
 * our routes asks for the one thing that it offers, so nothing else is
 * reachable, and people join by invitation alone (invitation.ts).
 */
import { randomUUID } from 'node:crypto';
import { betterAuth } from 'better-auth';
import { prismaAdapter } from 'better-auth/adapters/prisma';
import { environment } from '#lib/config/environment.ts';
import { type Database, database } from '#lib/data/database.ts';
import { LONGEST_PASSWORD, SHORTEST_PASSWORD } from './password.ts';

/** How long a sign-in lasts, seconds: a month, so that a phone at the bench stays signed in. */
const SESSION_SECONDS = 30 * 24 * 3600;

/** The account library on a database; `address` is where people reach the site. */
const openAccounts = (db: Database, address: string, secret: string) =>
  betterAuth({
    appName: 'Benchleaf',
    baseURL: address,
    secret,
    trustedOrigins: [address],
    database: prismaAdapter(db, { provider: 'postgresql' }),
    emailAndPassword: {
      enabled: true,
      disableSignUp: true,
      minPasswordLength: SHORTEST_PASSWORD,
      maxPasswordLength: LONGEST_PASSWORD,
    },
    // No refresh: a refreshed session would need a fresh cookie with every
    // answer, pages included, which cannot set any.
    session: { expiresIn: SESSION_SECONDS, disableSessionRefresh: true, freshAge: 0 },
    // Sign-ins are limited in sign-in-limit.ts, by e-mail too.
    rateLimit: { enabled: false },
    telemetry: { enabled: false },
    logger: { disabled: true },
    advanced: {
      cookiePrefix: 'benchleaf',
      useSecureCookies: address.startsWith('https://'),
      defaultCookieAttributes: { httpOnly: true, sameSite: 'lax', path: '/' },
      database: { generateId: () => randomUUID() },
      // Who signed in from where is not ours to keep.
      ipAddress: { disableIpTracking: true },
    },
  });

type Accounts = ReturnType<typeof openAccounts>;
const kept = globalThis as { benchleafAccounts?: Accounts };

/** The process's own; kept on the global for the same reason as the database client. */
export function accounts(): Accounts {
  const { BENCHLEAF_ADDRESS, BENCHLEAF_SECRET } = environment();
  kept.benchleafAccounts ??= openAccounts(database(), BENCHLEAF_ADDRESS, BENCHLEAF_SECRET);
  return kept.benchleafAccounts;
}
