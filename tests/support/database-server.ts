/**
 * Runs once per test run: a PostgreSQL server (an embedded one in a temporary
 * folder, unless BENCHLEAF_TEST_SERVER names one) with a template database
 * that has been migrated. Test files copy the template (database.ts).
 */
import { chmod, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import type { TestProject } from 'vitest/node';
import { startServer } from '#lib/data/embedded-server.ts';
import { applyMigrations } from '#lib/data/migrate.ts';
import { openQueue } from '#lib/jobs/queue.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Address of the server's database `postgres`. */
    readonly testServer: string;
    /** Name of the migrated database. */
    readonly testTemplate: string;
    /** A folder that is gone when the run is done. */
    readonly testFolder: string;
  }
}

/** `nobody`, on every Linux: PostgreSQL refuses to run as root. */
const NOBODY = { uid: 65_534, gid: 65_534 };

interface Prepared {
  readonly address: string;
  readonly template: string;
  readonly folder: string;
  readonly tearDown: () => Promise<void>;
}

// Kinds of tests (projects) that run together share one server and one template;
// each loads this file anew.
const shared = globalThis as { benchleafTestServer?: Promise<Prepared>; benchleafTestServerUsers?: number };

export async function setup(project: TestProject): Promise<() => Promise<void>> {
  shared.benchleafTestServerUsers = (shared.benchleafTestServerUsers ?? 0) + 1;
  shared.benchleafTestServer ??= prepare();
  const { address, template, folder, tearDown } = await shared.benchleafTestServer;
  project.provide('testServer', address);
  project.provide('testTemplate', template);
  project.provide('testFolder', folder);
  return async () => {
    shared.benchleafTestServerUsers = (shared.benchleafTestServerUsers ?? 1) - 1;
    if (shared.benchleafTestServerUsers === 0) await tearDown();
  };
}

async function prepare(): Promise<Prepared> {
  const given = process.env['BENCHLEAF_TEST_SERVER'];
  const server = given ? { address: given, stop: async () => undefined } : await startTemporaryServer();
  const template = `template_${process.pid}`;
  await asAdmin(server.address, `CREATE DATABASE ${template}`);
  const address = databaseAddress(server.address, template);
  await applyMigrations(address, { folder: join(import.meta.dirname, '..', '..', 'prisma') });
  const queue = await openQueue(address, 'sender');
  await queue.stop(0);
  const folder = await mkdtemp(join(tmpdir(), 'benchleaf-run-'));
  const tearDown = async (): Promise<void> => {
    await dropAll(server.address, template);
    await server.stop();
    await rm(folder, { recursive: true, force: true, maxRetries: 5 });
  };
  return { address: server.address, template, folder, tearDown };
}

/** Drops the template and the copies that outlived their test files; their names begin with its own. */
async function dropAll(server: string, template: string): Promise<void> {
  const client = new pg.Client({ connectionString: server });
  await client.connect();
  try {
    const { rows } = await client.query<{ name: string }>(
      'SELECT datname AS name FROM pg_database WHERE datname = $1 OR starts_with(datname, $2)',
      [template, `${template}_`],
    );
    for (const { name } of rows) await client.query(`DROP DATABASE IF EXISTS ${name} WITH (FORCE)`);
  } finally {
    await client.end();
  }
}

/** A server in a folder of its own that vanishes with it. */
export async function startTemporaryServer() {
  const folder = await mkdtemp(join(tmpdir(), 'benchleaf-test-'));
  // The server's user must be able to walk through.
  await chmod(folder, 0o711);
  const server = await startServer({
    folder: join(folder, 'server'),
    runAs: process.getuid?.() === 0 ? NOBODY : null,
    password: 'test',
    logFile: join(folder, 'log'),
    // Killed processes lose nothing by this; only a machine that loses power would.
    settings: ['fsync=off', 'full_page_writes=off', 'max_connections=200'],
  });
  const stop = async (): Promise<void> => {
    await server.stop();
    await rm(folder, { recursive: true, force: true });
  };
  return { address: server.address('postgres'), stop, server };
}

/** The address of another database of the same server. */
export function databaseAddress(serverAddress: string, name: string): string {
  const address = new URL(serverAddress);
  address.pathname = `/${name}`;
  return address.href;
}

/** Runs one statement on the server's own database. */
export async function asAdmin(serverAddress: string, statement: string): Promise<void> {
  const client = new pg.Client({ connectionString: serverAddress });
  await client.connect();
  try {
    await client.query(statement);
  } finally {
    await client.end();
  }
}
