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

/** A client of its own for a named database; the caller disconnects it. */
export const openDatabase = (connectionString: string): Database =>
  new PrismaClient({ adapter: new PrismaPg({ connectionString }) });
