/** Who belongs to a workshop, and who is invited. */
import type { Role } from '#lib/access/caller.ts';
import type { Queries } from './database.ts';

export interface ListedMember {
  readonly id: string;
  readonly userId: string;
  readonly name: string;
  readonly email: string;
  readonly role: Role;
  readonly since: Date;
}

/** The members of a workshop in the order in which they joined. */
export async function findMembers(db: Queries, workshopId: string): Promise<readonly ListedMember[]> {
  const members = await db.member.findMany({
    where: { workshopId },
    select: {
      id: true,
      userId: true,
      role: true,
      createdAt: true,
      user: { select: { name: true, email: true } },
    },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
  });
  return members.map(({ user, createdAt, ...member }) => ({ ...member, ...user, since: createdAt }));
}

export interface ListedInvitation {
  readonly id: string;
  readonly role: Role;
  /** For whom, in the owner's words. */
  readonly note: string;
  readonly expiresAt: Date;
}

/** Addresses of a workshop that can still be used, the newest first. */
export async function findOpenInvitations(
  db: Queries,
  workshopId: string,
  now: Date,
): Promise<readonly ListedInvitation[]> {
  return db.invitation.findMany({
    where: { workshopId, usedAt: null, expiresAt: { gt: now } },
    select: { id: true, role: true, note: true, expiresAt: true },
    orderBy: [{ createdAt: 'desc' }, { id: 'asc' }],
  });
}

/** What a workshop says about itself. */
export async function findAbout(db: Queries, workshopId: string): Promise<string> {
  const found = await db.workshop.findUnique({ where: { id: workshopId }, select: { about: true } });
  return found?.about ?? '';
}
