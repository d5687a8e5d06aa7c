/**
 * What a teacher does, one action a file: each loads through the rim, decides
 * through the pure core and saves. An action is one function
 * `(bench, input) => Promise<Result>`; this file puts together what they need.
 */
import { randomUUID } from 'node:crypto';
import { type Database, database } from '#lib/data/database.ts';

/** What actions work with; tests hand in their own. */
export interface Bench {
  readonly db: Database;
  readonly now: () => Date;
  readonly newId: () => string;
}

/** The running program's own bench. */
export const openBench = (): Bench => ({ db: database(), now: () => new Date(), newId: randomUUID });
