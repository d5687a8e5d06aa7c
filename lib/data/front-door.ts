/** What the front page has to know: whether anybody teaches here yet, and whether the demo can be read. */
import type { Queries } from './database.ts';

export interface FrontDoor {
  /** Whether a workshop has an owner; before that nobody can sign in. */
  readonly isFounded: boolean;
  readonly demoIsPublished: boolean;
}

export async function findFrontDoor(
  db: Queries,
  demo: { readonly workshop: string; readonly lesson: string },
): Promise<FrontDoor> {
  const owners = await db.member.count({ where: { role: 'owner' } });
  const revisions = await db.revision.count({
    where: { lesson: { slug: demo.lesson, workshop: { slug: demo.workshop } } },
  });
  return { isFounded: owners > 0, demoIsPublished: revisions > 0 };
}
