/**
 * What every signed-in route goes through: did our own page send this, who is
 * asking, are they a member of the workshop in the address, may they do this.
 * Whoever is not a member gets the same answer as for a workshop that does
 * not exist.
 */
import { type Caller, type Membership, type Role, roleSuffices } from '#lib/access/caller.ts';
import { findCaller, findMembership } from '#lib/access/session.ts';
import { answerSafely, fault } from './answer-safely.ts';

export { fault } from './answer-safely.ts';

type Route<P> = (request: Request, context: { params: Promise<P> }) => Promise<Response>;

/** Wraps a route below /api/workshops/[workshop]; `needed` is the least role. */
export function withMember<P extends { workshop: string }>(
  needed: Role,
  handle: (request: Request, at: Membership, params: P) => Promise<Response>,
): Route<P> {
  return withCaller<P>(async (request, caller, params) => {
    const membership = await findMembership(caller, params.workshop);
    if (!membership) return fault(404, 'not-found');
    if (!roleSuffices(membership.role, needed)) return fault(403, 'role-too-small');
    return handle(request, membership, params);
  });
}

/** Wraps a route that any signed-in person may use. */
export function withCaller<P>(
  handle: (request: Request, caller: Caller, params: P) => Promise<Response>,
): Route<P> {
  return withAnyone<P>(async (request, params) => {
    const caller = await findCaller(request.headers);
    return caller ? handle(request, caller, params) : fault(401, 'not-signed-in');
  });
}

/** Wraps a route that is open to all. */
export function withAnyone<P>(handle: (request: Request, params: P) => Promise<Response>): Route<P> {
  return (request, context) => answerSafely(request, async () => handle(request, await context.params));
}
