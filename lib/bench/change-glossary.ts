/** What a workshop does about its glossary: its own terms, and decisions about misheard words. */
import { z } from 'zod';
import type { Membership } from '#lib/access/caller.ts';
import {
  addTaken,
  countDecisions,
  countOwnTerms,
  findDecisions,
  findOwnTerms,
  forgetDecision,
  type OwnTerm,
  putOwnTerm,
  setNever,
} from '#lib/data/glossary.ts';
import type { HeardDecision } from '#lib/glossary/decide.ts';
import { plainWords } from '#lib/glossary/suggestion.ts';
import { failed, ok, type Result } from '#lib/result.ts';
import type { Bench } from './bench.ts';

/** Most terms, and most decisions, that a workshop keeps: far more than anyone has, and a search stays quick. */
const MOST_TERMS = 1_000;
const MOST_DECISIONS = 5_000;

const text = z
  .string()
  .trim()
  .max(120)
  .refine((typed) => typed.isWellFormed() && !typed.includes('\u0000'));
const some = z.array(text.min(1)).max(20);

export const ownTermTyped = z.object({
  term: text.min(1),
  forms: some.default([]),
  sounds: some.default([]),
  meaning: z
    .string()
    .trim()
    .max(600)
    .refine((typed) => typed.isWellFormed() && !typed.includes('\u0000'))
    .default(''),
});
export type OwnTermTyped = Readonly<z.infer<typeof ownTermTyped>>;

export const VERDICTS = ['taken', 'never', 'forget'] as const;
export const decisionTyped = z.object({
  heard: text.min(1).transform(plainWords),
  instead: text.min(1),
  verdict: z.enum(VERDICTS),
  /** In how many places it was taken. */
  times: z.int().min(1).max(20_000).default(1),
});
export type DecisionTyped = Readonly<z.infer<typeof decisionTyped>>;

export interface WorkshopGlossary {
  readonly terms: readonly OwnTerm[];
  readonly decisions: readonly HeardDecision[];
}

export const readGlossary = async ({ db }: Bench, { workshop }: Membership): Promise<WorkshopGlossary> => ({
  terms: await findOwnTerms(db, workshop.id),
  decisions: await findDecisions(db, workshop.id),
});

/** Keeps a term; the same term again replaces how it is said and what it means. */
export async function keepTerm(
  { db, now, newId }: Bench,
  { workshop }: Membership,
  typed: OwnTermTyped,
): Promise<Result<null, { readonly code: 'glossary-full' }>> {
  if ((await countOwnTerms(db, workshop.id)) >= MOST_TERMS) return failed({ code: 'glossary-full' });
  await putOwnTerm(db, workshop.id, { id: newId(), ...typed }, now());
  return ok(null);
}

/** Remembers what was decided about misheard words, for every lesson of the workshop. */
export async function decideHeard(
  { db, now }: Bench,
  { workshop }: Membership,
  { heard, instead, verdict, times }: DecisionTyped,
): Promise<Result<null, { readonly code: 'glossary-full' }>> {
  const pair = { heard, instead };
  if (verdict === 'forget') {
    await forgetDecision(db, workshop.id, pair);
    return ok(null);
  }
  if ((await countDecisions(db, workshop.id)) >= MOST_DECISIONS) return failed({ code: 'glossary-full' });
  await (verdict === 'taken'
    ? addTaken(db, workshop.id, pair, times, now())
    : setNever(db, workshop.id, pair, now()));
  return ok(null);
}
