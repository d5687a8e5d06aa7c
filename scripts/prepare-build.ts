/** Makes the database client and the site's build, each only where what it is made from has changed. */
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { glob, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { BUILD_FOLDER } from '#lib/config/build-folder.ts';

const ROOT = join(import.meta.dirname, '..');

const GENERATED = join(ROOT, 'lib/data/generated/');

interface Product {
  /** For people: what is being made. */
  readonly what: string;
  /** Patterns of the files that it is made from. */
  readonly from: readonly string[];
  readonly command: readonly string[];
  /** Holds the hash of those files; lies inside the product, so that it vanishes with it. */
  readonly stamp: string;
}

const CLIENT: Product = {
  what: 'the database client',
  from: ['prisma/schema.prisma', 'prisma.config.ts', 'package-lock.json'],
  command: ['node_modules/prisma/build/index.js', 'generate'],
  stamp: 'lib/data/generated/made-from',
};

const SITE: Product = {
  what: 'the site (takes about a minute)',
  from: [
    'app/**/*',
    'lib/**/*',
    'public/**/*',
    'prisma/schema.prisma',
    'next.config.mjs',
    'tsconfig.json',
    'package.json',
    'package-lock.json',
  ],
  command: ['node_modules/next/dist/bin/next', 'build'],
  stamp: join(BUILD_FOLDER, 'made-from'),
};

/** Makes the database client where it is missing or old. @returns whether it had to. */
export const prepareClient = (say: (line: string) => void): Promise<boolean> => prepare(CLIENT, say);

/** Builds the site where that is missing or old. @returns whether it had to. */
export const prepareSite = (say: (line: string) => void): Promise<boolean> => prepare(SITE, say);

async function prepare(product: Product, say: (line: string) => void): Promise<boolean> {
  const hash = await hashOf(product.from);
  const stamp = join(ROOT, product.stamp);
  if ((await readFile(stamp, 'utf8').catch(() => '')) === hash) return false;
  say(`Preparing ${product.what} …`);
  await run(product);
  await writeFile(stamp, hash);
  return true;
}

async function hashOf(patterns: readonly string[]): Promise<string> {
  const hash = createHash('sha256').update(process.version);
  const names: string[] = [];
  for await (const entry of glob([...patterns], { cwd: ROOT, withFileTypes: true })) {
    const path = join(entry.parentPath, entry.name);
    if (entry.isFile() && !path.startsWith(GENERATED)) names.push(path);
  }
  names.sort();
  for (const name of names) {
    hash.update(`\n${name.slice(ROOT.length)}\n`).update(
      createHash('sha256')
        .update(await readFile(name))
        .digest(),
    );
  }
  return hash.digest('hex');
}

async function run({ what, command }: Product): Promise<void> {
  const env = { ...process.env, NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' } as NodeJS.ProcessEnv;
  const child = spawn(process.execPath, command, { cwd: ROOT, env, stdio: ['ignore', 'pipe', 'pipe'] });
  let said = '';
  child.stdout.on('data', (chunk) => (said += chunk));
  child.stderr.on('data', (chunk) => (said += chunk));
  await once(child, 'close');
  if (child.exitCode === 0) return;
  const why = /ENOSPC|No space left/i.test(said)
    ? 'The disk is full: free some space, then start again.'
    : said.trim().split('\n').slice(-30).join('\n');
  throw new Error(`Preparing ${what} did not work. ${why}`);
}
