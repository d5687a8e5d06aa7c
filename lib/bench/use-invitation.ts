/** What the holder of a one-time address does with it: found the first workshop, or join one. */

import { type Caller, roleSuffices } from '#lib/access/caller.ts';
import { findInvitation, type OpenInvitation, spendInvitation } from '#lib/access/invitation.ts';
import { type PasswordFault, passwordFault } from '#lib/access/password.ts';
import { createPerson, hashPassword, type NewPerson } from '#lib/access/person.ts';
import type { Queries } from '#lib/data/database.ts';
import { uniqueViolation } from '#lib/data/unique-violation.ts';
import { failed, ok, type Result } from '#lib/result.ts';
import type { Bench } from './bench.ts';
import { addWorkshop, retryOnTakenSlug } from './create-workshop.ts';
import { joinDemoWorkshop } from './demo-workshop.ts';

export interface InvitationFault {
  /** Unknown, used, withdrawn or too old; an address taken by another account; a password that will not do. */
  readonly code: 'invitation-not-open' | 'email-taken' | PasswordFault;
}

/** Slug of the workshop that one is now a member of. */
type Joined = Result<string, InvitationFault>;

/** Uses the founding address: makes the person, their workshop, and them its owner. */
export async function foundWorkshop(
  bench: Bench,
  input: { readonly token: string; readonly workshopName: string; readonly person: NewPerson },
): Promise<Joined> {
  return withNewPerson(bench, input, [input.workshopName], 'founding', async (tx, _open, userId) => {
    const slug = await addWorkshop(tx, bench, { name: input.workshopName, ownerId: userId });
    await joinDemoWorkshop(tx, bench.newId(), userId);
    return slug;
  });
}

/** Uses an inviting address with a new account. */
export async function joinAsNewPerson(
  bench: Bench,
  input: { readonly token: string; readonly person: NewPerson },
): Promise<Joined> {
  return withNewPerson(bench, input, [], 'joining', (tx, open, userId) => addMember(tx, bench, open, userId));
}

/** Uses an inviting address as somebody who is signed in; a role that one has already never shrinks. */
export async function joinAsCaller(
  bench: Bench,
  { token, caller }: { readonly token: string; readonly caller: Caller },
): Promise<Joined> {
  return bench.db.$transaction(async (tx): Promise<Joined> => {
    const open = await spendInvitation(tx, token, bench.now());
    if (open?.kind !== 'joining') return failed({ code: 'invitation-not-open' });
    return ok(await addMember(tx, bench, open, caller.userId));
  });
}

async function withNewPerson(
  bench: Bench,
  { token, person }: { readonly token: string; readonly person: NewPerson },
  about: readonly string[],
  kind: OpenInvitation['kind'],
  join: (tx: Queries, open: OpenInvitation, userId: string) => Promise<string>,
): Promise<Joined> {
  const now = bench.now();
  // Looked up first, so that nobody without an address makes the server hash passwords.
  if ((await findInvitation(bench.db, token, now))?.kind !== kind)
    return failed({ code: 'invitation-not-open' });
  const weakness = passwordFault(person.password, [person.email, person.name, ...about]);
  if (weakness) return failed({ code: weakness });
  const passwordHash = await hashPassword(person.password);
  const id = bench.newId();
  try {
    return await retryOnTakenSlug(() =>
      bench.db.$transaction(async (tx): Promise<Joined> => {
        const open = await spendInvitation(tx, token, now);
        if (!open) return failed({ code: 'invitation-not-open' });
        await createPerson(tx, { id, name: person.name, email: person.email, passwordHash });
        return ok(await join(tx, open, id));
      }),
    );
  } catch (error) {
    if (uniqueViolation(error)?.includes('email')) return failed({ code: 'email-taken' });
    throw error;
  }
}

async function addMember(tx: Queries, bench: Bench, open: OpenInvitation, userId: string): Promise<string> {
  if (open.kind !== 'joining') throw new Error('only an inviting address makes a member');
  const key = { workshopId: open.workshop.id, userId };
  const there = await tx.member.findUnique({ where: { workshopId_userId: key } });
  if (!there) {
    await tx.member.create({ data: { id: bench.newId(), ...key, role: open.role, createdAt: bench.now() } });
  } else if (!roleSuffices(there.role, open.role)) {
    await tx.member.update({ where: { id: there.id }, data: { role: open.role } });
  }
  return open.workshop.slug;
}
