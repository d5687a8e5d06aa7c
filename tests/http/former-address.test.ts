/** Addresses on paper: a former one leads on, and that of a lesson that has ended says so. Every public route below a workshop, found by the list of who may what. */
import { randomUUID } from 'node:crypto';
import { expect, test } from 'vitest';
import type { Membership } from '#lib/access/caller.ts';
import { changeWorkshop } from '#lib/bench/change-workshop.ts';
import { deleteLesson } from '#lib/bench/delete-lesson.ts';
import { aTaughtLesson, publishBehindTheScenes } from '#tests/support/a-taught-lesson.ts';
import { sharedApp } from '#tests/support/app.ts';
import { WHO_MAY } from './who-may.ts';

const FILES: Readonly<Record<string, string>> = {
  'kit/[file]': 'kit.csv',
  '[file]': 'captions.vtt',
  '[picture]': 'whole.svg',
  '[still]': 'start-1.jpg',
  '[number]': '1',
};

/** Paths of every public route, with a query; form posts among them. */
const paths = (workshop: string, lesson: string): readonly { path: string; method: string }[] =>
  Object.entries(WHO_MAY).flatMap(([file, rules]) => {
    if (!file.startsWith('workshop/[workshop]/')) return [];
    const route = file.replace(/\/?(page\.tsx|route\.ts)$/, '');
    const path = Object.entries(FILES)
      .reduce((text, [name, value]) => text.replace(name, name.replace(/\[\w+\]/, value)), route)
      .replace('[workshop]', workshop)
      .replace('[lesson]', lesson);
    return Object.keys(rules).map((method) => ({
      path: `/${path}?measure=170&t=3`,
      method: method === 'page' ? 'GET' : method,
    }));
  });

test('former addresses of a workshop lead on for good, ended lessons say so', async () => {
  const app = await sharedApp();
  const taught = await aTaughtLesson(app);
  await publishBehindTheScenes(app, taught);
  const bench = { db: app.db, now: () => new Date(), newId: randomUUID };
  const first = `w-${taught.workshopId}`;
  const lesson = `l-${taught.lessonId}`;
  const at = async (): Promise<Membership> => ({
    caller: { userId: taught.userId, name: '', email: '' },
    role: 'owner',
    workshop: await app.db.workshop.findUniqueOrThrow({ where: { id: taught.workshopId } }),
  });
  const move = async (slug: string) => changeWorkshop(bench, await at(), { slug });
  const ask = (path: string, method = 'GET') =>
    fetch(`${app.address}${path}`, {
      method,
      redirect: 'manual',
      ...(method === 'POST'
        ? { body: new URLSearchParams({ revision: '1', concerns: 'kit', at: '', wrong: 'x', right: '' }) }
        : {}),
    });
  const feedNames = async (slug: string) =>
    (await (await ask(`/workshop/${slug}/feed.atom`)).text()).match(/<id>[^<]+/g);
  const names = await feedNames(first);

  const next = `moved-${randomUUID().slice(0, 8)}`;
  expect(await move(next)).toEqual({ ok: true, value: null });
  const all = paths(first, lesson);
  expect(all.length).toBeGreaterThan(20);
  for (const { path, method } of all) {
    const answer = await ask(path, method);
    const told = `${method} ${path}`;
    expect([answer.status, answer.headers.get('location')], told).toEqual([
      308,
      path.replace(`/workshop/${first}`, `/workshop/${next}`),
    ]);
    // Kept by a browser for good, it would lead in circles once the address is taken back.
    expect(answer.headers.get('cache-control'), told).toMatch(/no-cache/);
  }
  for (const path of ['', `/lesson/${lesson}`, `/lesson/${lesson}/kit/1?measure=170`, '/podcast.xml'])
    expect((await fetch(`${app.address}/workshop/${first}${path}`)).status, path).toBe(200);
  const asked = encodeURIComponent(`${app.address}/workshop/${first}/lesson/${lesson}`);
  expect(await (await ask(`/oembed?url=${asked}`)).text()).toContain(
    `/workshop/${next}/lesson/${lesson}/embed`,
  );
  // A feed's entries keep their names, so that no reader sees them as new.
  expect(names).toHaveLength(2);
  expect(await feedNames(next)).toEqual(names);

  // Back again, and round once more.
  expect((await move(first)).ok).toBe(true);
  expect((await ask(`/workshop/${first}`)).status).toBe(200);
  expect((await ask(`/workshop/${next}`)).headers.get('location')).toBe(`/workshop/${first}`);
  // Said in the page itself, not by its script.
  const wordsOf = async (answer: Response) =>
    (await answer.text()).replace(/<script\b[^>]*>[\s\S]*?<\/script>/g, '');
  for (const path of [
    '/workshop/nobody-ever-had-this',
    `/workshop/${first}/lesson/never`,
    '/preview/never',
  ]) {
    const answer = await ask(path);
    expect(answer.status, path).toBe(404);
    expect(await wordsOf(answer), path).toContain('Nothing is here');
    expect((await ask(path, 'HEAD')).status, path).toBe(404);
  }

  expect((await deleteLesson(bench, await at(), taught.lessonId, async () => {})).ok).toBe(true);
  for (const { path, method } of all.filter((one) => one.path.includes('/lesson/'))) {
    const answer = await ask(path, method);
    const isPage = method === 'GET' && (answer.headers.get('content-type') ?? '').startsWith('text/html');
    if (isPage) expect(await wordsOf(answer), path).toContain('This lesson has ended.');
    expect(answer.status, `${method} ${path}`).toBe(410);
  }
});
