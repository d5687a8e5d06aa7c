/**
 * One-time addresses: the one that founds the first workshop, and those by
 * which an owner invites members. The address carries 256 random bits; only
 * their hash is kept, so that nobody who reads the database can use one.
 */
import { createHash, randomBytes, randomUUID } from 'node:crypto';
import { z } from 'zod';
import type { Database, Queries } from '#lib/data/database.ts';
import type { Role } from './caller.ts';

const DAY_MS = 24 * 3600 * 1000;
/** How long an address can be used. */
export const INVITATION_DAYS = 7;

export const invitationToken = z.string().min(1).max(100);

/** What an unused, unexpired address leads to. */
export type OpenInvitation =
  | { readonly id: string; readonly kind: 'founding' }
  | {
      readonly id: string;
      readonly kind: 'joining';
      readonly role: Role;
      readonly workshop: { readonly id: string; readonly slug: string; readonly name: string };
    };

/** A new address; `path` is told once and cannot be read again. */
export interface IssuedInvitation {
  readonly id: string;
  readonly path: string;
  readonly expiresAt: Date;
}

/**
 * The path of the address that makes the first owner: a new one at each call,
 * which ends the one before. Null once any workshop has an owner.
 */
export async function foundingInvitation(db: Database, now: Date): Promise<string | null> {
  return db.$transaction(async (tx) => {
    if ((await tx.member.count({ where: { role: 'owner' } })) > 0) return null;
    await tx.invitation.deleteMany({ where: { workshopId: null, usedAt: null } });
    return (await issue(tx, { workshopId: null, role: 'owner', note: '' }, now)).path;
  });
}

/** An address by which somebody joins a workshop; `note` says for whom, in the owner's words. */
export const issueInvitation = (
  db: Queries,
  to: { readonly workshopId: string; readonly role: Role; readonly note: string },
  now: Date,
): Promise<IssuedInvitation> => issue(db, to, now);

async function issue(
  db: Queries,
  to: { workshopId: string | null; role: Role; note: string },
  now: Date,
): Promise<IssuedInvitation> {
  const token = randomBytes(32).toString('base64url');
  const expiresAt = new Date(now.getTime() + INVITATION_DAYS * DAY_MS);
  const id = randomUUID();
  await db.invitation.create({
    data: { id, tokenHash: hashOf(token), ...to, createdAt: now, expiresAt },
  });
  return { id, path: `/invitation/${token}`, expiresAt };
}

/** What the address with this token leads to, or null where it is unknown, used, withdrawn or too old. */
export async function findInvitation(db: Queries, token: string, now: Date): Promise<OpenInvitation | null> {
  const found = await db.invitation.findFirst({
    where: { tokenHash: hashOf(token), usedAt: null, expiresAt: { gt: now } },
    select: { id: true, role: true, workshop: { select: { id: true, slug: true, name: true } } },
  });
  if (!found) return null;
  const { id, role, workshop } = found;
  return workshop ? { id, kind: 'joining', role, workshop } : { id, kind: 'founding' };
}

/**
 * Uses an address up, inside the transaction that does what it is for: of two
 * people who use it at the same moment the second gets null, and where that
 * transaction fails the address stays good.
 */
export async function spendInvitation(tx: Queries, token: string, now: Date): Promise<OpenInvitation | null> {
  const open = await findInvitation(tx, token, now);
  if (!open) return null;
  const { count } = await tx.invitation.updateMany({
    where: { id: open.id, usedAt: null },
    data: { usedAt: now },
  });
  return count === 1 ? open : null;
}

const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex');
