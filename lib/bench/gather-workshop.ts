/** Gathers what a workshop holds beside its lessons, for a portable copy. */
import type { Database } from '#lib/data/database.ts';
import { findDecisions, findOwnTerms } from '#lib/data/glossary.ts';
import { findStock } from '#lib/data/stock.ts';
import { completeSetup } from '#lib/description/description-setup.ts';
import { PORTABLE_SCHEMA } from '#lib/portable/portable-lesson.ts';
import {
  type PortableWorkshop,
  portableWorkshop,
  WORKSHOP_SCHEMA_FILE,
} from '#lib/portable/portable-workshop.ts';

export interface WorkshopCopy {
  readonly document: PortableWorkshop;
  /** By their addresses, so that the copy has the same order wherever it is made. */
  readonly lessons: readonly { readonly id: string; readonly folder: string }[];
}

export async function gatherWorkshop(db: Database, workshopId: string): Promise<WorkshopCopy> {
  const workshop = await db.workshop.findUniqueOrThrow({
    where: { id: workshopId },
    select: { name: true, about: true, currency: true, language: true, descriptionSetup: true },
  });
  const rows = await db.lesson.findMany({ where: { workshopId }, select: { id: true, slug: true } });
  const lessons = rows
    .map(({ id, slug }) => ({ id, folder: `lessons/${slug}` }))
    .toSorted((one, other) => (one.folder < other.folder ? -1 : 1));
  const decisions = (await findDecisions(db, workshopId)).toSorted((one, other) =>
    `${one.heard}\n${one.instead}` < `${other.heard}\n${other.instead}` ? -1 : 1,
  );
  const document = portableWorkshop.parse({
    $schema: WORKSHOP_SCHEMA_FILE,
    schema: PORTABLE_SCHEMA,
    name: workshop.name,
    about: workshop.about,
    currency: workshop.currency,
    language: workshop.language,
    descriptionSetup: workshop.descriptionSetup === null ? null : completeSetup(workshop.descriptionSetup),
    stock: await findStock(db, workshopId),
    glossary: (await findOwnTerms(db, workshopId)).map(({ term, forms, sounds, meaning }) => ({
      term,
      forms,
      sounds,
      meaning,
    })),
    heard: decisions,
    lessons: lessons.map(({ folder }) => folder),
  } satisfies Record<keyof PortableWorkshop, unknown>);
  return { document, lessons };
}
