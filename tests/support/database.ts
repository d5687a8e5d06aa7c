/** A database for one test file: a copy of the migrated template, gone when the file is done. */
import { inject } from 'vitest';
import { type Database, openDatabase } from '#lib/data/database.ts';
import { atEndOfFile } from './at-end.ts';
import { asAdmin, databaseAddress } from './database-server.ts';

export interface TestDatabase {
  readonly db: Database;
  /** Connection address, for what opens connections of its own. */
  readonly address: string;
}

let made = 0;

/** Call at the top of a test file, or in beforeAll. */
export async function testDatabase(): Promise<TestDatabase> {
  const database = await lastingDatabase();
  atEndOfFile(async () => {
    await database.db.$disconnect();
    const name = new URL(database.address).pathname.slice(1);
    await asAdmin(inject('testServer'), `DROP DATABASE IF EXISTS ${name} WITH (FORCE)`);
  });
  return database;
}

/** A database that is gone when the whole run is done. */
export async function lastingDatabase(): Promise<TestDatabase> {
  const server = inject('testServer');
  const template = inject('testTemplate');
  const name = `${template}_${process.pid}_${made++}`;
  await copyTemplate(server, template, name);
  const address = databaseAddress(server, name);
  return { db: openDatabase(address), address };
}

/** Copying waits for another copy of the same template: the server allows one at a time. */
async function copyTemplate(server: string, template: string, name: string): Promise<void> {
  for (let tries = 0; ; tries++) {
    try {
      await asAdmin(server, `CREATE DATABASE ${name} TEMPLATE ${template}`);
      return;
    } catch (error) {
      const busy = error instanceof Error && /is being accessed by other users/.test(error.message);
      if (!busy || tries > 100) throw error;
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
  }
}
