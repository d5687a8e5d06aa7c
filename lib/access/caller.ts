/**
 * Who is asking, and what they may do. Every screen and every route begins
 * here; nothing else decides about rights.
 */

/** From least to most; each role may do what those before it may. */
export const ROLES = ['viewer', 'editor', 'owner'] as const;
export type Role = (typeof ROLES)[number];

/** Whether a role is enough for what needs another one. */
export const roleSuffices = (has: Role, needed: Role): boolean => ROLES.indexOf(has) >= ROLES.indexOf(needed);

/** A signed-in person. */
export interface Caller {
  readonly userId: string;
  readonly name: string;
  readonly email: string;
}

/** A signed-in person inside one of their workshops. */
export interface Membership {
  readonly caller: Caller;
  readonly role: Role;
  readonly workshop: {
    readonly id: string;
    readonly slug: string;
    readonly name: string;
    readonly currency: string;
    readonly language: string;
  };
}
