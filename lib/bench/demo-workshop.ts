/** The workshop of the demo lesson, as far as founding one's own must know it. */
import type { Queries } from '#lib/data/database.ts';

/** Its slug; reserved, so that no other workshop takes it. */
export const DEMO_WORKSHOP_SLUG = 'demo';
/** Slug of its one lesson, for links to the page. */
export const DEMO_LESSON_SLUG = 'two-colour-byzantine-bracelet';

/** Makes a person an owner of the demo workshop, so that they can look behind its lesson; harmless where there is none. */
export async function joinDemoWorkshop(tx: Queries, id: string, userId: string): Promise<void> {
  const demo = await tx.workshop.findUnique({ where: { slug: DEMO_WORKSHOP_SLUG }, select: { id: true } });
  if (!demo) return;
  await tx.member.upsert({
    where: { workshopId_userId: { workshopId: demo.id, userId } },
    create: { id, workshopId: demo.id, userId, role: 'owner' },
    update: { role: 'owner' },
  });
}
