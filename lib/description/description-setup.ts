/**
 * How a workshop words the text that goes beside its recordings: which parts
 * in which order under which headings, lines of the house, a campaign tag on
 * links, and the limits of the place where the text is pasted.
 */
import { z } from 'zod';

/** The parts that a text can have. `page` is the address of the lesson page; `house` the workshop's own lines. */
export const PART_KINDS = [
  'summary',
  'page',
  'chapters',
  'rings',
  'materials',
  'tools',
  'links',
  'cautions',
  'corrections',
  'licence',
  'house',
] as const;
export type PartKind = (typeof PART_KINDS)[number];

const part = z.object({
  kind: z.enum(PART_KINDS),
  shown: z.boolean(),
  /** Empty: the part stands without one. */
  heading: z.string().trim().max(100),
});

/** What the place where the text is pasted takes; null or nought: it does not mind. */
export const descriptionLimits = z.object({
  characters: z.int().min(100).max(1_000_000).nullable(),
  /** In UTF-8. */
  bytes: z.int().min(100).max(1_000_000).nullable(),
  chaptersFromNought: z.boolean(),
  leastChapters: z.int().min(0).max(100),
  leastChapterMs: z.int().min(0).max(3_600_000),
  /** Characters that the place refuses, written one after the other. */
  refused: z.string().max(50),
});
export type DescriptionLimits = Readonly<z.infer<typeof descriptionLimits>>;

const eachOnce = (kinds: readonly string[]): boolean => new Set(kinds).size === kinds.length;

export const descriptionSetup = z.object({
  parts: z
    .array(part)
    .max(PART_KINDS.length)
    .refine((parts) => eachOnce(parts.map(({ kind }) => kind)), { message: 'A part stands twice.' }),
  house: z.string().max(5_000),
  /** A query such as `from=recording`, put on every web address of the text; empty: none. */
  campaign: z
    .string()
    .trim()
    .max(200)
    .regex(/^([\w.~-]+=[\w.~-]*(&[\w.~-]+=[\w.~-]*)*)?$/, {
      message: 'A tag is written name=value, several with & between them.',
    }),
  limits: descriptionLimits,
  /** What is left out where the text is too long, the first first; kinds that are not named stay. */
  leaveOut: z.array(z.enum(PART_KINDS)).max(PART_KINDS.length).refine(eachOnce),
});
export type DescriptionSetup = Readonly<z.infer<typeof descriptionSetup>>;

/** Places take anything. */
export const NO_LIMITS: DescriptionLimits = {
  characters: null,
  bytes: null,
  chaptersFromNought: false,
  leastChapters: 0,
  leastChapterMs: 0,
  refused: '',
};

/**
 * What places that host recordings usually ask of a text whose lines are to
 * become chapters. Common practice, from memory, and different from place to
 * place: so each workshop can change it.
 */
export const USUAL_LIMITS: DescriptionLimits = {
  characters: 5_000,
  bytes: 5_000,
  chaptersFromNought: true,
  leastChapters: 3,
  leastChapterMs: 10_000,
  refused: '<>',
};

/** As everybody begins. */
export const HEADINGS: Readonly<Record<PartKind, string>> = {
  summary: '',
  page: '',
  chapters: 'Chapters',
  rings: 'Rings',
  materials: 'Other materials',
  tools: 'Tools',
  links: 'Links',
  cautions: 'Cautions',
  corrections: 'Corrections',
  licence: 'Licence',
  house: '',
};

export const DEFAULT_SETUP: DescriptionSetup = {
  parts: PART_KINDS.map((kind) => ({ kind, shown: true, heading: HEADINGS[kind] })),
  house: '',
  campaign: '',
  limits: USUAL_LIMITS,
  // Cautions, corrections, the chapters and the way to the lesson page stay to the last.
  leaveOut: ['house', 'licence', 'links', 'tools', 'materials', 'rings', 'summary'],
};

/** A stored setup, completed with parts that did not exist when it was stored; the default where there is none. */
export function completeSetup(stored: unknown): DescriptionSetup {
  const read = descriptionSetup.safeParse(stored);
  if (!read.success) return DEFAULT_SETUP;
  const there = new Set(read.data.parts.map(({ kind }) => kind));
  const missing = DEFAULT_SETUP.parts.filter(({ kind }) => !there.has(kind));
  return { ...read.data, parts: [...read.data.parts, ...missing] };
}
