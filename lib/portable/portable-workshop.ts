/** A workshop as plain files: what `workshop.json` holds beside the folders of its lessons. */
import { z } from 'zod';
import { descriptionSetup } from '#lib/description/description-setup.ts';
import { stockItem } from '#lib/kit/stock.ts';
import { paragraph } from '#lib/thing.ts';
import { PORTABLE_SCHEMA } from './portable-lesson.ts';

export const WORKSHOP_FILE = 'workshop.json';
export const WORKSHOP_SCHEMA_FILE = 'workshop.schema.json';

const words = z.string().max(300);

export const portableWorkshop = z.object({
  $schema: z.string().max(200),
  schema: z.literal(PORTABLE_SCHEMA),
  name: z.string().min(1).max(120),
  about: paragraph,
  currency: z
    .string()
    .regex(/^[A-Z]{3}$/)
    .describe('ISO 4217'),
  language: z.string().min(2).max(35).describe('BCP 47'),
  descriptionSetup: descriptionSetup
    .nullable()
    .describe('How description texts are worded; null: as everybody begins'),
  stock: z.array(stockItem).max(20_000).describe('What is at hand'),
  glossary: z
    .array(
      z.object({
        term: z.string().min(1).max(300),
        forms: z.array(words).max(200).describe('Other ways of writing it that are right'),
        sounds: z.array(words).max(200).describe('How it is said, in ordinary words'),
        meaning: z.string().max(600).default('').describe('What it means, for pupils; empty: not explained'),
      }),
    )
    .max(20_000),
  heard: z
    .array(
      z.object({ heard: words, instead: words, taken: z.int().min(0).max(1_000_000), never: z.boolean() }),
    )
    .max(50_000)
    .describe('What was decided about words that were misheard'),
  lessons: z
    .array(z.string().regex(/^lessons\/[a-z0-9-]{1,100}$/))
    .max(5_000)
    .describe('Folders of the lessons'),
});
export type PortableWorkshop = Readonly<z.infer<typeof portableWorkshop>>;

/** JSON Schema (draft 2020-12) of the document, as it lies beside it. */
export const portableWorkshopSchema = (): object => ({
  ...z.toJSONSchema(portableWorkshop, { io: 'input' }),
  title: 'A workshop as a portable copy: workshop.json',
});
