/**
 * The whole program, built and running, for tests that go through HTTP or a
 * browser: a web and a worker process on a free port, with a database and a
 * files folder of their own.
 */
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { inject } from 'vitest';
import { foundingInvitation } from '#lib/access/invitation.ts';
import type { Database } from '#lib/data/database.ts';
import { atEndOfFile } from './at-end.ts';
import { lastingDatabase, testDatabase } from './database.ts';
import { Part } from './run-part.ts';
import { TEST_SECRET } from './test-secret.ts';

export interface TestApp {
  /** Of the site, without a slash at its end. */
  readonly address: string;
  readonly db: Database;
  readonly databaseAddress: string;
  /** Folder of recordings and what is made from them. */
  readonly files: string;
  readonly web: Part;
  readonly worker: Part;
}

/** Further settings of the environment, by name. */
export type Settings = Readonly<Record<string, string>>;

let shared: Promise<TestApp> | undefined;

/**
 * The program that test files share, one in each process that runs tests:
 * started by the first that asks. Others have left workshops and people in it;
 * look only at your own. Who stops its processes, founds the first workshop or
 * needs settings of its own starts one with `startApp`.
 */
export async function sharedApp(): Promise<TestApp> {
  const running = await shared?.catch(() => undefined);
  if (running?.web.runs && running.worker.runs) return running;
  shared = lastingDatabase().then(({ db, address }) => launch(address, db, {}, inject('testFolder')));
  return shared;
}

/**
 * Starts the program; it is stopped when the test file is done. Call it in
 * beforeAll with a long time limit.
 */
export async function startApp(settings: Settings = {}): Promise<TestApp> {
  const { db, address: databaseAddress } = await testDatabase();
  return startAppOn(databaseAddress, db, settings);
}

/** Starts the program on a database that the caller looks after. */
export async function startAppOn(
  databaseAddress: string,
  db: Database,
  settings: Settings = {},
): Promise<TestApp> {
  const app = await launch(databaseAddress, db, settings);
  atEndOfFile(async () => {
    await Promise.all([app.web.stop(), app.worker.stop()]);
    await rm(dirname(app.files), { recursive: true, force: true });
  });
  return app;
}

async function launch(
  databaseAddress: string,
  db: Database,
  settings: Settings,
  within = tmpdir(),
): Promise<TestApp> {
  const folder = await mkdtemp(join(within, 'benchleaf-app-'));
  const files = join(folder, 'files');
  await mkdir(files);
  const port = await freePort();
  const address = `http://127.0.0.1:${port}`;
  const env = {
    PATH: process.env['PATH'],
    HOME: process.env['HOME'],
    ...(process.env['FFMPEG_BIN'] ? { FFMPEG_BIN: process.env['FFMPEG_BIN'] } : {}),
    ...(process.env['BENCHLEAF_BUILD_DIR']
      ? { BENCHLEAF_BUILD_DIR: process.env['BENCHLEAF_BUILD_DIR'] }
      : {}),
    NODE_ENV: 'production',
    DATABASE_URL: databaseAddress,
    BENCHLEAF_FILES: files,
    BENCHLEAF_ADDRESS: address,
    BENCHLEAF_SECRET: TEST_SECRET,
    BENCHLEAF_LOG: 'warn',
    PORT: String(port),
    ...settings,
  } as NodeJS.ProcessEnv;
  const web = new Part('server', env);
  const worker = new Part('worker', env);
  try {
    await Promise.all([web.start(), worker.start()]);
  } catch (error) {
    await Promise.all([web.stop(), worker.stop()]);
    throw error;
  }
  return { address, db, databaseAddress, files, web, worker };
}

/** The whole one-time address that makes the first owner. */
export async function foundingAddress(app: TestApp): Promise<string> {
  const path = await foundingInvitation(app.db, new Date());
  if (path === null) throw new Error('This workshop has an owner already.');
  return `${app.address}${path}`;
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() =>
        address && typeof address === 'object' ? resolve(address.port) : reject(new Error('no port')),
      );
    });
  });
}
