/** One process of the program under test: started, killed without warning, started again. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { MEMORY_FLAGS } from '../../scripts/process-memory.ts';

const ROOT = join(import.meta.dirname, '..', '..');

export class Part {
  readonly name: string;
  #child: ChildProcess | null = null;
  readonly #env: NodeJS.ProcessEnv;
  /** All that it said since it was made, for a failing test to show. */
  said = '';

  constructor(name: 'server' | 'worker', env: NodeJS.ProcessEnv) {
    this.name = name;
    this.#env = env;
  }

  get pid(): number | undefined {
    return this.#child?.pid;
  }

  get runs(): boolean {
    return this.#child !== null && this.#child.exitCode === null && this.#child.signalCode === null;
  }

  /** Starts it and waits until it says that it is ready. */
  async start(): Promise<void> {
    const child = spawn(process.execPath, [...MEMORY_FLAGS, join(ROOT, `${this.name}.ts`)], {
      cwd: ROOT,
      // Compiled code is kept from one start to the next; killed processes read what others wrote.
      env: { NODE_COMPILE_CACHE: join(ROOT, 'node_modules/.cache/compiled'), ...this.#env },
      stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
    });
    this.#child = child;
    const note = (chunk: Buffer): void => {
      this.said = `${this.said}${chunk}`.slice(-100_000);
    };
    child.stdout?.on('data', note);
    child.stderr?.on('data', note);
    await new Promise<void>((resolve, reject) => {
      child.once('message', (message: { ready?: boolean }) =>
        message.ready
          ? resolve()
          : reject(new Error(`The ${this.name} did not start: ${JSON.stringify(message)}`)),
      );
      child.once('exit', (code, signal) =>
        reject(new Error(`The ${this.name} ended (${signal ?? code}) while starting:\n${this.said}`)),
      );
    });
  }

  /** As pulling the plug: no warning, no clean-up. */
  async kill(): Promise<void> {
    await this.#end('SIGKILL');
  }

  async stop(): Promise<void> {
    await this.#end('SIGTERM');
  }

  async #end(signal: NodeJS.Signals): Promise<void> {
    const child = this.#child;
    if (!child || !this.runs) return;
    const gone = once(child, 'exit');
    child.kill(signal);
    await gone;
  }
}
