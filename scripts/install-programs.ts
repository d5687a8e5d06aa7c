/** Programs of the system that are needed beside Node: found, or on Debian installed when we may. */
import { spawnSync } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

/** A program by the name of its file and of its Debian package. */
export interface Program {
  readonly file: string;
  readonly debianPackage: string;
}

export const FFMPEG: Program = { file: 'ffmpeg', debianPackage: 'ffmpeg' };
export const CHROMIUM: Program = { file: 'chromium', debianPackage: 'chromium' };

/**
 * Sees to it that programs are there.
 * @throws an Error with a sentence that says what to install.
 */
export function installPrograms(programs: readonly Program[], say: (line: string) => void): void {
  const missing = programs.filter(({ file }) => !isOnPath(file));
  if (missing.length === 0) return;
  const packages = missing.map(({ debianPackage }) => debianPackage);
  const asked = `apt-get install ${packages.join(' ')}`;
  const mayInstall = process.getuid?.() === 0 && isOnPath('apt-get');
  if (mayInstall) {
    say(`Installing ${packages.join(' and ')} from Debian …`);
    runAptGet(['update']);
    runAptGet(['install', '-y', '--no-install-recommends', ...packages]);
  }
  const still = missing.filter(({ file }) => !isOnPath(file)).map(({ file }) => file);
  if (still.length > 0) {
    throw new Error(`${still.join(' and ')} must be installed first. On Debian, as root: ${asked}`);
  }
}

function runAptGet(args: readonly string[]): void {
  // A failure shows in that the program is still not there.
  spawnSync('apt-get', args, { stdio: 'ignore', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } });
}

function isOnPath(file: string): boolean {
  return (process.env['PATH'] ?? '').split(delimiter).some((folder) => {
    try {
      accessSync(join(folder, file), constants.X_OK);
      return true;
    } catch {
      return false;
    }
  });
}
