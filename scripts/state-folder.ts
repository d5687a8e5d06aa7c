/**
 * Where this checkout keeps its database, recordings and secrets. As a normal
 * user: in `.data` inside the checkout. As root: below /var/lib/benchleaf, so
 * that the database's own user can reach it even where the checkout lies in a
 * home that is closed to others.
 */
import { spawnSync } from 'node:child_process';
import { createHash, randomBytes } from 'node:crypto';
import { chmod, mkdir, readFile, readlink, rename, statfs, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { z } from 'zod';
import { PlainFault } from './plain-fault.ts';

/** Below this there is no sense in starting: a database cannot work on a full disk. */
const LEAST_FREE_BYTES = 300 * 1024 ** 2;

const secrets = z.object({ session: z.string().min(32), database: z.string().min(16) });

export interface State {
  readonly folder: string;
  /** Recordings and what is made from them. */
  readonly files: string;
  readonly secrets: z.infer<typeof secrets>;
  /** Whose the embedded database server is; null where it is the caller's own. */
  readonly databaseUser: { readonly uid: number; readonly gid: number } | null;
}

const isRoot = process.getuid?.() === 0;

/** The folder of this checkout, for the user who asks. */
export function stateFolder(checkout: string): string {
  const mark = createHash('sha256').update(checkout).digest('hex').slice(0, 8);
  const name = basename(checkout).replace(/[^A-Za-z0-9]+/g, '-');
  return isRoot ? join('/var/lib/benchleaf', `${name}-${mark}`) : join(checkout, '.data');
}

/** Where the database of this checkout lies, in its folder. */
export const databaseFolder = (folder: string): string => join(folder, 'database');
/** Note of the address under which people reach the site, by its last start. */
export const addressNote = (folder: string): string => join(folder, 'address');

/** Makes what is missing. @throws PlainFault where it cannot. */
export async function openState(checkout: string): Promise<State> {
  const folder = stateFolder(checkout);
  const files = join(folder, 'files');
  try {
    // Others may pass through to what is theirs, and see nothing.
    await mkdir(folder, { recursive: true, mode: isRoot ? 0o711 : 0o700 });
    if (isRoot) await chmod('/var/lib/benchleaf', 0o711);
    await mkdir(files, { recursive: true, mode: 0o700 });
    await checkRoom(folder);
    await claim(join(folder, 'in-use-by'), checkout);
    return {
      folder,
      files,
      secrets: await keepSecrets(folder),
      databaseUser: isRoot ? databaseUser() : null,
    };
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'ENOSPC') throw diskFull(folder);
    if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS') {
      throw new PlainFault(
        `The folder ${folder} may not be written. Start Benchleaf as the user it belongs to.`,
      );
    }
    throw error;
  }
}

/**
 * Two starts on one folder would stop each other's database. A note of a start
 * that is gone is overwritten: its process number may belong to anybody by now.
 */
async function claim(note: string, checkout: string): Promise<void> {
  const pid = Number(await readFile(note, 'utf8').catch(() => ''));
  const isStart =
    pid > 1 &&
    pid !== process.pid &&
    (await readlink(`/proc/${pid}/cwd`).catch(() => '')) === checkout &&
    (await readFile(`/proc/${pid}/cmdline`, 'utf8').catch(() => '')).includes('start.ts');
  if (isStart) {
    throw new PlainFault(`Benchleaf runs from this folder already (process ${pid}). Stop that one first.`);
  }
  await writeFile(note, String(process.pid));
}

async function checkRoom(folder: string): Promise<void> {
  const { bavail, bsize } = await statfs(folder);
  if (bavail * bsize < LEAST_FREE_BYTES) throw diskFull(folder);
}

const diskFull = (folder: string): PlainFault =>
  new PlainFault(`The disk that holds ${folder} is full: free at least 300 MB, then start again.`);

/** The secrets of this folder; made where there are none. */
export async function keepSecrets(folder: string): Promise<State['secrets']> {
  const path = join(folder, 'secrets.json');
  const kept = await readFile(path, 'utf8').catch(() => null);
  if (kept !== null) {
    const parsed = secrets.safeParse(JSON.parse(kept));
    if (parsed.success) return parsed.data;
    throw new PlainFault(`${path} is damaged. Put back its copy from a backup, then start again.`);
  }
  const made = {
    session: randomBytes(32).toString('base64url'),
    database: randomBytes(24).toString('base64url'),
  };
  await writeFile(`${path}.half`, JSON.stringify(made), { mode: 0o600 });
  await rename(`${path}.half`, path);
  return made;
}

/** PostgreSQL refuses to run as root: a system user without a home or a shell runs it. */
function databaseUser(): { uid: number; gid: number } {
  const user = 'benchleaf';
  if (spawnSync('id', ['-u', user]).status !== 0) {
    spawnSync('useradd', [
      '--system',
      '--no-create-home',
      '--shell',
      '/usr/sbin/nologin',
      '--user-group',
      user,
    ]);
    console.log(`Made the system user "${user}": the database runs under it, since it must not run as root.`);
  }
  const number = (flag: string): number => Number(spawnSync('id', [flag, user], { encoding: 'utf8' }).stdout);
  const [uid, gid] = [number('-u'), number('-g')];
  if (!uid || !gid) {
    throw new PlainFault(
      'The database must not run as root, and no user could be made for it. Start Benchleaf as a normal user, or set DATABASE_URL to a PostgreSQL server of your own.',
    );
  }
  return { uid, gid };
}
