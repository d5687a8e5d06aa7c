/** A new person with a password; made only by what an invitation leads to. */
import { z } from 'zod';
import type { Queries } from '#lib/data/database.ts';
import { accounts } from './accounts.ts';

export const personName = z.string().trim().min(1).max(120);
/** Longest address by RFC 5321, as corrected by erratum 1690: 254 characters. */
export const emailAddress = z.string().trim().max(254).pipe(z.email());

/** A password as it crosses the border; what it must be is decided in password.ts. */
export const typedPassword = z.string().min(1).max(1_000);

/** A person as they introduce themselves. */
export const newPerson = z.object({ name: personName, email: emailAddress, password: typedPassword });
export type NewPerson = Readonly<z.infer<typeof newPerson>>;

/** Slow by design: never inside a transaction. */
export const hashPassword = async (password: string): Promise<string> =>
  (await accounts().$context).password.hash(password);

/** An e-mail address as it is kept and compared. */
export const plainEmail = (email: string): string => email.trim().toLowerCase();

/** Adds the person and their password; throws a unique violation where the e-mail address is taken. */
export async function createPerson(
  tx: Queries,
  person: {
    readonly id: string;
    readonly name: string;
    readonly email: string;
    readonly passwordHash: string;
  },
): Promise<void> {
  const { id, name, email, passwordHash } = person;
  await tx.user.create({ data: { id, name, email: plainEmail(email) } });
  await tx.account.create({
    data: {
      id: `password-of-${id}`,
      accountId: id,
      providerId: 'credential',
      userId: id,
      password: passwordHash,
    },
  });
}
