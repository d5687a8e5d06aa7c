/** A database for one test file: a copy of the migrated template, gone when the file is done. */
import { afterAll, inject } from 'vitest';
import { type Database, openDatabase } from '#lib/data/database.ts';
import { asAdmin, databaseAddress } from './database-server.ts';

export interface TestDatabase {
  readonly db: Database;
  /** Connection address, for what opens connections of its own. */
  readonly address: string;
}

let made = 0;

// Registered when a test file loads this one: within a hook it would be too late.
const toEnd: (() => Promise<void>)[] = [];
afterAll(async () => {
  for (const end of toEnd) await end();
});

/** Call at the top of a test file, or in beforeAll. */
export async function testDatabase(): Promise<TestDatabase> {
  const server = inject('testServer');
  const template = inject('testTemplate');
  const name = `test_${process.pid}_${process.env['VITEST_POOL_ID'] ?? 0}_${Date.now()}_${made++}`;
  await copyTemplate(server, template, name);
  const address = databaseAddress(server, name);
  const db = openDatabase(address);
  toEnd.push(async () => {
    await db.$disconnect();
    await asAdmin(server, `DROP DATABASE IF EXISTS ${name} WITH (FORCE)`);
  });
  return { db, address };
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
