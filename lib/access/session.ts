/** Finds out who is asking, from the session cookie in a request's headers. */
import type { Caller, Membership } from './caller.ts';

/** The signed-in person behind a request's headers, or null. */
export async function findCaller(headers: Headers): Promise<Caller | null> {
  throw new Error(`no session from ${headers.get('cookie') ?? 'no cookie'}`);
}

/**
 * The caller's membership of the workshop with this slug, or null where there
 * is no such workshop or the caller is no member: the two look alike.
 */
export async function findMembership(caller: Caller, workshopSlug: string): Promise<Membership | null> {
  throw new Error(`no membership of ${caller.userId} in ${workshopSlug}`);
}
