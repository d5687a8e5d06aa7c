/** Slugs that workshops have and had: a former one leads to its workshop for good, and is never given to another. */
import type { Queries } from './database.ts';

/** The slug that a workshop has now, of one that it had; null for one that is in use, or never was. */
export async function slugSince(db: Queries, former: string): Promise<string | null> {
  const kept = await db.workshopSlug.findUnique({
    where: { slug: former },
    select: { workshop: { select: { slug: true } } },
  });
  return kept === null || kept.workshop.slug === former ? null : kept.workshop.slug;
}

/** The slug that a workshop had first. It names what must keep its name, such as entries of feeds. */
export async function firstSlug(db: Queries, slug: string): Promise<string> {
  const first = await db.workshopSlug.findFirst({
    where: { workshop: { slug } },
    orderBy: [{ since: 'asc' }, { slug: 'asc' }],
    select: { slug: true },
  });
  return first?.slug ?? slug;
}

/** Slugs that begin like this and are some workshop's, now or formerly. */
export async function takenWorkshopSlugs(db: Queries, startsWith: string): Promise<readonly string[]> {
  const where = { slug: { startsWith } };
  const now = await db.workshop.findMany({ where, select: { slug: true } });
  const ever = await db.workshopSlug.findMany({ where, select: { slug: true } });
  return [...now, ...ever].map(({ slug }) => slug);
}

/**
 * Notes the slug that a workshop goes to, and the one that it leaves. Where
 * two workshops reach for one at once, the database lets one of them have it.
 * @returns false where the slug is another workshop's, or was
 */
export async function keepWorkshopSlugs(
  tx: Queries,
  workshop: { readonly id: string; readonly slug: string },
  next: string,
  since: Date,
): Promise<boolean> {
  for (const [slug, from] of [
    [workshop.slug, new Date(since.getTime() - 1)],
    [next, since],
  ] as const) {
    const kept = await tx.workshopSlug.upsert({
      where: { slug },
      create: { slug, workshopId: workshop.id, since: from },
      update: {},
    });
    if (kept.workshopId !== workshop.id) return false;
  }
  return true;
}
