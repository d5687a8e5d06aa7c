/**
 * What `npm start` does once the packages are there: database, migrations,
 * build, web, worker; and on Ctrl-C the same backwards. The environment is
 * completed before anything of ours that reads it is loaded.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import pg from 'pg';
import { programPath } from '#lib/config/program-path.ts';
import { createDatabase, type RunningServer, startServer } from '#lib/data/embedded-server.ts';
import { findFfmpeg } from '#lib/recording/find-ffmpeg.ts';
import { FFMPEG, installPrograms } from './install-programs.ts';
import { type KeptProcess, keepRunning } from './keep-running.ts';
import { PlainFault } from './plain-fault.ts';
import { prepareClient, prepareSite } from './prepare-build.ts';
import { addressNote, databaseFolder, openState, type State } from './state-folder.ts';

const ROOT = join(import.meta.dirname, '..');
const say = (line: string): void => console.log(line);

let stopped = false;
const undo: (() => Promise<void>)[] = [];

/** Stops what was started, last first. */
async function stop(code: number): Promise<void> {
  if (stopped) return;
  stopped = true;
  while (undo.length > 0) {
    await undo
      .pop()?.()
      .catch((error: unknown) => console.error(String(error)));
  }
  process.exit(code);
}

for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
  process.on(signal, () => {
    if (!stopped) say('\nStopping …');
    void stop(0);
  });
}
// Whoever started us is gone: nobody could stop us any more.
process.on('disconnect', () => void stop(0));

try {
  await start();
} catch (error) {
  if (!stopped) {
    console.error(error instanceof PlainFault ? `\n${error.message}` : `\n${sentenceOf(error)}`);
    await stop(1);
  }
}

async function start(): Promise<void> {
  if (existsSync(join(ROOT, '.env'))) process.loadEnvFile(join(ROOT, '.env'));
  const port = Number(process.env['PORT'] ?? 3000);
  const host = process.env['HOST'] ?? '127.0.0.1';
  if (!Number.isInteger(port) || port < 1 || port > 65_535) {
    throw new PlainFault(`PORT is "${process.env['PORT']}"; it must be a number from 1 to 65535.`);
  }
  await checkPort(host, port);

  const state = await openState(ROOT);
  if (!(await findFfmpeg(process.env['FFMPEG_BIN'], programPath()))) {
    installPrograms([FFMPEG], say);
  }
  // A terminal is for sentences; whoever collects the log asks for more of it.
  process.env['BENCHLEAF_LOG'] ??= 'warn';
  process.env['BENCHLEAF_FILES'] ??= state.files;
  process.env['BENCHLEAF_SECRET'] ??= state.secrets.session;
  process.env['BENCHLEAF_ADDRESS'] ??= `http://${host === '127.0.0.1' ? 'localhost' : host}:${port}`;
  if (process.env['DATABASE_URL']) await checkDatabase(process.env['DATABASE_URL']);
  else process.env['DATABASE_URL'] = await startDatabase(state);

  await prepareClient(say);
  const { environment } = await import('#lib/config/environment.ts');
  const settings = environment();
  await writeFile(addressNote(state.folder), settings.BENCHLEAF_ADDRESS);
  const { applyMigrations } = await import('#lib/data/migrate.ts');
  const applied = await applyMigrations(settings.DATABASE_URL, { folder: join(ROOT, 'prisma') });
  if (applied.length > 0) say(`Brought the database up to date (${applied.join(', ')}).`);
  await prepareSite(say);

  const env = { ...process.env, NODE_ENV: 'production' } as NodeJS.ProcessEnv;
  await keep('server', env);
  await keep('worker', env);
  await greet(settings.BENCHLEAF_ADDRESS);
  loadDemo(env);
}

async function keep(name: 'server' | 'worker', env: NodeJS.ProcessEnv): Promise<void> {
  const kept: KeptProcess = await keepRunning(name, env);
  undo.push(() => kept.stop());
}

/** Says where it is, and how the first owner gets in. */
async function greet(address: string): Promise<void> {
  const { database } = await import('#lib/data/database.ts');
  const { foundingInvitation } = await import('#lib/access/invitation.ts');
  undo.push(() => database().$disconnect());
  const path = await foundingInvitation(database(), new Date());
  say(`\nBenchleaf is at  ${address}`);
  if (path) say(`Found your workshop here, once:  ${address}${path}`);
  say('Ctrl-C stops it.\n');
}

/** In a process of its own, beside the running site; where the demo is there, or was deleted, it does nothing. */
function loadDemo(env: NodeJS.ProcessEnv): void {
  const child = spawn(process.execPath, [join(ROOT, 'scripts/load-demo.ts')], {
    cwd: ROOT,
    env,
    detached: true,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const gone = once(child, 'close');
  let said = '';
  child.stdout.on('data', (chunk) => say(String(chunk).trim()));
  child.stderr.on('data', (chunk) => {
    said = `${said}${chunk}`.slice(-4_000);
  });
  void gone.then(() => {
    if (child.exitCode !== 0 && !stopped) {
      console.error(`The demo lesson could not be loaded; the next start tries again.\n${said.trim()}`);
    }
  });
  undo.push(async () => {
    child.kill('SIGTERM');
    await gone;
  });
}

async function startDatabase(state: State): Promise<string> {
  const home = {
    folder: databaseFolder(state.folder),
    runAs: state.databaseUser,
    password: state.secrets.database,
    logFile: join(state.folder, 'database.log'),
  };
  say(`Database, recordings and secrets are kept in ${state.folder}`);
  let server = await startServer(home);
  undo.push(() => server.stop());
  void keepDatabase(() => server);
  await createDatabase(server, 'benchleaf');
  return server.address('benchleaf');

  /** A server that ends by itself is started again on the port that everybody knows. */
  async function keepDatabase(current: () => RunningServer): Promise<void> {
    for (;;) {
      const { port, ended } = current();
      await ended;
      if (stopped) return;
      console.error('The database ended by itself; starting it again.');
      for (;;) {
        try {
          server = await startServer(home, port);
          break;
        } catch (error) {
          if (stopped) return;
          console.error(sentenceOf(error));
          await pause(2_000);
        }
      }
    }
  }
}

async function checkDatabase(address: string): Promise<void> {
  const client = new pg.Client({ connectionString: address, connectionTimeoutMillis: 5_000 });
  client.on('error', () => undefined);
  try {
    await client.connect();
  } catch (error) {
    throw new PlainFault(
      `The database that DATABASE_URL names (${withoutPassword(address)}) does not answer: ${sentenceOf(error)}. Start it or mend the address; without DATABASE_URL, Benchleaf starts a database of its own.`,
    );
  } finally {
    await client.end().catch(() => undefined);
  }
}

function withoutPassword(address: string): string {
  try {
    const { hostname, port, pathname } = new URL(address);
    return `${hostname}:${port || 5432}${pathname}`;
  } catch {
    return 'an address that cannot be read';
  }
}

function checkPort(host: string, port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', (error: NodeJS.ErrnoException) => {
      const why =
        error.code === 'EADDRINUSE'
          ? `Port ${port} is taken by another program.`
          : `Port ${port} on ${host} cannot be opened (${error.code}).`;
      reject(new PlainFault(`${why} Stop that program, or choose another port: PORT=${port + 1} npm start`));
    });
    probe.listen(port, host, () => probe.close(() => resolve()));
  });
}

/** What an unexpected failure says, without its stack. */
function sentenceOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  if ((error as NodeJS.ErrnoException).code === 'ENOSPC') {
    return 'The disk is full: free some space, then start again.';
  }
  if (error instanceof AggregateError && error.message === '') return error.errors.map(sentenceOf).join('; ');
  return error.message;
}
