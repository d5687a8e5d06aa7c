/** The workshop of the demo lesson, as far as founding one's own must know it. */
import type { Database, Queries } from '#lib/data/database.ts';

/** Its slug; reserved, so that no other workshop takes it. */
export const DEMO_WORKSHOP_SLUG = 'demo';
/** Slug of its one lesson, for links to the page. */
export const DEMO_LESSON_SLUG = 'two-colour-byzantine-bracelet';

/** Any number that nothing else locks. */
const LOCK = 1_802_004_001;

/**
 * The demo is loaded beside the running site, so she may found her workshop
 * before, after or while it is made. One waits here for the other; the later
 * one then sees what the earlier one did.
 */
const waitForTheOther = (tx: Queries) => tx.$executeRaw`SELECT pg_advisory_xact_lock(${LOCK})`;

/** Makes the founder an owner of the demo workshop, so that she can look behind its lesson; harmless where there is none yet. */
export async function joinDemoWorkshop(tx: Queries, id: string, userId: string): Promise<void> {
  await waitForTheOther(tx);
  const demo = await tx.workshop.findUnique({ where: { slug: DEMO_WORKSHOP_SLUG }, select: { id: true } });
  if (!demo) return;
  await tx.member.upsert({
    where: { workshopId_userId: { workshopId: demo.id, userId } },
    create: { id, workshopId: demo.id, userId, role: 'owner' },
    update: { role: 'owner' },
  });
}

/** Makes the demo workshop; whoever founded this server's first one already is its owner. */
export async function createDemoWorkshop(
  db: Database,
  data: Parameters<Queries['workshop']['create']>[0]['data'] & { readonly id: string },
  memberId: string,
): Promise<void> {
  await db.$transaction(async (tx) => {
    await waitForTheOther(tx);
    const founder = await tx.member.findFirst({
      where: { role: 'owner' },
      orderBy: { createdAt: 'asc' },
      select: { userId: true },
    });
    await tx.workshop.create({ data });
    if (!founder) return;
    const { userId } = founder;
    await tx.member.create({ data: { id: memberId, workshopId: data.id, userId, role: 'owner' } });
  });
}
