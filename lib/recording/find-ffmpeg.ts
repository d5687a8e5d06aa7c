/** Finds ffmpeg, and what this machine offers to hold it in bounds. */
import { access, constants } from 'node:fs/promises';
import { delimiter, isAbsolute, join } from 'node:path';

/** Private memory that a run may take, bytes: an 8K picture needs about two thirds of it. */
const MOST_MEMORY_BYTES = 4 * 1024 ** 3;
/** Largest file that a run may write, bytes. */
const MOST_WRITTEN_BYTES = 64 * 1024 ** 3;

export interface Ffmpeg {
  /** The program and all that is put before its arguments. */
  readonly command: readonly [string, ...string[]];
}

/**
 * @param named what FFMPEG_BIN says; else the package ffmpeg-static, where it is installed; else the PATH
 * @param path the PATH to search
 * @returns null where there is no ffmpeg
 */
export async function findFfmpeg(named: string | undefined, path: string): Promise<Ffmpeg | null> {
  const program = named ? await located(named, path) : ((await bundled()) ?? (await located('ffmpeg', path)));
  if (!program) return null;
  const setpriv = await located('setpriv', path);
  const prlimit = await located('prlimit', path);
  const nice = await located('nice', path);
  const command = [
    // Dies with us: a killed worker leaves nothing running.
    ...(setpriv ? [setpriv, '--pdeathsig', 'KILL', '--'] : []),
    ...(prlimit
      ? [prlimit, `--data=${MOST_MEMORY_BYTES}`, `--fsize=${MOST_WRITTEN_BYTES}`, '--core=0', '--']
      : []),
    ...(nice ? [nice, '-n', '10'] : []),
    program,
  ];
  return { command: [command[0] ?? program, ...command.slice(1)] };
}

async function bundled(): Promise<string | null> {
  try {
    // An optional package: its own download fails on a closed network.
    const name = 'ffmpeg-static';
    const found: { default?: unknown } = await import(name);
    return typeof found.default === 'string' && (await isProgram(found.default)) ? found.default : null;
  } catch {
    return null;
  }
}

async function located(name: string, path: string): Promise<string | null> {
  const candidates = isAbsolute(name) ? [name] : path.split(delimiter).map((folder) => join(folder, name));
  for (const candidate of candidates) if (await isProgram(candidate)) return candidate;
  return null;
}

async function isProgram(path: string): Promise<boolean> {
  try {
    await access(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
