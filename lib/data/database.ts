/** The database, as one client per process. */
import { PrismaPg } from '@prisma/adapter-pg';
import { environment } from '#lib/config/environment.ts';
import { PrismaClient } from './generated/client.ts';

export type Database = PrismaClient;
/** What a function needs that also runs inside a transaction. */
export type Queries = Omit<
  PrismaClient,
  '$connect' | '$disconnect' | '$on' | '$transaction' | '$use' | '$extends'
>;

const kept = globalThis as { benchleafDatabase?: PrismaClient };

/** The process's client; kept on the global so that a reload in development keeps its connections. */
export function database(): Database {
  kept.benchleafDatabase ??= openDatabase(environment().DATABASE_URL);
  return kept.benchleafDatabase;
}

/**
 * How long a transaction may wait to begin, and last, ms. The client's own 2 s
 * and 5 s were too short where a process was drawing pictures at the same time:
 * what only had to wait its turn was refused.
 */
const PATIENCE = { maxWait: 15_000, timeout: 30_000 } as const;

/** A client of its own for a named database; the caller disconnects it. */
export const openDatabase = (connectionString: string): Database =>
  new PrismaClient({ adapter: new PrismaPg({ connectionString }), transactionOptions: PATIENCE });
