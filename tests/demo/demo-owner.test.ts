/** Whoever founds the first workshop owns the demo too, in whatever order the two come about. */
import { randomUUID } from 'node:crypto';
import { beforeAll, beforeEach, expect, test } from 'vitest';
import type { Bench } from '#lib/bench/bench.ts';
import { createWorkshop } from '#lib/bench/create-workshop.ts';
import { createDemoWorkshop, DEMO_WORKSHOP_SLUG, joinDemoWorkshop } from '#lib/bench/demo-workshop.ts';
import { testDatabase } from '#tests/support/database.ts';

let bench: Bench;

beforeAll(async () => {
  const { db } = await testDatabase();
  bench = { db, now: () => new Date(), newId: randomUUID };
});

beforeEach(async () => {
  await bench.db.workshop.deleteMany();
  await bench.db.user.deleteMany();
});

async function person(): Promise<string> {
  const id = randomUUID();
  await bench.db.user.create({ data: { id, name: 'Ilo', email: `${id}@example.org` } });
  return id;
}

/** As founding does it: the workshop and the place in the demo in one transaction. */
async function found(): Promise<string> {
  const id = await person();
  await bench.db.$transaction(async (tx) => {
    const workshop = { id: randomUUID(), slug: `w-${id}`, name: 'Kettle Row Rings' };
    await tx.workshop.create({
      data: { ...workshop, members: { create: { id: randomUUID(), userId: id, role: 'owner' } } },
    });
    await joinDemoWorkshop(tx, randomUUID(), id);
  });
  return id;
}

const makeDemo = (): Promise<void> => {
  const demo = { id: randomUUID(), slug: DEMO_WORKSHOP_SLUG, name: 'Lower Withy Workshop' };
  return createDemoWorkshop(bench.db, demo, randomUUID());
};

const owners = async (): Promise<string[]> => {
  const members = await bench.db.member.findMany({
    where: { role: 'owner', workshop: { slug: DEMO_WORKSHOP_SLUG } },
  });
  return members.map((member) => member.userId);
};

test('where the demo was made first', async () => {
  await makeDemo();
  expect(await owners()).toEqual([]);
  const founder = await found();
  expect(await owners()).toEqual([founder]);
});

test('where she was first, and only she: not whoever begins a workshop later', async () => {
  const founder = await found();
  await createWorkshop(bench, { name: 'Rowan Rings', ownerId: await person() });
  expect(await owners()).toEqual([]);
  await makeDemo();
  expect(await owners()).toEqual([founder]);
});

test('where both happen in the same moment', async () => {
  for (let round = 0; round < 10; round += 1) {
    await bench.db.workshop.deleteMany();
    const [founder] = await Promise.all([found(), makeDemo()]);
    expect(await owners()).toEqual([founder]);
  }
});
