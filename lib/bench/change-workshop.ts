/** What an owner states about a workshop. */
import { z } from 'zod';
import type { Membership } from '#lib/access/caller.ts';
import { uniqueViolation } from '#lib/data/unique-violation.ts';
import { keepWorkshopSlugs } from '#lib/data/workshop-slugs.ts';
import { failed, ok, type Result } from '#lib/result.ts';
import type { Bench } from './bench.ts';
import { DEMO_WORKSHOP_SLUG } from './demo-workshop.ts';

const workshopSettings = z.object({
  name: z.string().trim().min(1).max(120),
  about: z.string().trim().max(5_000),
  /** ISO 4217. */
  currency: z.string().refine(isCurrency),
  /** BCP 47. */
  language: z.string().refine(isLanguage),
  /** In the address of its pages; addresses with a former one lead on to it. */
  slug: z
    .string()
    .max(60)
    .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/),
});
/** What of it is changed; what is left out stays. */
export const changedSettings = workshopSettings.partial();
export type ChangedSettings = Readonly<z.infer<typeof changedSettings>>;

/** Whether a text is an ISO 4217 code that this runtime knows. */
function isCurrency(text: string): boolean {
  return Intl.supportedValuesOf('currency').includes(text);
}

/** Whether a text is a well-formed BCP 47 tag in its canonical form. */
function isLanguage(text: string): boolean {
  try {
    return text.length <= 35 && Intl.getCanonicalLocales(text)[0] === text;
  } catch {
    return false;
  }
}

/** Only what is stated: a key without a value is not the same as no key to the database client's types. */
const stated = (changed: ChangedSettings) => {
  const { name, about, currency, language, slug } = changed;
  return {
    ...(name !== undefined && { name }),
    ...(about !== undefined && { about }),
    ...(currency !== undefined && { currency }),
    ...(language !== undefined && { language }),
    ...(slug !== undefined && { slug }),
  };
};

/** Saves the settings; `slug-taken` where another workshop has that address or had it, or the demo's is touched. */
export async function changeWorkshop(
  { db, now }: Bench,
  { workshop }: Membership,
  changed: ChangedSettings,
): Promise<Result<null, { readonly code: 'slug-taken' }>> {
  const slug = changed.slug ?? workshop.slug;
  if (slug !== workshop.slug && [slug, workshop.slug].includes(DEMO_WORKSHOP_SLUG))
    return failed({ code: 'slug-taken' });
  try {
    return await db.$transaction(async (tx) => {
      if (slug !== workshop.slug && !(await keepWorkshopSlugs(tx, workshop, slug, now())))
        return failed({ code: 'slug-taken' });
      await tx.workshop.update({ where: { id: workshop.id }, data: stated(changed) });
      return ok(null);
    });
  } catch (error) {
    if (uniqueViolation(error)?.includes('slug')) return failed({ code: 'slug-taken' });
    throw error;
  }
}
