/**
 * A new password for whoever forgot theirs. Whoever keeps the server makes a
 * one-time address (`npm run new-password`) and hands it over; the person then
 * chooses a password that nobody else has seen. As with invitations, only a
 * hash of what the address carries is kept.
 */
import { createHash, randomBytes, randomUUID } from 'node:crypto';
import type { Database, Queries } from '#lib/data/database.ts';
import { failed, ok, type Result } from '#lib/result.ts';
import { type PasswordFault, passwordFault } from './password.ts';
import { hashPassword, plainEmail } from './person.ts';

/** How long the address can be used, hours. */
export const NEW_PASSWORD_HOURS = 24;
const HOUR_MS = 3600 * 1000;

export interface NewPasswordAddress {
  /** Path of the address; told once and cannot be read again. */
  readonly path: string;
  readonly name: string;
  readonly expiresAt: Date;
}

/** Whose password an open address changes. */
export interface PersonWithout {
  readonly userId: string;
  readonly name: string;
  readonly email: string;
}

/** A new address, which ends the one before; null where no account has this e-mail address. */
export async function issueNewPassword(
  db: Database,
  email: string,
  now: Date,
): Promise<NewPasswordAddress | null> {
  const person = await db.user.findUnique({ where: { email: plainEmail(email) } });
  if (!person) return null;
  const token = randomBytes(32).toString('base64url');
  const expiresAt = new Date(now.getTime() + NEW_PASSWORD_HOURS * HOUR_MS);
  await db.$transaction(async (tx) => {
    await tx.verification.deleteMany({ where: { value: person.id } });
    await tx.verification.create({
      data: {
        id: randomUUID(),
        identifier: identifierOf(token),
        value: person.id,
        expiresAt,
        createdAt: now,
      },
    });
  });
  return { path: `/new-password/${token}`, name: person.name, expiresAt };
}

/** Whose password the address changes, or null where it is unknown, used or too old. */
export async function findNewPassword(db: Queries, token: string, now: Date): Promise<PersonWithout | null> {
  const found = await db.verification.findFirst({
    where: { identifier: identifierOf(token), expiresAt: { gt: now } },
  });
  const person = found && (await db.user.findUnique({ where: { id: found.value } }));
  return person && { userId: person.id, name: person.name, email: person.email };
}

/** Uses the address up: the password is the new one, and whoever was signed in with the old one no longer is. */
export async function takeNewPassword(
  db: Database,
  { token, password }: { readonly token: string; readonly password: string },
  now: Date,
): Promise<Result<PersonWithout, { readonly code: 'invitation-not-open' | PasswordFault }>> {
  const person = await findNewPassword(db, token, now);
  if (!person) return failed({ code: 'invitation-not-open' });
  const weakness = passwordFault(password, [person.email, person.name]);
  if (weakness) return failed({ code: weakness });
  const passwordHash = await hashPassword(password);
  return db.$transaction(async (tx) => {
    const { count } = await tx.verification.deleteMany({ where: { identifier: identifierOf(token) } });
    if (count === 0) return failed({ code: 'invitation-not-open' as const });
    const { userId } = person;
    await tx.account.updateMany({
      where: { userId, providerId: 'credential' },
      data: { password: passwordHash },
    });
    await tx.session.deleteMany({ where: { userId } });
    return ok(person);
  });
}

const identifierOf = (token: string): string =>
  `new password ${createHash('sha256').update(token).digest('hex')}`;
