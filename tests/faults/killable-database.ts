/** A PostgreSQL server that can be killed like any process, and comes back on the same port. */
import { chmod, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import {
  createDatabase,
  type RunningServer,
  type ServerHome,
  startServer,
} from '#lib/data/embedded-server.ts';
import { applyMigrations } from '#lib/data/migrate.ts';

export class KillableDatabase {
  readonly #folder: string;
  readonly #home: ServerHome;
  #server: RunningServer;

  private constructor(folder: string, home: ServerHome, server: RunningServer) {
    this.#folder = folder;
    this.#home = home;
    this.#server = server;
  }

  /** Starts one with a migrated database; what is committed is written before it is acknowledged. */
  static async start(): Promise<KillableDatabase> {
    const folder = await mkdtemp(join(tmpdir(), 'benchleaf-faults-'));
    await chmod(folder, 0o711);
    const home: ServerHome = {
      folder: join(folder, 'server'),
      runAs: process.getuid?.() === 0 ? { uid: 65_534, gid: 65_534 } : null,
      password: 'test',
      logFile: join(folder, 'log'),
      // Processes are killed here, not the machine: what is written reaches the disk in the end.
      settings: ['fsync=off'],
    };
    const server = await startServer(home);
    await createDatabase(server, 'benchleaf');
    const database = new KillableDatabase(folder, home, server);
    await applyMigrations(database.address, { folder: join(import.meta.dirname, '..', '..', 'prisma') });
    return database;
  }

  get address(): string {
    return this.#server.address('benchleaf');
  }

  /** Kills the server and with it every connection; the processes it leaves see that it is gone and end. */
  async kill(): Promise<void> {
    process.kill(this.#server.pid, 'SIGKILL');
    await this.#server.ended;
  }

  /** Starts it again where it was; it recovers by itself what was acknowledged. */
  async restart(): Promise<void> {
    for (let tries = 1; ; tries++) {
      try {
        this.#server = await startServer(this.#home, this.#server.port);
        return;
      } catch (error) {
        // Processes of the killed server may still be ending.
        if (tries >= 10) throw error;
        await pause(500);
      }
    }
  }

  async remove(): Promise<void> {
    await this.#server.stop();
    await rm(this.#folder, { recursive: true, force: true });
  }
}
