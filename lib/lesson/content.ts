/**
 * What a lesson says: one document, checked whole whenever it crosses a
 * border. Everything in it has an id for life. Cues are kept beside it, in
 * rows (lib/transcript/cue.ts). This folder knows no storage and no screen.
 *
 * Lengths are millimetres, given to 1/10,000; masses are grams; money is
 * whole minor units; times are whole milliseconds.
 */
import { z } from 'zod';
import { momentMs } from '#lib/time/time.ts';

export const CONTENT_SCHEMA = 1;

export const thingId = z.string().min(1).max(64);
const line = z.string().max(300);
const paragraph = z.string().max(20_000);
/** An address that a pupil may follow: https, http or mailto only. */
export const linkAddress = z
  .string()
  .max(2_000)
  .refine((text) => text === '' || /^(https?:\/\/|mailto:)\S+$/i.test(text), {
    message: 'A link starts with https://, http:// or mailto:',
  });
const count = z.int().min(0).max(100_000);
const minorUnits = z.int().min(0).max(1_000_000_000);

/** Kinds of chapter, in the order in which a lesson usually has them. */
export const CHAPTER_KINDS = [
  'opening',
  'materials',
  'terms',
  'setup',
  'repeat unit',
  'finishing',
  'clasp',
  'variation',
  'closing',
] as const;

/** A titled span: from its start to the next chapter's start or the recording's end. */
export const chapter = z.object({
  id: thingId,
  kind: z.enum(CHAPTER_KINDS),
  title: line,
  startMs: momentMs,
});
export type Chapter = Readonly<z.infer<typeof chapter>>;

/** A size as the teacher stated it, with the millimetres that it means. */
export const statedSize = z.object({
  /** As typed, its system always in it: `1/4 in`, `18 SWG`, `1.2 mm`. */
  stated: z.string().min(1).max(60),
  mm: z.number().positive().max(1_000),
});
export type StatedSize = Readonly<z.infer<typeof statedSize>>;

/** How something is sold: a pack of so many at a price; null where unknown. */
export const offer = z.object({
  packCount: z.int().min(1).max(100_000),
  priceMinor: minorUnits.nullable(),
  link: linkAddress,
});
export type Offer = Readonly<z.infer<typeof offer>>;

export const ringKind = z.object({
  id: thingId,
  /** What the lesson calls it: `large copper`. */
  name: line,
  innerDiameter: statedSize,
  /** The inner diameter measured on a closed ring, where it was; wins over the stated one. */
  measuredInnerMm: z.number().positive().max(1_000).nullable(),
  wire: statedSize,
  /** Id of a metal in lib/rings/metals.ts, or `other`. */
  metal: z.string().min(1).max(40),
  /** Named where the metal is `other`, else empty. */
  metalName: line,
  /** g/cm3 where the metal is `other`; null takes the table's. */
  densityGPerCm3: z.number().positive().max(30).nullable(),
  /** Colour in words, so that it can be followed by ear: `copper`, `deep blue`. */
  colour: line,
  /** `#rrggbb` for pictures; never the only cue. */
  colourCode: z.string().regex(/^#[0-9a-f]{6}$/),
  /** Grams of a weighed hundred; wins over the computed mass. */
  weighedHundredG: z.number().positive().max(100_000).nullable(),
  offer: offer.nullable(),
});
export type RingKind = Readonly<z.infer<typeof ringKind>>;

/** The face of the older ring that is turned to the viewer is its front. */
export const SIDES = ['front', 'back'] as const;

/** How what was added is laid, beyond who links with whom: 2-2, box and byzantine differ in this alone. */
export const LIES = ['as it falls', 'fold back', 'part', 'through between', 'over', 'under'] as const;

export const placement = z.object({
  id: thingId,
  /** Ring kind that is opened and woven in; null where only closed rings are laid out. */
  opened: thingId.nullable(),
  /** Rings closed beforehand that it picks up (or that are laid out). */
  carries: z.array(z.object({ ringKind: thingId, count: z.int().min(1).max(1_000) })).max(20),
  /** One entry per ring that is passed, in the order passed. */
  passes: z.array(z.object({ from: z.enum(SIDES) })).max(50),
  lie: z.enum(LIES),
  /** The sentence that the pupil reads. */
  sentence: paragraph,
  /** The moment that shows it; a still is taken from there. */
  atMs: momentMs.nullable(),
});
export type Placement = Readonly<z.infer<typeof placement>>;

export const SEQUENCE_PARTS = ['start', 'repeat', 'finishing'] as const;
export type SequencePart = (typeof SEQUENCE_PARTS)[number];

/** A step that adds no rings: one numbered action with its time. */
export const step = z.object({
  id: thingId,
  sentence: paragraph,
  atMs: momentMs.nullable(),
});
export type Step = Readonly<z.infer<typeof step>>;

export const sample = z.object({
  /** Length that one repeat adds, mm. */
  perRepeatMm: z.number().positive().max(10_000),
  /** What the ends add besides the repeats, mm. */
  endsMm: z.number().min(0).max(10_000),
  /** Closed clasp with its rings, mm. */
  claspMm: z.number().min(0).max(10_000),
  /** How it was measured. */
  measured: z.enum(['pulled taut', 'at rest']),
});
export type Sample = Readonly<z.infer<typeof sample>>;

/** A size that the lesson gives a kit for; its target length is stated once, ease included. */
export const size = z.object({
  id: thingId,
  name: line,
  /** Wrist, ankle, neck: what the tape shows, mm. */
  bodyMm: z.number().positive().max(10_000),
});
export type Size = Readonly<z.infer<typeof size>>;

export const kitRules = z.object({
  /** What is added to the body measure to get the finished length, thickness of the piece included, mm. */
  easeMm: z.number().min(0).max(1_000),
  rounding: z.enum(['up', 'nearest', 'down']),
  /** Spare rings in whole per cent of each line, rounded up per line. */
  sparePercent: z.int().min(0).max(100),
});

export const MATERIAL_KINDS = ['tool', 'finding', 'consumable', 'safety', 'bead', 'cord', 'other'] as const;

export const material = z.object({
  id: thingId,
  kind: z.enum(MATERIAL_KINDS),
  name: line,
  /** Thousandths of a unit, so that 2.5 m of cord is a whole number. */
  quantityMilli: z.int().min(0).max(1_000_000_000),
  /** `piece`, `m`, `g`, `drop`. */
  unit: z.string().min(1).max(30),
  /** `length`: per 100 mm of finished length. */
  per: z.enum(['lesson', 'length', 'repeat']),
  /** Grams of one unit, where its mass counts. */
  massG: z.number().positive().max(100_000).nullable(),
  offer: offer.nullable(),
  note: paragraph,
});
export type Material = Readonly<z.infer<typeof material>>;

/** A caution shown to pupils: one of ours (lib/lesson/cautions.ts) or the teacher's own words. */
export const caution = z.object({
  id: thingId,
  /** Id of one of ours, or null. */
  of: z.string().max(40).nullable(),
  text: paragraph,
});
export type Caution = Readonly<z.infer<typeof caution>>;

export const CORRECTION_KINDS = [
  'said wrongly',
  'shown wrongly',
  'written wrongly',
  'kit wrong',
  'link dead',
  'safety',
] as const;

/** A public statement that something was wrong, and what is right. Never removed once published. */
export const correction = z.object({
  id: thingId,
  kind: z.enum(CORRECTION_KINDS),
  /** The span of the recording that it is about; null where it is about no moment. */
  startMs: momentMs.nullable(),
  endMs: momentMs.nullable(),
  wrong: paragraph,
  right: paragraph,
  /** Who is affected, in words: `everyone who bought a kit before June`. */
  affects: paragraph,
  kitsChange: z.boolean(),
  /** Revision that first carried it; null until published. */
  revision: z.int().min(1).nullable(),
});
export type Correction = Readonly<z.infer<typeof correction>>;

export const lessonLink = z.object({ id: thingId, label: line, address: linkAddress });
export type LessonLink = Readonly<z.infer<typeof lessonLink>>;

export const LEANINGS = ['none', 'left', 'right'] as const;
export const DIFFICULTIES = ['first piece', 'some practice', 'sure hands'] as const;

const scalars = z.object({
  title: line,
  summary: paragraph,
  /** Name of the weave or technique. */
  weave: line,
  otherNames: line,
  difficulty: z.enum(DIFFICULTIES),
  leaning: z.enum(LEANINGS),
  /** BCP 47 tag of what is spoken. */
  language: z.string().min(2).max(35),
  prepareMinutes: count.nullable(),
  makeMinutes: count.nullable(),
  /** ISO 4217 code of every price in the lesson. */
  currency: z.string().regex(/^[A-Z]{3}$/),
  sample: sample.nullable(),
  kitRules,
  licence: line,
  /** Findings of the check (lib/lesson/missing.ts) that the teacher put aside. */
  dismissed: z.array(z.string().max(200)).max(1_000),
});

const lists = z.object({
  chapters: z.array(chapter).max(500),
  ringKinds: z.array(ringKind).max(100),
  start: z.array(placement).max(500),
  repeat: z.array(placement).max(500),
  finishing: z.array(placement).max(500),
  steps: z.array(step).max(500),
  sizes: z.array(size).max(50),
  materials: z.array(material).max(200),
  cautions: z.array(caution).max(50),
  corrections: z.array(correction).max(500),
  links: z.array(lessonLink).max(50),
});

export const scalarField = scalars.keyof();
export type ScalarField = z.infer<typeof scalarField>;
export const listField = lists.keyof();
export type ListField = z.infer<typeof listField>;

export const content = z.object({ schema: z.literal(CONTENT_SCHEMA), ...scalars.shape, ...lists.shape });

type Frozen<T> = T extends readonly (infer E)[]
  ? readonly Frozen<E>[]
  : T extends object
    ? { readonly [K in keyof T]: Frozen<T[K]> }
    : T;
export type Content = Frozen<z.infer<typeof content>>;

/** A lesson before anything was said about it. */
export function emptyContent(title: string, language: string, currency: string): Content {
  return {
    schema: CONTENT_SCHEMA,
    title,
    summary: '',
    weave: '',
    otherNames: '',
    difficulty: 'some practice',
    leaning: 'none',
    language,
    prepareMinutes: null,
    makeMinutes: null,
    currency,
    sample: null,
    kitRules: { easeMm: 20, rounding: 'up', sparePercent: 10 },
    licence: '',
    dismissed: [],
    chapters: [],
    ringKinds: [],
    start: [],
    repeat: [],
    finishing: [],
    steps: [],
    sizes: [],
    materials: [],
    cautions: [],
    corrections: [],
    links: [],
  };
}
