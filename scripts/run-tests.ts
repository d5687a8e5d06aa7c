/**
 * Every check and test, and one line at the end that sums them. A group that
 * fails does not keep the later ones from running. With names of groups behind
 * it (`npm test -- core app`), only those run.
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { glob, mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { CHROMIUM, FFMPEG, installPrograms } from './install-programs.ts';
import { prepareClient, prepareSite } from './prepare-build.ts';

const ROOT = join(import.meta.dirname, '..');
const bin = (path: string): string => join('node_modules', path);
const TSC = bin('typescript/bin/tsc');
const NEXT = bin('next/dist/bin/next');
const VITEST = bin('vitest/vitest.mjs');

interface Tally {
  passed: number;
  failed: number;
  skipped: number;
}

const total: Tally = { passed: 0, failed: 0, skipped: 0 };
const started = Date.now();
const seconds = (): string => `${Math.round((Date.now() - started) / 1000)} s`;

/** A check that passes or fails as a whole. */
async function check(name: string, run: () => Promise<{ readonly ok: boolean; readonly said: string }>) {
  const { ok, said } = await run();
  total[ok ? 'passed' : 'failed']++;
  console.log(`${ok ? 'passed' : 'FAILED'}  ${name} (${seconds()})`);
  if (!ok) console.log(said);
}

/** Runs a tool on our Node, its words held back. */
async function tool(...args: readonly string[]) {
  const child = start(args, 'pipe');
  let said = '';
  child.stdout?.on('data', (chunk) => (said += chunk));
  child.stderr?.on('data', (chunk) => (said += chunk));
  await once(child, 'close');
  return { ok: child.exitCode === 0, said };
}

function start(
  args: readonly string[],
  output: 'pipe' | 'inherit',
  env: Record<string, string> = {},
): ChildProcess {
  return spawn(process.execPath, [...args], {
    cwd: ROOT,
    env: { ...process.env, NEXT_TELEMETRY_DISABLED: '1', ...env },
    stdio: ['ignore', output, output],
  });
}

/** Runs the tests of one kind (a project in vitest.config.ts) and counts every case. */
async function tests(project: string): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'benchleaf-results-'));
  const file = join(folder, 'results.json');
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${file}`];
  const child = start([VITEST, 'run', '--project', project, ...reporters], 'inherit');
  await once(child, 'close');
  const counted = await readCounts(file);
  // A file that fails before its first case, or a run that breaks off, is a failure too.
  if (child.exitCode !== 0 && counted.failed === 0) counted.failed = 1;
  total.passed += counted.passed;
  total.failed += counted.failed;
  total.skipped += counted.skipped;
  console.log(`${project}: ${counted.passed} passed, ${counted.failed} failed (${seconds()})`);
  await rm(folder, { recursive: true, force: true });
}

async function readCounts(file: string): Promise<Tally> {
  const text = await readFile(file, 'utf8').catch(() => '{}');
  const results = JSON.parse(text) as Record<string, number | undefined>;
  return {
    passed: results['numPassedTests'] ?? 0,
    failed: results['numFailedTests'] ?? 0,
    skipped: (results['numPendingTests'] ?? 0) + (results['numTodoTests'] ?? 0),
  };
}

type Task = () => Promise<void>;

let building: Promise<unknown> | undefined;

/** Builds the site once in a run, whoever asks first. */
function buildSite(): Promise<unknown> {
  building ??= prepareSite(console.log);
  return building;
}

/** The same, where what comes next says by itself that the site is missing. */
const afterBuild = async (): Promise<void> => void (await buildSite().catch(() => undefined));

const groups = {
  checks: async () => [
    () =>
      check('types', async () => {
        // A build clears away the types of routes: they are made after it.
        await building?.catch(() => undefined);
        const routes = await tool(NEXT, 'typegen');
        return routes.ok ? tool(TSC, '--noEmit') : routes;
      }),
    () => check('lint and format', () => tool(bin('@biomejs/biome/bin/biome'), 'check', '.')),
    () =>
      check('direction', () =>
        tool(
          bin('dependency-cruiser/bin/dependency-cruiser.mjs'),
          'lib',
          'app',
          'scripts',
          'server.ts',
          'worker.ts',
        ),
      ),
    () => check('nothing unused', () => tool(bin('knip/bin/knip.js'))),
  ],
  core: async () => [() => tests('core')],
  build: async () => [
    () =>
      check('the site builds', async () => {
        await buildSite();
        return { ok: true, said: '' };
      }),
  ],
  app: async () => [() => tests('app')],
  faults: async () => {
    await afterBuild();
    return [() => tests('faults')];
  },
  bench: async () => {
    await afterBuild();
    const files: string[] = [];
    for await (const file of glob('tests/bench/*.bench.ts', { cwd: ROOT })) files.push(file);
    // The longest first; it mostly waits for a slowed browser, so that others find a processor free beside it.
    const isLongest = (file: string): boolean => file.includes('lesson-page');
    files.sort((a, b) => Number(isLongest(b)) - Number(isLongest(a)) || (a < b ? -1 : 1));
    return files.map(
      (file) => () =>
        check(file, async () => {
          const result = await tool(file);
          console.log(result.said.trimEnd());
          return result.ok ? { ok: true, said: '' } : { ok: false, said: 'It ended with a failure.' };
        }),
    );
  },
} satisfies Readonly<Record<string, () => Promise<Task[]>>>;

interface Stage {
  /** Their tasks begin in this order. */
  readonly groups: readonly (keyof typeof groups)[];
  /** Tasks at the same time. */
  readonly lanes: number;
}

/**
 * Stages run one behind the other, the tasks of one side by side, so that no
 * processor waits: the tests of the core keep what building and checks, which
 * mostly use one, leave. What faults and benches do uses one processor at a
 * time, or waits. A bench measures ours and what it stands beside in turn, so
 * that what runs beside it slows both.
 */
const STAGES: readonly Stage[] = [
  { groups: ['core', 'build', 'checks'], lanes: 2 },
  { groups: ['app'], lanes: 1 },
  { groups: ['faults', 'bench'], lanes: 3 },
];

/** Runs all tasks, the first ones first; one that throws counts as a failure and keeps none from running. */
async function runInLanes(tasks: readonly Task[], lanes: number): Promise<void> {
  const left = [...tasks];
  const lane = async (): Promise<void> => {
    for (let task = left.shift(); task; task = left.shift()) {
      await task().catch((error: unknown) => {
        total.failed++;
        console.log(`FAILED  ${error instanceof Error ? error.message : String(error)}`);
      });
    }
  };
  await Promise.all(Array.from({ length: lanes }, lane));
}

async function main(): Promise<void> {
  installPrograms([FFMPEG, CHROMIUM], console.log);
  await prepareClient(console.log);
  const asked = process.argv.slice(2);
  const unknown = asked.find((name) => !(name in groups));
  if (unknown)
    throw new Error(`There is no group "${unknown}". There are: ${Object.keys(groups).join(', ')}.`);
  for (const stage of STAGES) {
    const names = stage.groups.filter((name) => asked.length === 0 || asked.includes(name));
    if (names.length === 0) continue;
    console.log(`\n== ${names.join(', ')}`);
    const tasks = await Promise.all(names.map((name) => groups[name]()));
    await runInLanes(tasks.flat(), stage.lanes);
  }
}

try {
  await main();
} catch (error) {
  total.failed++;
  console.error(error instanceof Error ? error.message : String(error));
}
if (total.skipped > 0) console.log(`\n${total.skipped} skipped: see above why.`);
console.log(`\n${total.passed} passed, ${total.failed} failed`);
process.exit(total.failed === 0 ? 0 : 1);
