/** People of test workshops, signed in through the program's own routes. */
import { randomUUID } from 'node:crypto';
import type { Role } from '#lib/access/caller.ts';
import { issueInvitation } from '#lib/access/invitation.ts';
import { foundingAddress, type TestApp } from './app.ts';

export const PASSWORD = 'kettle orchard violin seven';

export interface Person {
  readonly email: string;
  /** Value of a Cookie header. */
  readonly cookie: string;
}

/** Sends JSON as our own pages do. */
export function send(
  app: TestApp,
  method: string,
  path: string,
  body?: unknown,
  headers: Readonly<Record<string, string>> = {},
): Promise<Response> {
  return fetch(`${app.address}${path}`, {
    method,
    redirect: 'manual',
    headers: {
      origin: app.address,
      ...(body === undefined ? {} : { 'content-type': 'application/json' }),
      ...headers,
    },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
}

/** The first owner, through the founding address; `workshop` is the new workshop's slug. */
export async function foundAs(
  app: TestApp,
  name: string,
  workshopName: string,
): Promise<{ owner: Person; workshop: string }> {
  const token = new URL(await foundingAddress(app)).pathname.split('/').at(-1);
  const email = `${name.toLowerCase()}@example.org`;
  const answer = await send(app, 'POST', '/api/invitation/found', {
    token,
    workshopName,
    name,
    email,
    password: PASSWORD,
  });
  if (answer.status !== 201) throw new Error(`founding: ${answer.status} ${await answer.text()}`);
  const { workshop } = (await answer.json()) as { workshop: string };
  return { owner: { email, cookie: cookieOf(answer) }, workshop };
}

/** A new member of a workshop, through an inviting address. */
export async function joinAs(app: TestApp, name: string, workshopId: string, role: Role): Promise<Person> {
  const { path } = await issueInvitation(app.db, { workshopId, role, note: '' }, new Date());
  const email = `${name.toLowerCase()}@example.org`;
  const answer = await send(app, 'POST', '/api/invitation/join', {
    as: 'new person',
    token: path.split('/').at(-1),
    name,
    email,
    password: PASSWORD,
  });
  if (answer.status !== 201) throw new Error(`joining: ${answer.status} ${await answer.text()}`);
  return { email, cookie: cookieOf(answer) };
}

/** A workshop without members, straight into the database. */
export async function emptyWorkshop(app: TestApp, slug: string): Promise<string> {
  const id = randomUUID();
  await app.db.workshop.create({ data: { id, slug, name: slug } });
  return id;
}

export const cookieOf = (answer: Response): string =>
  answer.headers
    .getSetCookie()
    .map((line) => line.split(';', 1)[0])
    .join('; ');
