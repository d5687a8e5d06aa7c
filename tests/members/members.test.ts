import { randomUUID } from 'node:crypto';
import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Membership, Role } from '#lib/access/caller.ts';
import { issueInvitation } from '#lib/access/invitation.ts';
import type { Bench } from '#lib/bench/bench.ts';
import { changeRole, removeMember, withdrawInvitation } from '#lib/bench/change-members.ts';
import { changeWorkshop } from '#lib/bench/change-workshop.ts';
import { createLesson } from '#lib/bench/create-lesson.ts';
import { createWorkshop } from '#lib/bench/create-workshop.ts';
import { deleteLesson } from '#lib/bench/delete-lesson.ts';
import { joinAsCaller } from '#lib/bench/use-invitation.ts';
import { findEndedLesson } from '#lib/data/ended-lessons.ts';
import { findLessons } from '#lib/data/lesson-list.ts';
import { slugSince } from '#lib/data/workshop-slugs.ts';
import { testDatabase } from '#tests/support/database.ts';

let bench: Bench;

beforeAll(async () => {
  const { db } = await testDatabase();
  bench = { db, now: () => new Date('2026-03-01T10:00:00Z'), newId: randomUUID };
});

beforeEach(async () => {
  await bench.db.workshop.deleteMany();
  await bench.db.user.deleteMany();
  await bench.db.discardedFile.deleteMany();
});

const person = async (name: string): Promise<string> => {
  const id = randomUUID();
  await bench.db.user.create({ data: { id, name, email: `${name}@example.org` } });
  return id;
};

async function workshopOf(ownerId: string): Promise<Membership> {
  const slug = await createWorkshop(bench, { name: 'Rowan Rings', ownerId });
  const workshop = await bench.db.workshop.findUniqueOrThrow({ where: { slug } });
  return { caller: { userId: ownerId, name: 'Ines', email: 'ines@example.org' }, role: 'owner', workshop };
}

async function join(at: Membership, userId: string, role: Role): Promise<string> {
  const { id } = await bench.db.member.create({
    data: { id: randomUUID(), workshopId: at.workshop.id, userId, role },
  });
  return id;
}

const memberId = async (at: Membership, userId: string): Promise<string> =>
  (await bench.db.member.findFirstOrThrow({ where: { workshopId: at.workshop.id, userId } })).id;

describe('a workshop always keeps an owner', () => {
  test('the last one is neither made less nor removed', async () => {
    const ines = await person('ines');
    const at = await workshopOf(ines);
    const id = await memberId(at, ines);
    const refused = { ok: false, fault: { code: 'last-owner' } };
    expect(await changeRole(bench, at, { memberId: id, role: 'editor' })).toEqual(refused);
    expect(await removeMember(bench, at, id)).toEqual(refused);
    expect(await changeRole(bench, at, { memberId: id, role: 'owner' })).toEqual({ ok: true, value: null });
  });

  test('also where two owners remove each other in the same moment', async () => {
    for (let round = 0; round < 10; round++) {
      const at = await workshopOf(await person(`ines${round}`));
      const ids = [
        await memberId(at, at.caller.userId),
        await join(at, await person(`edda${round}`), 'owner'),
      ];
      const done = await Promise.all(ids.map((id) => removeMember(bench, at, id)));
      expect(done.filter((one) => one.ok)).toHaveLength(1);
      expect(await bench.db.member.count({ where: { workshopId: at.workshop.id, role: 'owner' } })).toBe(1);
    }
  });

  test('members and addresses of another workshop are not found', async () => {
    const at = await workshopOf(await person('ines'));
    const other = await workshopOf(await person('otto'));
    const theirs = await memberId(other, other.caller.userId);
    expect(await removeMember(bench, at, theirs)).toEqual({ ok: false, fault: { code: 'not-found' } });
    const invitation = await issueInvitation(
      bench.db,
      { workshopId: other.workshop.id, role: 'viewer', note: '' },
      bench.now(),
    );
    expect(await withdrawInvitation(bench, at, invitation.id)).toBe(false);
    expect(await withdrawInvitation(bench, other, invitation.id)).toBe(true);
  });
});

test('an invitation raises a role and never lowers it', async () => {
  const at = await workshopOf(await person('ines'));
  const edda = await person('edda');
  const caller = { userId: edda, name: 'Edda', email: 'edda@example.org' };
  for (const [role, then] of [
    ['viewer', 'viewer'],
    ['owner', 'owner'],
    ['editor', 'owner'],
  ] as const) {
    const { path } = await issueInvitation(
      bench.db,
      { workshopId: at.workshop.id, role, note: '' },
      bench.now(),
    );
    await joinAsCaller(bench, { token: path.split('/').at(-1) ?? '', caller });
    expect((await bench.db.member.findFirstOrThrow({ where: { userId: edda } })).role).toBe(then);
  }
});

test('workshops and lessons of one name begun at once all get addresses of their own', async () => {
  const ines = await person('ines');
  const slugs = await Promise.all(
    Array.from({ length: 4 }, () => createWorkshop(bench, { name: 'Rowan Rings', ownerId: ines })),
  );
  expect(new Set(slugs).size).toBe(4);
  const at = await workshopOf(ines);
  await Promise.all(Array.from({ length: 4 }, () => createLesson(bench, at, { title: 'Box chain' })));
  expect(new Set((await findLessons(bench.db, at.workshop.id)).map(({ slug }) => slug)).size).toBe(4);
});

test('an address that a workshop left stays its own: nobody else gets it, she may take it back', async () => {
  const ines = await person('ines');
  const at = await workshopOf(ines);
  const first = at.workshop.slug;
  const move = async (of: Membership, slug: string) => {
    const workshop = await bench.db.workshop.findUniqueOrThrow({ where: { id: of.workshop.id } });
    return changeWorkshop(bench, { ...of, workshop }, { slug });
  };
  const taken = { ok: false, fault: { code: 'slug-taken' } };
  expect((await move(at, `${first}-lane`)).ok).toBe(true);
  const other = await workshopOf(await person('edda'));
  expect(other.workshop.slug).not.toBe(first);
  expect(await move(other, first)).toEqual(taken);
  expect(await move(other, `${first}-lane`)).toEqual(taken);
  expect([await slugSince(bench.db, first), await slugSince(bench.db, `${first}-lane`)]).toEqual([
    `${first}-lane`,
    null,
  ]);
  expect((await move(at, first)).ok).toBe(true);
  expect(await slugSince(bench.db, `${first}-lane`)).toBe(first);
  // Two that reach for one address at once: one has it.
  const both = await Promise.all([move(at, 'ring-street'), move(other, 'ring-street')]);
  expect(both.filter(({ ok }) => ok)).toHaveLength(1);
});

describe('deleting a lesson', () => {
  async function recorded(at: Membership): Promise<string> {
    const id = await createLesson(bench, at, { title: 'Box chain' });
    await bench.db.recording.create({
      data: {
        id: randomUUID(),
        lessonId: id,
        originalName: 'box.mp4',
        sizeBytes: 3,
        originalKey: `recordings/${id}/original`,
        stills: { create: { atMs: 5, storageKey: `recordings/${id}/still-5.jpg` } },
      },
    });
    return id;
  }

  test('takes its files along, and those that an earlier deletion was cut short of', async () => {
    const at = await workshopOf(await person('ines'));
    const first = await recorded(at);
    const cut = deleteLesson(bench, at, first, async () => {
      throw new Error('the disk is away');
    });
    await expect(cut).rejects.toThrow('away');
    const second = await recorded(at);
    const removed: string[] = [];
    await deleteLesson(bench, at, second, async (key) => {
      removed.push(key);
    });
    expect(removed.sort()).toEqual(
      [first, second].flatMap((id) => [`recordings/${id}/original`, `recordings/${id}/still-5.jpg`]).sort(),
    );
    expect(await bench.db.discardedFile.count()).toBe(0);
  });

  test('is not for another workshop, nor for an editor once it is published', async () => {
    const at = await workshopOf(await person('ines'));
    const other = await workshopOf(await person('otto'));
    const id = await createLesson(bench, at, { title: 'Box chain' });
    const noFiles = async (): Promise<void> => {};
    expect(await deleteLesson(bench, other, id, noFiles)).toEqual({
      ok: false,
      fault: { code: 'not-found' },
    });
    await bench.db.revision.create({
      data: {
        id: randomUUID(),
        lessonId: id,
        number: 1,
        document: { recording: null, stills: [] },
        publishedAt: bench.now(),
        publishedById: at.caller.userId,
      },
    });
    expect(await deleteLesson(bench, { ...at, role: 'editor' }, id, noFiles)).toEqual({
      ok: false,
      fault: { code: 'published-needs-owner' },
    });
    expect((await deleteLesson(bench, at, id, noFiles)).ok).toBe(true);
    expect(await findLessons(bench.db, at.workshop.id)).toEqual([]);

    // Its address stands on kits: it answers, and no lesson of that title gets it.
    expect(await findEndedLesson(bench.db, at.workshop.slug, 'box-chain')).toEqual({
      title: 'Box chain',
      endedAt: bench.now(),
      workshop: { name: at.workshop.name, slug: at.workshop.slug },
    });
    expect(await findEndedLesson(bench.db, other.workshop.slug, 'box-chain')).toBeNull();
    await createLesson(bench, at, { title: 'Box chain' });
    expect((await findLessons(bench.db, at.workshop.id)).map(({ slug }) => slug)).toEqual(['box-chain-2']);
    // A draft that nobody saw leaves nothing behind.
    const draft = await createLesson(bench, at, { title: 'Never shown' });
    await deleteLesson(bench, at, draft, noFiles);
    expect(await findEndedLesson(bench.db, at.workshop.slug, 'never-shown')).toBeNull();
  });
});
