/** How a workshop words its description texts, and the texts and files that were last taken along. */
import { z } from 'zod';
import { completeSetup, type DescriptionSetup } from '#lib/description/description-setup.ts';
import { DRAFT_FILES } from '#lib/description/places.ts';
import { DESCRIPTION_FORMATS } from '#lib/description/write-description.ts';
import type { Queries } from './database.ts';
import { Prisma } from './generated/client.ts';

export async function findDescriptionSetup(db: Queries, workshopSlug: string): Promise<DescriptionSetup> {
  const found = await db.workshop.findUnique({
    where: { slug: workshopSlug },
    select: { descriptionSetup: true },
  });
  return completeSetup(found?.descriptionSetup);
}

/** @param setup null: as everybody begins */
export async function saveDescriptionSetup(
  db: Queries,
  workshopId: string,
  setup: DescriptionSetup | null,
): Promise<void> {
  await db.workshop.update({
    where: { id: workshopId },
    data: { descriptionSetup: setup ?? Prisma.DbNull },
  });
}

export interface CopiedText {
  readonly text: string;
  readonly copiedAt: Date;
}

/** A description text by its format, or a file of a draft. */
const takenText = z.enum([...DESCRIPTION_FORMATS, ...DRAFT_FILES]);
export type TakenText = z.infer<typeof takenText>;

/** A lesson's texts as they were last taken along. */
export async function findCopiedTexts(
  db: Queries,
  lessonId: string,
): Promise<Partial<Record<TakenText, CopiedText>>> {
  const rows = await db.copiedText.findMany({ where: { lessonId } });
  return Object.fromEntries(
    rows.map(({ format, text, copiedAt }) => [takenText.parse(format), { text, copiedAt }]),
  );
}

export async function saveCopiedText(
  db: Queries,
  copied: {
    readonly lessonId: string;
    readonly format: TakenText;
    readonly text: string;
    readonly copiedAt: Date;
  },
): Promise<void> {
  const { lessonId, format, ...values } = copied;
  await db.copiedText.upsert({
    where: { lessonId_format: { lessonId, format } },
    create: copied,
    update: values,
  });
}
