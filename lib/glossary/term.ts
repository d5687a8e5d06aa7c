/**
 * A term of a glossary: how it is written, and how it is said. This folder
 * finds the places of a transcript where a recogniser may have misheard a
 * term; it never changes one.
 */
import { z } from 'zod';
import { line } from '#lib/thing.ts';

/** Words that stand for a term in a transcript, known by experience, and what has to stand near them to be believed. */
export const confusion = z.object({
  heard: line,
  /** One of these words stands right before; empty: any may. */
  after: z.array(line).max(100).default([]),
  /** One of these words stands right behind; empty: any may. */
  before: z.array(line).max(100).default([]),
  /** One of these words stands within a dozen words; empty: none need. */
  near: z.array(line).max(100).default([]),
  /** The form that was taken for it before in this workshop; absent: the glossary lists the mishearing. */
  instead: line.optional(),
});
export type Confusion = Readonly<z.infer<typeof confusion>>;

export const glossaryTerm = z.object({
  /** As it is to be written. */
  term: line.min(1),
  /** Other ways of writing it that are right: plurals, spellings, figures in words. Never suggested against. */
  forms: z.array(line).max(50).default([]),
  /** How it is said, spelled with ordinary words: `yens pinned`. Empty: as it is written. */
  sounds: z.array(line).max(20).default([]),
  confusions: z.array(confusion).max(50).default([]),
  /** A word of everyday speech too, so that it tells little about what is talked of. */
  everyday: z.boolean().default(false),
});
export type GlossaryTerm = Readonly<z.infer<typeof glossaryTerm>>;
