/** Who may see a signed-in screen. Every such page asks by itself; a layout does not ask for it. */
import { headers } from 'next/headers';
import { forbidden, notFound, redirect } from 'next/navigation';
import { cache } from 'react';
import { type Caller, type Membership, type Role, roleSuffices } from '#lib/access/caller.ts';
import { findCaller, findMembership } from '#lib/access/session.ts';
import { database } from '#lib/data/database.ts';
import { slugSince } from '#lib/data/workshop-slugs.ts';

const callerOfRequest = cache(async (): Promise<Caller | null> => findCaller(await headers()));
const membershipOfRequest = cache(async (slug: string): Promise<Membership | null> => {
  const caller = await callerOfRequest();
  return caller && findMembership(caller, slug);
});

/** The signed-in person, or null on a page that is open to all. */
export const visitor = callerOfRequest;

/** The signed-in person; leads to the sign-in screen, and back to `path` from there, where there is none. */
export async function callerPage(path: string): Promise<Caller> {
  const caller = await callerOfRequest();
  if (!caller)
    redirect(`/sign-in?back=${encodeURIComponent((await headers()).get('x-benchleaf-path') ?? path)}`);
  return caller;
}

/**
 * The caller's membership of the workshop with this slug, for a page that
 * needs at least the role `needed`. Leads to the sign-in screen where nobody
 * is signed in; a workshop of others is not found, like one that is not there.
 */
export async function memberPage(workshopSlug: string, needed: Role): Promise<Membership> {
  await callerPage(`/bench/${encodeURIComponent(workshopSlug)}`);
  const membership = await membershipOfRequest(workshopSlug);
  if (!membership) return movedOrNothing(workshopSlug);
  if (!roleSuffices(membership.role, needed)) forbidden();
  return membership;
}

/** A member's bookmark with a former slug leads on; to everybody else nothing is there. */
async function movedOrNothing(former: string): Promise<never> {
  const slug = await slugSince(database(), former);
  if (slug === null || !(await membershipOfRequest(slug))) notFound();
  const path = (await headers()).get('x-benchleaf-path') ?? '';
  redirect(path.replace(`/${former}`, `/${slug}`));
}
