/** Loading the demo: whole, once, and completed by the next run after any failure. */
import { randomUUID } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Bench } from '#lib/bench/bench.ts';
import { loadDemo } from '#lib/bench/load-demo.ts';
import type { Database } from '#lib/data/database.ts';
import type { RecordingWork } from '#lib/recording/recording-work.ts';
import { openLocalDisk } from '#lib/storage/local-disk.ts';
import { testFfmpeg } from '../support/clips.ts';
import { testDatabase } from '../support/database.ts';

let bench: Bench;
let work: RecordingWork;

beforeAll(async () => {
  const { db } = await testDatabase();
  const filesFolder = await mkdtemp(join(tmpdir(), 'load-demo-'));
  afterAll(() => rm(filesFolder, { recursive: true, force: true }));
  bench = { db, now: () => new Date(), newId: randomUUID };
  const ffmpeg = await testFfmpeg();
  work = { db, storage: openLocalDisk(filesFolder), ffmpeg, filesFolder, newId: randomUUID };
});

/** The database that gives up at the nth time something is written or read through `$transaction`. */
function dyingAfter(db: Database, transactions: number): Database {
  let left = transactions;
  return new Proxy(db, {
    get(target, name, self) {
      if (name !== '$transaction') return Reflect.get(target, name, self);
      return (...args: Parameters<Database['$transaction']>) => {
        left -= 1;
        if (left < 0) throw new Error('killed here');
        return target.$transaction(...args);
      };
    },
  });
}

describe('loading the demo', () => {
  test('goes on where a run that died left off, wherever that was', async () => {
    // Without ffmpeg the recording is refused, for now.
    await expect(loadDemo(bench, { work: { ...work, ffmpeg: null } })).rejects.toThrow('converter-missing');
    let deaths = 0;
    for (let transactions = 0; ; transactions += 1) {
      const dying = dyingAfter(bench.db, transactions);
      const outcome = await loadDemo({ ...bench, db: dying }, { work }).catch(
        (error: Error) => error.message,
      );
      if (outcome === 'loaded') break;
      expect(outcome).toBe('killed here');
      deaths += 1;
    }
    expect(deaths).toBeGreaterThan(1);
    const lesson = await bench.db.lesson.findFirstOrThrow({ include: { revisions: true, recordings: true } });
    expect(lesson.revisions.map((revision) => revision.number).sort()).toEqual([1, 2]);
    expect(lesson.recordings.map((recording) => recording.state)).toEqual(['ready']);
    expect(await bench.db.member.count()).toBe(0);
  });

  test('does nothing where it is there', async () => {
    expect(await loadDemo(bench, { work })).toBe('already there');
    expect(await bench.db.revision.count()).toBe(2);
  });

  test('does not bring back what an owner deleted', async () => {
    await bench.db.$executeRaw`ALTER TABLE "revision" DISABLE TRIGGER USER`;
    await bench.db.lesson.deleteMany();
    expect(await loadDemo(bench, { work })).toBe('already there');
    expect(await bench.db.lesson.count()).toBe(0);
  });
});
