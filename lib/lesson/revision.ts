/**
 * A revision: one published state of a lesson, frozen for ever, with all that
 * its page and its files need. The public side reads nothing else.
 */
import { z } from 'zod';
import { type ExplainedTerm, explainedTerm } from '#lib/glossary/explained-term.ts';
import { type Cue, compareCues, cue } from '#lib/transcript/cue.ts';
import { type Content, content, thingId } from './content.ts';
import { standingEffects } from './correction-effects.ts';
import { type FrozenKit, freezeKits, frozenKit } from './frozen-kit.ts';
import { lessonTerms } from './lesson-terms.ts';
import { pageSteps } from './page-steps.ts';

export const REVISION_SCHEMA = 1;

/** The recording as it was; the keys name stored files that a revision keeps alive. */
export const frozenRecording = z.object({
  id: z.string().min(1),
  durationMs: z.int().min(0),
  hasVideo: z.boolean(),
  hasAudio: z.boolean(),
  /** Pixels as shown, rotation applied; null without a picture. */
  width: z.int().min(1).nullable(),
  height: z.int().min(1).nullable(),
  mediaType: z.string().min(1),
  mediaKey: z.string().min(1),
  posterKey: z.string().min(1).nullable(),
});
export type FrozenRecording = Readonly<z.infer<typeof frozenRecording>>;

/** A picture of a step. */
export const frozenStill = z.object({
  /** Id of the placement or step that it shows. */
  of: thingId,
  atMs: z.int().min(0),
  key: z.string().min(1),
  /** What it shows, in words. */
  text: z.string(),
});
export type FrozenStill = Readonly<z.infer<typeof frozenStill>>;

export const revision = z.object({
  schema: z.literal(REVISION_SCHEMA),
  number: z.int().min(1),
  /** ISO 8601, UTC. */
  publishedAt: z.iso.datetime(),
  workshop: z.object({ name: z.string(), slug: z.string() }),
  content,
  cues: z.array(cue),
  recording: frozenRecording.nullable(),
  stills: z.array(frozenStill),
  kits: z.array(frozenKit),
  /** Terms that the lesson uses, explained; none in revisions that were published before there were any. */
  terms: z.array(explainedTerm).default([]),
});

type Parsed = z.infer<typeof revision>;
export type Revision = Readonly<
  Omit<Parsed, 'content' | 'cues' | 'recording' | 'stills' | 'kits' | 'terms'> & {
    content: Content;
    cues: readonly Cue[];
    recording: FrozenRecording | null;
    stills: readonly FrozenStill[];
    kits: readonly FrozenKit[];
    terms: readonly ExplainedTerm[];
  }
>;

/** What `freezeRevision` is told. */
export interface ToFreeze {
  readonly number: number;
  readonly publishedAt: Date;
  readonly workshop: { readonly name: string; readonly slug: string };
  readonly content: Content;
  readonly cues: readonly Cue[];
  readonly recording: FrozenRecording | null;
  /** Stored pictures by their moment, ms. */
  readonly stillKeys: ReadonlyMap<number, string>;
  /** Terms of the workshop that it explains itself. */
  readonly terms: readonly ExplainedTerm[];
  /** Corrections that the last revision carries; they stand as they were published. */
  readonly published: Content['corrections'];
}

/**
 * The document of a new revision. Corrections that were published stay word
 * for word, wherever a re-edited recording moved their moment; new ones get this revision's number, and tell
 * of what they put right only what still is. A step whose picture was not
 * stored simply has none. The same input gives the same document.
 */
export function freezeRevision(from: ToFreeze): Revision {
  const draft = { content: from.content, cues: from.cues };
  const drafted = from.content.corrections.map((correction) => ({
    ...correction,
    effects: standingEffects(draft, correction),
  }));
  const corrections = numberCorrections(from.published, drafted, from.number);
  return {
    schema: REVISION_SCHEMA,
    number: from.number,
    publishedAt: from.publishedAt.toISOString(),
    workshop: { name: from.workshop.name, slug: from.workshop.slug },
    content: { ...from.content, dismissed: [], corrections },
    cues: from.cues.toSorted(compareCues),
    recording: from.recording,
    stills: pageSteps(from.content).flatMap((step) => {
      const key = step.atMs === null ? undefined : from.stillKeys.get(step.atMs);
      return step.atMs === null || key === undefined
        ? []
        : [{ of: step.id, atMs: step.atMs, key, text: step.stillText }];
    }),
    kits: freezeKits(from.content),
    terms: [...lessonTerms(from.content, from.terms, from.cues)],
  };
}

/**
 * Published corrections first, word for word, at the moment where the draft has
 * them (a re-edited recording moves it); then the new ones with their number.
 */
export function numberCorrections(
  published: Content['corrections'],
  drafted: Content['corrections'],
  number: number,
): Content['corrections'] {
  const known = new Set(published.map((correction) => correction.id));
  const spans = new Map(drafted.map(({ id, startMs, endMs }) => [id, { startMs, endMs }]));
  return [
    ...published.map((correction) => ({ ...correction, ...spans.get(correction.id) })),
    ...drafted
      .filter((correction) => !known.has(correction.id))
      .map((correction) => ({ ...correction, revision: number })),
  ];
}
