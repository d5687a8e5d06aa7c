/** Finds out who is asking, from the session cookie in a request's headers. */
import { database } from '#lib/data/database.ts';
import { accounts } from './accounts.ts';
import type { Caller, Membership } from './caller.ts';

/** The signed-in person behind a request's headers, or null. */
export async function findCaller(headers: Headers): Promise<Caller | null> {
  if (!headers.get('cookie')) return null;
  const found = await accounts().api.getSession({ headers });
  return found ? { userId: found.user.id, name: found.user.name, email: found.user.email } : null;
}

/**
 * The caller's membership of the workshop with this slug, or null where there
 * is no such workshop or the caller is no member: the two look alike.
 */
export async function findMembership(caller: Caller, workshopSlug: string): Promise<Membership | null> {
  const member = await database().member.findFirst({
    where: { userId: caller.userId, workshop: { slug: workshopSlug } },
    select: {
      role: true,
      workshop: { select: { id: true, slug: true, name: true, currency: true, language: true } },
    },
  });
  return member && { caller, role: member.role, workshop: member.workshop };
}

/** A workshop that the caller belongs to, as a list of them shows it. */
export interface OwnWorkshop {
  readonly slug: string;
  readonly name: string;
  readonly role: Membership['role'];
}

/** The caller's workshops by name. */
export async function findWorkshopsOf(caller: Caller): Promise<readonly OwnWorkshop[]> {
  const members = await database().member.findMany({
    where: { userId: caller.userId },
    select: { role: true, workshop: { select: { slug: true, name: true } } },
    orderBy: { workshop: { name: 'asc' } },
  });
  return members.map(({ role, workshop }) => ({ ...workshop, role }));
}
