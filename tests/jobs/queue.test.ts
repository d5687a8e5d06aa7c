import { type ChildProcess, fork } from 'node:child_process';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, onTestFinished, vi } from 'vitest';
import { openQueue, type Queue } from '#lib/jobs/queue.ts';
import { type TestDatabase, testDatabase } from '#tests/support/database.ts';

const started: ChildProcess[] = [];
const queues: Queue[] = [];
let test: TestDatabase;

beforeAll(async () => {
  test = await testDatabase();
});
afterAll(async () => {
  for (const child of started) child.kill('SIGKILL');
  for (const queue of queues) await queue.stop(0);
});

async function open(role: 'sender' | 'worker'): Promise<Queue> {
  const queue = await openQueue(test.address, role);
  queues.push(queue);
  return queue;
}

/** A process that takes ingest jobs, says so, and works on each for ever. */
function startStuckWorker(): ChildProcess {
  const child = fork(join(import.meta.dirname, 'stuck-worker.ts'), {
    env: { ...process.env, DATABASE_URL: test.address },
  });
  started.push(child);
  return child;
}

const taken = (child: ChildProcess): Promise<string> =>
  new Promise((resolve) => child.once('message', (message) => resolve(String(message))));

describe('the queue', () => {
  it('keeps a job exactly if the transaction that called for it is kept', async () => {
    const sender = await open('sender');
    const rolledBack = test.db.$transaction(async (tx) => {
      await sender.send('take-still', { recordingId: 'r-lost', atMs: 1 }, tx);
      throw new Error('changed my mind');
    });
    await expect(rolledBack).rejects.toThrow('changed my mind');
    await test.db.$transaction((tx) => sender.send('take-still', { recordingId: 'r-kept', atMs: 2 }, tx));

    const seen: string[] = [];
    const worker = await open('worker');
    await worker.work('take-still', async ({ recordingId }) => void seen.push(recordingId));
    await expect.poll(() => seen, { timeout: 10_000 }).toEqual(['r-kept']);
  });

  it('does what was asked for last first, where what came before may be wanted by nobody', async () => {
    const sender = await open('sender');
    vi.useFakeTimers({ toFake: ['Date'] });
    onTestFinished(() => void vi.useRealTimers());
    const from = Date.now();
    for (const [at, key] of ['first stage', 'second stage', 'as it is now'].entries()) {
      vi.setSystemTime(from + 2_000 * at);
      await sender.send('derive-shape', { key });
    }
    vi.useRealTimers();
    const seen: string[] = [];
    const worker = await open('worker');
    await worker.work('derive-shape', async ({ key }) => void seen.push(key));
    await expect.poll(() => seen[0], { timeout: 10_000 }).toBe('as it is now');
  });

  it('does not queue a second job for the same thing while one waits', async () => {
    const sender = await open('sender');
    expect(await sender.send('ingest-recording', { recordingId: 'twice' })).toBe(true);
    expect(await sender.send('ingest-recording', { recordingId: 'twice' })).toBe(false);
    expect(await sender.send('ingest-recording', { recordingId: 'another' })).toBe(true);
    await test.db.$executeRaw`DELETE FROM pgboss.job WHERE name = 'ingest-recording'`;
  });

  it('tries a failed job again', async () => {
    const attempts: number[] = [];
    const worker = await open('worker');
    await worker.work('ingest-recording', async (_, attempt) => {
      attempts.push(attempt.number);
      if (attempt.number === 1) throw new Error('the disk was busy');
    });
    await worker.send('ingest-recording', { recordingId: 'flaky' });
    await expect.poll(() => attempts, { timeout: 20_000 }).toEqual([1, 2]);
    await worker.stop(0);
    queues.splice(queues.indexOf(worker), 1);
  });

  it('hands a job back when the worker stops', async () => {
    const first = await open('worker');
    let leftOff = false;
    const begun = new Promise<void>((resolve) => {
      void first
        .work('ingest-recording', async (_, { signal }) => {
          resolve();
          await new Promise((_, reject) => signal.addEventListener('abort', () => reject(signal.reason)));
        })
        .catch(() => undefined);
    });
    await first.send('ingest-recording', { recordingId: 'long' });
    await begun;
    await first.stop(100).then(() => {
      leftOff = true;
    });
    queues.splice(queues.indexOf(first), 1);
    expect(leftOff).toBe(true);

    const next: string[] = [];
    const second = await open('worker');
    await second.work('ingest-recording', async ({ recordingId }) => void next.push(recordingId));
    await expect.poll(() => next, { timeout: 20_000 }).toEqual(['long']);
    await second.stop(0);
    queues.splice(queues.indexOf(second), 1);
  });

  it('gives the job of a killed worker to another one', async () => {
    const sender = await open('sender');
    const doomed = startStuckWorker();
    await taken(doomed);
    await sender.send('ingest-recording', { recordingId: 'orphan' });
    expect(await taken(doomed)).toBe('orphan');
    doomed.kill('SIGKILL');

    const next: string[] = [];
    const other = await open('worker');
    await other.work('ingest-recording', async ({ recordingId }) => void next.push(recordingId));
    await expect.poll(() => next, { timeout: 60_000, interval: 500 }).toEqual(['orphan']);
  }, 90_000);
});
