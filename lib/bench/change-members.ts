/**
 * What an owner does about the members of a workshop. A workshop always keeps
 * an owner: changes of members wait for each other, so that two owners cannot
 * remove each other in the same moment.
 */
import type { Membership, Role } from '#lib/access/caller.ts';
import { type IssuedInvitation, issueInvitation } from '#lib/access/invitation.ts';
import type { Queries } from '#lib/data/database.ts';
import { failed, ok, type Result } from '#lib/result.ts';
import type { Bench } from './bench.ts';

export interface MemberFault {
  readonly code: 'not-found' | 'last-owner';
}

/** Makes a one-time address by which somebody joins the caller's workshop. */
export const inviteMember = (
  bench: Bench,
  at: Membership,
  { role, note }: { readonly role: Role; readonly note: string },
): Promise<IssuedInvitation> =>
  issueInvitation(bench.db, { workshopId: at.workshop.id, role, note }, bench.now());

/** Makes an address that was not used yet worthless; false where there is none such in the workshop. */
export async function withdrawInvitation(
  bench: Bench,
  at: Membership,
  invitationId: string,
): Promise<boolean> {
  const { count } = await bench.db.invitation.deleteMany({
    where: { id: invitationId, workshopId: at.workshop.id, usedAt: null },
  });
  return count > 0;
}

/** Gives a member another role. */
export const changeRole = (
  bench: Bench,
  at: Membership,
  { memberId, role }: { readonly memberId: string; readonly role: Role },
): Promise<Result<null, MemberFault>> =>
  changeMember(bench, at, memberId, role !== 'owner', async (tx) => {
    await tx.member.update({ where: { id: memberId }, data: { role } });
  });

/** Takes a member out of the workshop; what they did in it stays. */
export const removeMember = (
  bench: Bench,
  at: Membership,
  memberId: string,
): Promise<Result<null, MemberFault>> =>
  changeMember(bench, at, memberId, true, async (tx) => {
    await tx.member.delete({ where: { id: memberId } });
  });

async function changeMember(
  bench: Bench,
  { workshop }: Membership,
  memberId: string,
  endsOwnership: boolean,
  make: (tx: Queries) => Promise<void>,
): Promise<Result<null, MemberFault>> {
  return bench.db.$transaction(async (tx): Promise<Result<null, MemberFault>> => {
    await tx.$queryRaw`SELECT "id" FROM "workshop" WHERE "id" = ${workshop.id} FOR UPDATE`;
    const member = await tx.member.findFirst({ where: { id: memberId, workshopId: workshop.id } });
    if (!member) return failed({ code: 'not-found' });
    if (member.role === 'owner' && endsOwnership) {
      const owners = await tx.member.count({ where: { workshopId: workshop.id, role: 'owner' } });
      if (owners < 2) return failed({ code: 'last-owner' });
    }
    await make(tx);
    return ok(null);
  });
}
