/** A workshop with an owner who is signed in, and a lesson in it; every name is invented. */
import { randomUUID } from 'node:crypto';
import type { Database } from '#lib/data/database.ts';
import { emptyContent } from '#lib/lesson/content.ts';
import { aUser } from './a-lesson.ts';
import { beginSession } from './sign-in.ts';

export interface SignedIn {
  readonly workshop: string;
  readonly lessonId: string;
  /** Cookie header of the owner's session. */
  readonly cookie: string;
  /** The same, for a browser. */
  readonly cookies: { readonly name: string; readonly value: string }[];
  /** Address of the lesson's routes. */
  readonly api: string;
  /** Address of the lesson's screens. */
  readonly bench: string;
}

export async function signedInOwner(app: { address: string; db: Database }): Promise<SignedIn> {
  const { db, address } = app;
  const userId = await aUser(db, 'Ilo Verrand');
  const workshopId = randomUUID();
  const workshop = `w-${workshopId}`;
  const lessonId = randomUUID();
  await db.workshop.create({ data: { id: workshopId, slug: workshop, name: 'Kettle Row Rings' } });
  await db.member.create({ data: { id: randomUUID(), workshopId, userId, role: 'owner' } });
  const content = { ...emptyContent('Box chain in two colours', 'en', 'EUR') };
  await db.lesson.create({ data: { id: lessonId, workshopId, slug: `l-${lessonId}`, content } });
  const cookie = await beginSession(db, userId);
  return {
    workshop,
    lessonId,
    cookie: `${cookie.name}=${cookie.value}`,
    cookies: [cookie],
    api: `${address}/api/workshops/${workshop}/lessons/${lessonId}`,
    bench: `${address}/bench/${workshop}/lessons/${lessonId}`,
  };
}
