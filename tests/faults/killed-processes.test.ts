/**
 * Web, worker and database are killed (SIGKILL) at random moments while a
 * teacher uploads, saves and publishes, and while recordings are taken in.
 * Nothing that was acknowledged may be lost, no half state be seen, and all
 * work must come to its end by itself. FAULT_KILLS and FAULT_SEED set how
 * often, and let a run be had again.
 */
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Database, openDatabase } from '#lib/data/database.ts';
import { startAppOn, type TestApp } from '#tests/support/app.ts';
import { makeWithFfmpeg, twoSeconds } from '#tests/support/clips.ts';
import { signedInOwner } from '#tests/support/signed-in.ts';
import { Autosave } from './autosave.ts';
import { KillableDatabase } from './killable-database.ts';
import { Publishing } from './publishing.ts';
import { randomFrom } from './random.ts';
import { Uploading } from './uploading.ts';

const KILLS = Number(process.env['FAULT_KILLS'] ?? 51);
const SEED = Number(process.env['FAULT_SEED'] ?? Date.now() % 1_000_000);

let database: KillableDatabase;
let db: Database;
let app: TestApp;
let folder: string;
let clip: Uint8Array<ArrayBuffer>;

beforeAll(async () => {
  console.log(`FAULT_SEED=${SEED} FAULT_KILLS=${KILLS}`);
  folder = await mkdtemp(join(tmpdir(), 'benchleaf-clip-'));
  const path = join(folder, 'clip.mp4');
  // Noise hardly compresses: many pieces from a short recording.
  const coded = [
    '-vf',
    'noise=alls=40:allf=t',
    '-c:v',
    'libx264',
    '-preset',
    'ultrafast',
    '-pix_fmt',
    'yuv420p',
    '-c:a',
    'aac',
  ];
  await makeWithFfmpeg(...twoSeconds(), ...coded, path);
  clip = new Uint8Array(await readFile(path));
  database = await KillableDatabase.start();
  db = openDatabase(database.address);
  app = await startAppOn(database.address, db);
});

afterAll(async () => {
  await Promise.all([app.web.kill(), app.worker.kill()]);
  await db.$disconnect();
  await database.remove();
  await rm(folder, { recursive: true, force: true });
});

it(`loses nothing in ${KILLS} kills`, async () => {
  const random = randomFrom(SEED);
  const saving = new Autosave(await signedInOwner(app), app.address);
  const publishing = new Publishing(await signedInOwner(app), app.address);
  const uploading = new Uploading(await signedInOwner(app), app.address, clip);

  let over = false;
  const untilOver = async (act: () => Promise<void>): Promise<void> => {
    while (!over) await act();
  };
  const acting = [
    untilOver(() => saving.saveOnce()),
    untilOver(() => publishing.publishOnce()),
    untilOver(async () => {
      if ((await uploading.waiting()).length < 3) await uploading.sendOnce();
      else await pause(200);
    }),
    untilOver(async () => {
      await publishing.check();
      await pause(300);
    }),
  ];

  const victims = {
    web: { kill: () => app.web.kill(), restart: () => app.web.start() },
    worker: { kill: () => app.worker.kill(), restart: () => app.worker.start() },
    database: { kill: () => database.kill(), restart: () => database.restart() },
  };
  const names = Object.keys(victims) as (keyof typeof victims)[];
  const killed = { web: 0, worker: 0, database: 0 };
  const killing = async (): Promise<void> => {
    for (let count = 0; count < KILLS; count++) {
      await pause(200 + random() * 1_500);
      const name = names[Math.floor(random() * names.length)] ?? 'web';
      await victims[name].kill();
      killed[name]++;
      await pause(random() * 400);
      await victims[name].restart();
    }
    over = true;
  };
  // A teacher who finds something wrong ends the run at once.
  await Promise.race([killing(), ...acting]);
  over = true;
  await Promise.all(acting);

  await saving.check();
  await publishing.check();
  await expect.poll(() => uploading.waiting(), { timeout: 180_000, interval: 1_000 }).toEqual([]);
  await uploading.checkMedia();
  console.log(
    'killed',
    killed,
    'saves',
    saving.acknowledged,
    'revisions',
    publishing.acknowledged,
    'recordings',
    uploading.ids.length,
  );
  expect(killed.web + killed.worker + killed.database).toBe(KILLS);
  expect(Math.min(saving.acknowledged, publishing.acknowledged, uploading.ids.length)).toBeGreaterThan(0);
});
