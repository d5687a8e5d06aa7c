/**
 * What every signed-in route goes through: who is asking, are they a member of
 * the workshop in the address, may they do this. Whoever is not a member gets
 * the same answer as for a workshop that does not exist.
 */
import { type Membership, type Role, roleSuffices } from '#lib/access/caller.ts';
import { findCaller, findMembership } from '#lib/access/session.ts';

type Handle<P> = (request: Request, at: Membership, params: P) => Promise<Response>;

/** Wraps a route below /api/workshops/[workshop]; `needed` is the least role. */
export function withMember<P extends { workshop: string }>(
  needed: Role,
  handle: Handle<P>,
): (request: Request, context: { params: Promise<P> }) => Promise<Response> {
  return async (request, context) => {
    const params = await context.params;
    const caller = await findCaller(request.headers);
    if (!caller) return fault(401, 'not-signed-in');
    const membership = await findMembership(caller, params.workshop);
    if (!membership) return fault(404, 'not-found');
    if (!roleSuffices(membership.role, needed)) return fault(403, 'role-too-small');
    return handle(request, membership, params);
  };
}

/** A refusal in JSON: `{ fault: { code, ... } }`. */
export const fault = (status: number, code: string, facts: Record<string, unknown> = {}): Response =>
  Response.json({ fault: { code, ...facts } }, { status, headers: { 'cache-control': 'no-store' } });
