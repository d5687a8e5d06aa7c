/** Makes a workshop with its first owner. */
import { z } from 'zod';
import type { Queries } from '#lib/data/database.ts';
import { uniqueViolation } from '#lib/data/unique-violation.ts';
import { takenWorkshopSlugs } from '#lib/data/workshop-slugs.ts';
import { freeSlug, slugOf } from '#lib/lesson/slug.ts';
import type { Bench } from './bench.ts';
import { DEMO_WORKSHOP_SLUG } from './demo-workshop.ts';

export const workshopName = z.string().trim().min(1).max(120);

/** The new workshop's slug; made from its name, with a number where that is taken. */
export async function createWorkshop(
  bench: Bench,
  input: { readonly name: string; readonly ownerId: string },
): Promise<string> {
  return retryOnTakenSlug(() => bench.db.$transaction((tx) => addWorkshop(tx, bench, input)));
}

/** The same inside a transaction; wrap that in `retryOnTakenSlug`. */
export async function addWorkshop(
  tx: Queries,
  { newId, now }: Pick<Bench, 'newId' | 'now'>,
  { name, ownerId }: { readonly name: string; readonly ownerId: string },
): Promise<string> {
  const wanted = slugOf(name, 'workshop');
  const slug = freeSlug(wanted, [DEMO_WORKSHOP_SLUG, ...(await takenWorkshopSlugs(tx, wanted))]);
  const at = now();
  await tx.workshop.create({
    data: {
      id: newId(),
      slug,
      name,
      createdAt: at,
      slugs: { create: { slug, since: at } },
      members: { create: { id: newId(), userId: ownerId, role: 'owner', createdAt: at } },
    },
  });
  return slug;
}

/** Does it again where somebody took the same slug in the same moment. */
export async function retryOnTakenSlug<T>(make: () => Promise<T>): Promise<T> {
  for (let tries = 1; ; tries += 1) {
    try {
      return await make();
    } catch (error) {
      if (tries >= 5 || !uniqueViolation(error)?.includes('slug')) throw error;
    }
  }
}
