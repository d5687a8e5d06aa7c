/**
 * What a lesson says: one document, checked whole whenever it crosses a
 * border. Everything in it has an id for life. Cues are kept beside it, in
 * rows (lib/transcript/cue.ts). This folder knows no storage and no screen.
 *
 * Lengths are millimetres, given to 1/10,000; masses are grams; money is
 * whole minor units; times are whole milliseconds.
 */
import { z } from 'zod';
import { chapter } from '#lib/chapters/chapter.ts';
import { kitRules, material, sample, size } from '#lib/kit/making.ts';
import { ringKind } from '#lib/rings/ring-kind.ts';
import { count, line, linkAddress, paragraph, thingId } from '#lib/thing.ts';
import { momentMs } from '#lib/time/time.ts';
import { pieceEnds, placement, run, step } from '#lib/weave/placement.ts';

// The words of chapters and of the making live where they are reckoned with; a lesson is made of them, so they can be had here too.
export { CHAPTER_KINDS, type Chapter } from '#lib/chapters/chapter.ts';
export { linkAddress, thingId } from '#lib/thing.ts';
export { type Placement, SEQUENCE_PARTS } from '#lib/weave/placement.ts';

export const CONTENT_SCHEMA = 1;

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

export const EFFECT_KINDS = [
  'cue text',
  'chapter',
  'step',
  'ring kind',
  'count',
  'material',
  'caution',
  'link',
  'text',
] as const;

/** Something in the lesson that was put right with a correction (lib/lesson/correction-effects.ts). */
export const correctionEffect = z.object({
  kind: z.enum(EFFECT_KINDS),
  /** Id of what holds it; the name of the field where the lesson itself does. */
  of: thingId,
  /** Which of its fields: `text`, `wire`, `carries/0/count`. */
  field: z.string().min(1).max(60),
  before: paragraph,
  after: paragraph,
});
export type CorrectionEffect = Readonly<z.infer<typeof correctionEffect>>;

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
  /** Id of the ring kind, step or material that it is about; null where it is about none, or about a moment alone. */
  of: thingId.nullable().default(null),
  /** What was put right with it; none in documents from before this was written down. */
  effects: z.array(correctionEffect).max(300).readonly().default([]),
  /** Revision that first carried it; null until published. */
  revision: z.int().min(1).nullable(),
});
export type Correction = Readonly<z.infer<typeof correction>>;

export const lessonLink = z.object({ id: thingId, label: line, address: linkAddress });

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
  /** Placement of the repeat that the finishing follows; null: after whole repeats. */
  endsAfter: thingId.nullable().default(null),
  /** What the ends of a finished piece must be like; null: not stated. */
  ends: pieceEnds.nullable().default(null),
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
  /** Runs of repeats, in order; none: the repeat is made as often as the length asks. */
  runs: z.array(run).max(100).default([]),
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
    kitRules: {
      easeMm: 20,
      thicknessMm: null,
      rounding: 'up',
      sparePercent: 10,
      spareBy: 'line',
      spareLeast: 0,
    },
    endsAfter: null,
    ends: null,
    licence: '',
    dismissed: [],
    chapters: [],
    ringKinds: [],
    start: [],
    repeat: [],
    finishing: [],
    runs: [],
    steps: [],
    sizes: [],
    materials: [],
    cautions: [],
    corrections: [],
    links: [],
  };
}
