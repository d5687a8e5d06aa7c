/** A workshop's own terms, and what it decided about misheard words. */
import { z } from 'zod';
import type { HeardDecision } from '#lib/glossary/decide.ts';
import type { ExplainedTerm } from '#lib/glossary/explained-term.ts';
import type { Queries } from './database.ts';

/** A term as the workshop keeps it. */
export interface OwnTerm {
  readonly id: string;
  readonly term: string;
  /** Other ways of writing it that are right. */
  readonly forms: readonly string[];
  /** How it is said, in ordinary words. */
  readonly sounds: readonly string[];
  /** What it means, for pupils; empty: it is not explained. */
  readonly meaning: string;
}

const texts = z.array(z.string());

/** By the alphabet. */
export async function findOwnTerms(db: Queries, workshopId: string): Promise<readonly OwnTerm[]> {
  const rows = await db.glossaryTerm.findMany({ where: { workshopId }, orderBy: { term: 'asc' } });
  return rows.map(({ id, term, forms, sounds, meaning }) => ({
    id,
    term,
    meaning,
    forms: texts.parse(forms),
    sounds: texts.parse(sounds),
  }));
}

/** Those of its own terms that a workshop explains to pupils. */
export async function findExplainedTerms(db: Queries, workshopId: string): Promise<readonly ExplainedTerm[]> {
  const terms = await findOwnTerms(db, workshopId);
  return terms
    .filter(({ meaning }) => meaning !== '')
    .map(({ term, forms, meaning }) => ({ term, forms: [...forms], meaning }));
}

/** Keeps a term; one that is there already, however it is written, is replaced. */
export async function putOwnTerm(
  db: Queries,
  workshopId: string,
  { id, term, forms, sounds, meaning }: OwnTerm,
  at: Date,
): Promise<void> {
  const said = { forms: [...forms], sounds: [...sounds], meaning };
  await db.glossaryTerm.upsert({
    where: { workshopId_term: { workshopId, term } },
    create: { id, workshopId, term, ...said, createdAt: at },
    update: said,
  });
}

/** False where the workshop has no such term. */
export async function removeOwnTerm(db: Queries, workshopId: string, id: string): Promise<boolean> {
  const { count } = await db.glossaryTerm.deleteMany({ where: { id, workshopId } });
  return count > 0;
}

export const countOwnTerms = (db: Queries, workshopId: string): Promise<number> =>
  db.glossaryTerm.count({ where: { workshopId } });

/** The latest first. */
export async function findDecisions(db: Queries, workshopId: string): Promise<readonly HeardDecision[]> {
  const rows = await db.heardDecision.findMany({
    where: { workshopId },
    orderBy: [{ updatedAt: 'desc' }, { heard: 'asc' }],
  });
  return rows.map(({ heard, instead, taken, never }) => ({ heard, instead, taken, never }));
}

type Pair = Pick<HeardDecision, 'heard' | 'instead'>;
const keyOf = (workshopId: string, { heard, instead }: Pair) => ({
  workshopId_heard_instead: { workshopId, heard, instead },
});

/** Counts that words were taken for others; what was never to be offered is offered again. */
export async function addTaken(
  db: Queries,
  workshopId: string,
  pair: Pair,
  times: number,
  at: Date,
): Promise<void> {
  await db.heardDecision.upsert({
    where: keyOf(workshopId, pair),
    create: { workshopId, ...pair, taken: times, updatedAt: at },
    update: { taken: { increment: times }, never: false, updatedAt: at },
  });
}

/** Remembers that words are never to be offered again. */
export async function setNever(db: Queries, workshopId: string, pair: Pair, at: Date): Promise<void> {
  await db.heardDecision.upsert({
    where: keyOf(workshopId, pair),
    create: { workshopId, ...pair, never: true, updatedAt: at },
    update: { taken: 0, never: true, updatedAt: at },
  });
}

/** Forgets a decision, as if the words had never been met. */
export async function forgetDecision(db: Queries, workshopId: string, pair: Pair): Promise<void> {
  await db.heardDecision.deleteMany({ where: { workshopId, ...pair } });
}

export const countDecisions = (db: Queries, workshopId: string): Promise<number> =>
  db.heardDecision.count({ where: { workshopId } });

/** Keeps a decision as it was made elsewhere. */
export async function addDecision(
  db: Queries,
  workshopId: string,
  decision: Pair & Pick<HeardDecision, 'taken' | 'never'>,
  at: Date,
): Promise<void> {
  const { heard, instead, taken, never } = decision;
  await db.heardDecision.create({ data: { workshopId, heard, instead, taken, never, updatedAt: at } });
}
