/** One process of ours, started again when it dies, until it is told to stop. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { MEMORY_FLAGS } from './process-memory.ts';

const ROOT = join(import.meta.dirname, '..');
/** Longest pause before another try, ms; it doubles from a quarter of a second. */
const LONGEST_PAUSE_MS = 15_000;
/** A process that lived this long, ms, was sound: the next pause is short again. */
const SOUND_MS = 60_000;

export interface KeptProcess {
  /** Ends it in its own time. */
  readonly stop: () => Promise<void>;
}

/**
 * Starts `NAME.ts` and waits until it says that it is ready.
 * @throws an Error with what it said, where the first start does not work.
 */
export async function keepRunning(name: 'server' | 'worker', env: NodeJS.ProcessEnv): Promise<KeptProcess> {
  let stopping = false;
  let child = launch(name, env);
  await ready(child, name);

  const watch = async (): Promise<void> => {
    let wait = 250;
    for (;;) {
      const since = Date.now();
      if (child.exitCode === null && child.signalCode === null) await once(child, 'exit');
      if (stopping) return;
      wait = Date.now() - since > SOUND_MS ? 250 : Math.min(wait * 2, LONGEST_PAUSE_MS);
      console.error(`The ${name} process ended by itself; starting it again.`);
      await pause(wait);
      if (stopping) return;
      child = launch(name, env);
    }
  };
  const watching = watch();

  return {
    async stop() {
      stopping = true;
      if (child.exitCode === null && child.signalCode === null) {
        child.kill('SIGTERM');
        await once(child, 'exit');
      }
      await watching;
    },
  };
}

function launch(name: string, env: NodeJS.ProcessEnv): ChildProcess {
  return spawn(process.execPath, [...MEMORY_FLAGS, join(ROOT, `${name}.ts`)], {
    cwd: ROOT,
    env,
    // A group of its own: Ctrl-C reaches the start command, which stops things in order.
    detached: true,
    stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
  });
}

function ready(child: ChildProcess, name: string): Promise<void> {
  return new Promise((resolve, reject) => {
    child.once('message', (message: { ready?: boolean; failed?: string }) =>
      message.ready ? resolve() : reject(new Error(`The ${name} process could not start: ${message.failed}`)),
    );
    child.once('exit', () =>
      reject(new Error(`The ${name} process ended while starting; it said why above.`)),
    );
  });
}
