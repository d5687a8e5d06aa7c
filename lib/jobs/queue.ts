/**
 * Work that a request must not wait for: kept in the same database (schema
 * `pgboss`), so that it is not lost when a process is. A job runs at least
 * once; a handler must bear being run again from the beginning.
 *
 * A worker shows every few seconds that it lives. The job of one that stopped
 * doing so (killed, or its machine gone) is given to another within half a
 * minute.
 */
import { fromPrisma, PgBoss } from 'pg-boss';
import { environment } from '#lib/config/environment.ts';
import { log } from '#lib/config/log.ts';
import type { Queries } from '#lib/data/database.ts';
import { JOB_NAMES, type JobName, type JobPayload, jobKinds } from './job-kinds.ts';

/** Silence after which a worker counts as dead, seconds; the queue allows no less. */
const SILENCE_SECONDS = 10;
/** How often somebody looks for dead workers, seconds. */
const LOOK_SECONDS = 5;
/** Pause before a job is tried again, seconds; doubles up to the longest. */
const RETRY_SECONDS = 2;
const LONGEST_RETRY_SECONDS = 60;

/** What a handler knows of the attempt it is. */
export interface Attempt {
  /** Aborts where the job was taken away or the process stops: leave off and throw. */
  readonly signal: AbortSignal;
  /** 1 for the first. */
  readonly number: number;
  /** Whether the job is given up when this attempt fails. */
  readonly isLast: boolean;
}

export type JobHandler<N extends JobName> = (payload: JobPayload<N>, attempt: Attempt) => Promise<void>;

export interface Queue {
  /**
   * Queues a job. With the transaction of the change that calls for it, the
   * job exists exactly if the change does.
   * @returns false where a job with the same key waits already.
   */
  send<N extends JobName>(name: N, payload: JobPayload<N>, within?: Queries): Promise<boolean>;
  /** Runs jobs of one kind in this process from now on. */
  work<N extends JobName>(name: N, handler: JobHandler<N>): Promise<void>;
  /**
   * Takes no more jobs, lets those at work finish for `graceMs`, then tells
   * them to leave off and hands them back.
   */
  stop(graceMs: number): Promise<void>;
}

/**
 * Opens the queue in a database, building its tables where they are missing.
 * @param role a `sender` leaves looking after the queue to the workers.
 */
export async function openQueue(connectionString: string, role: 'sender' | 'worker'): Promise<Queue> {
  const boss = new PgBoss({
    connectionString,
    max: role === 'sender' ? 2 : 4,
    supervise: role === 'worker',
    superviseIntervalSeconds: LOOK_SECONDS,
    monitorIntervalSeconds: LOOK_SECONDS,
    schedule: false,
    useListenNotify: role === 'worker',
    reindex: false,
    registerInstance: false,
  });
  boss.on('error', (error) =>
    log().warn({ error: error.message }, 'The queue has trouble with the database'),
  );
  await boss.start();
  for (const name of JOB_NAMES) await createKind(boss, name);
  const closing = new AbortController();

  return {
    async send(name, payload, within) {
      const kind = jobKinds[name];
      const singletonKey = kind.key(payload as never);
      const options = {
        singletonKey,
        ...(kind.isNewestFirst ? { priority: Math.floor(Date.now() / 1000) } : {}),
        ...(within ? { db: fromPrisma(within) } : {}),
      };
      return (await boss.send(name, kind.payload.parse(payload), options)) !== null;
    },

    async work(name, handler) {
      const kind = jobKinds[name];
      const options = {
        localConcurrency: kind.atOnce,
        includeMetadata: true,
        // Jobs announce themselves; looking is for announcements that were missed.
        notifyPollingIntervalSeconds: 5,
      } as const;
      await boss.work(name, options, async ([job]) => {
        if (!job) return;
        const attempt: Attempt = {
          signal: AbortSignal.any([job.signal, closing.signal]),
          number: job.retryCount + 1,
          isLast: job.retryCount >= job.retryLimit,
        };
        try {
          await handler(kind.payload.parse(job.data) as JobPayload<typeof name>, attempt);
        } catch (error) {
          const level = attempt.signal.aborted ? 'info' : 'error';
          log()[level](
            { job: name, data: job.data, attempt: attempt.number, error: told(error) },
            'A job failed',
          );
          throw error;
        }
      });
    },

    async stop(graceMs) {
      const patience = setTimeout(() => closing.abort(new Error('The worker stops')), graceMs);
      await boss.stop({ graceful: true, timeout: graceMs + 10_000 });
      clearTimeout(patience);
    },
  };
}

async function createKind(boss: PgBoss, name: JobName): Promise<void> {
  const { longestSeconds, retries } = jobKinds[name];
  await boss.createQueue(name, {
    policy: 'stately',
    notify: true,
    expireInSeconds: longestSeconds,
    heartbeatSeconds: SILENCE_SECONDS,
    retryLimit: retries,
    retryDelay: RETRY_SECONDS,
    retryDelayMax: LONGEST_RETRY_SECONDS,
    retryBackoff: true,
    // Done and failed jobs are kept for a week, to be looked into.
    deleteAfterSeconds: 7 * 24 * 3600,
    retentionSeconds: 30 * 24 * 3600,
  });
}

const told = (error: unknown): string =>
  error instanceof Error ? (error.stack ?? error.message) : String(error);

const kept = globalThis as { benchleafQueue?: Promise<Queue> | undefined };

/** The web process's way to queue jobs; opened at first use. */
export function queue(): Promise<Queue> {
  kept.benchleafQueue ??= openQueue(environment().DATABASE_URL, 'sender').catch((error: unknown) => {
    // The next request tries again.
    kept.benchleafQueue = undefined;
    throw error;
  });
  return kept.benchleafQueue;
}
