// Plain JavaScript for the Node that is there (20 or later): nothing is installed yet when this runs.
import { spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
// Inside node_modules, so that it vanishes with them.
const stamp = join(root, 'node_modules', '.installed-from');

/** Installs the packages where they are missing or differ from package-lock.json. */
export function installPackages() {
  const lock = readFileSync(join(root, 'package-lock.json'));
  const hash = createHash('sha256').update(lock).digest('hex');
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === hash) return;
  console.log('Installing packages (a few minutes at the first time) …');
  const args = ['ci', '--no-audit', '--no-fund', '--include=dev'];
  const result = spawnSync('npm', args, { cwd: root, encoding: 'utf8', stdio: ['ignore', 'ignore', 'pipe'] });
  if (result.status !== 0) giveUp(result);
  writeFileSync(stamp, hash);
}

/** Runs a TypeScript file of ours on the Node that the packages bring along, and ends as it ends. */
export function handOver(file) {
  const node = join(root, 'node_modules', '.bin', 'node');
  const child = spawn(node, [join(root, file), ...process.argv.slice(2)], {
    cwd: root,
    // The channel tells the child when we are gone.
    stdio: ['inherit', 'inherit', 'inherit', 'ipc'],
  });
  // Ctrl-C reaches the child by itself; we only wait for it.
  process.on('SIGINT', () => undefined);
  process.on('SIGTERM', () => child.kill('SIGTERM'));
  child.on('exit', (code, signal) => process.exit(code ?? (signal === 'SIGINT' ? 130 : 1)));
  child.on('error', () => {
    console.error('The packages are not complete. Delete the folder node_modules and start again.');
    process.exit(1);
  });
}

function giveUp({ error, stderr = '' }) {
  if (error?.code === 'ENOENT') {
    console.error('npm was not found. Install Node.js 20 or later together with npm, then start again.');
  } else if (/ENOSPC|no space left/i.test(stderr)) {
    console.error('The disk is full: free about 2 GB, then start again.');
  } else if (/EACCES|EROFS/.test(stderr)) {
    console.error(
      `The folder ${root} cannot be written to. Give yourself the right to, or copy it elsewhere.`,
    );
  } else if (/ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ETIMEDOUT/.test(stderr)) {
    console.error(
      'The packages could not be fetched: the registry was not reached. Check the network, then start again.',
    );
  } else {
    console.error(
      `The packages could not be installed. npm said:\n${stderr.trim().split('\n').slice(-15).join('\n')}`,
    );
  }
  process.exit(1);
}
