/**
 * Secret addresses under which somebody who is no member sees a draft. The
 * address carries 256 random bits; only their hash is kept. Whoever has it can
 * pass it on, so each can be withdrawn, at once and for good.
 */
import { createHash, randomBytes } from 'node:crypto';
import type { Queries } from '#lib/data/database.ts';

/** More at once are hardly kept apart. */
export const MOST_PREVIEW_ADDRESSES = 20;

/** What an address leads to. */
export interface Previewable {
  readonly lessonId: string;
  readonly lessonSlug: string;
  readonly workshop: { readonly id: string; readonly slug: string; readonly name: string };
  /** Number of the latest revision, or null where nothing is published. */
  readonly published: number | null;
}

/** An address in force, as a list shows it. */
export interface ListedPreview {
  readonly id: string;
  readonly note: string;
  readonly createdAt: Date;
}

/** A new address; its path is told once. Null where the lesson has as many as it may. */
export async function issuePreviewAddress(
  tx: Queries,
  { id, lessonId, note, now }: { id: string; lessonId: string; note: string; now: Date },
): Promise<string | null> {
  await tx.$queryRaw`SELECT "id" FROM "lesson" WHERE "id" = ${lessonId} FOR UPDATE`;
  if ((await tx.previewAddress.count({ where: { lessonId } })) >= MOST_PREVIEW_ADDRESSES) return null;
  const token = randomBytes(32).toString('base64url');
  await tx.previewAddress.create({ data: { id, lessonId, tokenHash: hashOf(token), note, createdAt: now } });
  return `/preview/${token}`;
}

/** What the address with this token leads to; null where it is unknown or withdrawn. */
export async function findPreviewable(db: Queries, token: string): Promise<Previewable | null> {
  if (!/^[\w-]{43}$/.test(token)) return null;
  const found = await db.previewAddress.findUnique({
    where: { tokenHash: hashOf(token) },
    select: {
      lesson: {
        select: {
          id: true,
          slug: true,
          workshop: { select: { id: true, slug: true, name: true } },
          revisions: { select: { number: true }, orderBy: { number: 'desc' }, take: 1 },
        },
      },
    },
  });
  if (!found) return null;
  const { id, slug, workshop, revisions } = found.lesson;
  return { lessonId: id, lessonSlug: slug, workshop, published: revisions[0]?.number ?? null };
}

/** A lesson's addresses in force, newest first. */
export const listPreviewAddresses = (db: Queries, lessonId: string): Promise<readonly ListedPreview[]> =>
  db.previewAddress.findMany({
    where: { lessonId },
    select: { id: true, note: true, createdAt: true },
    orderBy: [{ createdAt: 'desc' }, { id: 'asc' }],
  });

/** @returns false where the lesson has no such address (any more) */
export async function withdrawPreviewAddress(db: Queries, lessonId: string, id: string): Promise<boolean> {
  return (await db.previewAddress.deleteMany({ where: { id, lessonId } })).count > 0;
}

const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex');
