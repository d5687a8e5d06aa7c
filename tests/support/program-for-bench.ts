/** The built program as it is in use, on a database and files of its own, for benches that time it in a browser. */
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { type Database, openDatabase } from '#lib/data/database.ts';
import { applyMigrations } from '#lib/data/migrate.ts';
import { prepareSite } from '../../scripts/prepare-build.ts';
import { asAdmin, databaseAddress, startTemporaryServer } from './database-server.ts';
import { Part } from './run-part.ts';
import { TEST_SECRET } from './test-secret.ts';

export interface ProgramForBench {
  readonly db: Database;
  /** Where a browser asks. */
  readonly address: string;
  /** Where the program itself listens. */
  readonly port: number;
  /** For things of the bench; `files` below it holds what the program stores. */
  readonly folder: string;
  readonly files: string;
  readonly stop: () => Promise<void>;
}

/** @param front where a server stands that asks the program in the browser's stead; none where the browser asks it */
export async function programForBench(front?: string): Promise<ProgramForBench> {
  const folder = await mkdtemp(join(tmpdir(), 'bench-'));
  const files = join(folder, 'files');
  await mkdir(files);
  const given = process.env['BENCHLEAF_TEST_SERVER'];
  const server = given ? { address: given, stop: async () => undefined } : await startTemporaryServer();
  const name = `bench_${process.pid}`;
  await asAdmin(server.address, `CREATE DATABASE ${name}`);
  const database = databaseAddress(server.address, name);
  await applyMigrations(database, { folder: join(import.meta.dirname, '..', '..', 'prisma') });
  const db = openDatabase(database);
  await prepareSite(console.log);
  const port = await freePort();
  const address = front ?? `http://127.0.0.1:${port}`;
  const web = new Part('server', {
    PATH: process.env['PATH'],
    HOME: process.env['HOME'],
    NODE_ENV: 'production',
    ...(process.env['BENCHLEAF_BUILD_DIR']
      ? { BENCHLEAF_BUILD_DIR: process.env['BENCHLEAF_BUILD_DIR'] }
      : {}),
    DATABASE_URL: database,
    BENCHLEAF_FILES: files,
    BENCHLEAF_ADDRESS: address,
    BENCHLEAF_SECRET: TEST_SECRET,
    BENCHLEAF_LOG: 'warn',
    PORT: String(port),
  } as NodeJS.ProcessEnv);
  await web.start();
  const stop = async () => {
    await web.stop();
    await db.$disconnect();
    await asAdmin(server.address, `DROP DATABASE IF EXISTS ${name} WITH (FORCE)`);
    await server.stop();
    await rm(folder, { recursive: true, force: true });
  };
  return { db, address, port, folder, files, stop };
}

function freePort(): Promise<number> {
  return new Promise((done) => {
    const probe = createServer().listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as AddressInfo;
      probe.close(() => done(port));
    });
  });
}

/** Chromium that does nothing of its own beside what is timed. */
export const browserForBench = () =>
  chromium.launch({
    executablePath: process.env['CHROMIUM_BIN'] ?? '/usr/bin/chromium',
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
    ],
  });
