/** A workshop with an owner who is signed in, and a lesson in it; every name is invented. */
import { randomUUID } from 'node:crypto';
import { hashPassword } from 'better-auth/crypto';
import { createPerson } from '#lib/access/person.ts';
import type { Database } from '#lib/data/database.ts';
import { emptyContent } from '#lib/lesson/content.ts';

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

const PASSWORD = 'verdigris and copper 41';

export async function signedInOwner(app: { address: string; db: Database }): Promise<SignedIn> {
  const { db, address } = app;
  const userId = randomUUID();
  const email = `${userId}@example.org`;
  const passwordHash = await hashPassword(PASSWORD);
  await createPerson(db, { id: userId, name: 'Ilo Verrand', email, passwordHash });
  const workshopId = randomUUID();
  const workshop = `w-${workshopId}`;
  const lessonId = randomUUID();
  await db.workshop.create({ data: { id: workshopId, slug: workshop, name: 'Kettle Row Rings' } });
  await db.member.create({ data: { id: randomUUID(), workshopId, userId, role: 'owner' } });
  const content = { ...emptyContent('Box chain in two colours', 'en', 'EUR') };
  await db.lesson.create({ data: { id: lessonId, workshopId, slug: `l-${lessonId}`, content } });
  const answer = await fetch(`${address}/api/auth/sign-in`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin: address },
    body: JSON.stringify({ email, password: PASSWORD }),
  });
  if (!answer.ok) throw new Error(`Signing in failed: ${answer.status} ${await answer.text()}`);
  const cookies = answer.headers.getSetCookie().map((line) => {
    const [name = '', value = ''] = (line.split(';', 1)[0] ?? '').split(/=(.*)/s);
    return { name, value };
  });
  return {
    workshop,
    lessonId,
    cookie: cookies.map(({ name, value }) => `${name}=${value}`).join('; '),
    cookies,
    api: `${address}/api/workshops/${workshop}/lessons/${lessonId}`,
    bench: `${address}/bench/${workshop}/lessons/${lessonId}`,
  };
}
