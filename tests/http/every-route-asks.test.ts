/**
 * Every page and route on disk asks who is calling and whether the thing is
 * theirs: found by listing files, so that a new one cannot be forgotten.
 */
import { randomUUID } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { issueInvitation } from '#lib/access/invitation.ts';
import { emptyContent } from '#lib/lesson/content.ts';
import { startApp, type TestApp } from '#tests/support/app.ts';
import { emptyWorkshop, foundAs, joinAs, type Person, send } from '#tests/support/people.ts';
import { type Rule, WHO_MAY } from './who-may.ts';

const APP = join(import.meta.dirname, '..', '..', 'app');
const METHODS = ['GET', 'HEAD', 'POST', 'PUT', 'PATCH', 'DELETE', 'OPTIONS'];
const SMALLER = { viewer: null, editor: 'viewer', owner: 'editor' } as const;

/** Ids of one workshop's things, by the names that they have in addresses. */
const NAMES = [
  'workshop',
  'member',
  'invitation',
  'lesson',
  'recording',
  'file',
  'term',
  'copy',
  'preview',
] as const;
type Name = (typeof NAMES)[number];
type Things = Readonly<Record<Name, string>>;

interface Door {
  readonly file: string;
  readonly method: string;
  readonly rule: Rule;
}

const doors: Door[] = Object.entries(WHO_MAY).flatMap(([file, rules]) =>
  Object.entries(rules).map(([method, rule]) => ({ file, method, rule })),
);
const ofMembers = doors.filter(({ rule }) => ['viewer', 'editor', 'owner'].includes(rule.who));
const named = ({ file, method }: Door): string => `${method} ${file}`;
const isPage = (door: Door): boolean => door.method === 'page';

let app: TestApp;
let ours: Things;
let theirs: Things;
let people: Record<'owner' | 'editor' | 'viewer' | 'stranger', Person>;

beforeAll(async () => {
  app = await startApp();
  const founded = await foundAs(app, 'Ines', 'Rowan Ring Workshop');
  const { id } = await app.db.workshop.findUniqueOrThrow({ where: { slug: founded.workshop } });
  const otherId = await emptyWorkshop(app, 'other-workshop');
  people = {
    owner: founded.owner,
    editor: await joinAs(app, 'Edda', id, 'editor'),
    viewer: await joinAs(app, 'Vera', id, 'viewer'),
    stranger: await joinAs(app, 'Otto', otherId, 'owner'),
  };
  ours = await furnish(id);
  theirs = await furnish(otherId);
});

/** One of everything that an address can name. */
async function furnish(workshopId: string): Promise<Things> {
  const workshop = await app.db.workshop.findUniqueOrThrow({ where: { id: workshopId } });
  const member = await app.db.member.findFirstOrThrow({ where: { workshopId, role: 'owner' } });
  const invitation = await issueInvitation(app.db, { workshopId, role: 'viewer', note: '' }, new Date());
  const lesson = randomUUID();
  const recording = randomUUID();
  const file = randomUUID();
  await app.db.lesson.create({
    data: {
      id: lesson,
      workshopId,
      slug: 'box-chain',
      content: emptyContent('Box chain', 'en', 'EUR'),
      recordings: {
        create: {
          id: recording,
          state: 'ready',
          originalName: 'box.mp4',
          sizeBytes: 3,
          originalKey: `recordings/${recording}/original`,
        },
      },
      transcriptFiles: {
        create: {
          id: file,
          name: 'a.vtt',
          bytes: Buffer.from('WEBVTT\n'),
          format: 'webvtt',
          encoding: 'utf-8',
          losses: [],
        },
      },
    },
  });
  const copy = randomUUID();
  await app.db.portableCopy.create({
    data: { id: copy, workshopId, userId: member.userId, state: 'refused', name: 'a.zip', sizeBytes: 3 },
  });
  const preview = randomUUID();
  await app.db.previewAddress.create({ data: { id: preview, lessonId: lesson, tokenHash: randomUUID() } });
  const term = randomUUID();
  await app.db.glossaryTerm.create({ data: { id: term, workshopId, term: 'maille', forms: [], sounds: [] } });
  return {
    workshop: workshop.slug,
    member: member.id,
    invitation: invitation.id,
    lesson,
    recording,
    file,
    term,
    copy,
    preview,
  };
}

const NOWHERE: Things = {
  workshop: 'no-such-workshop',
  member: randomUUID(),
  invitation: randomUUID(),
  lesson: randomUUID(),
  recording: randomUUID(),
  file: randomUUID(),
  term: randomUUID(),
  copy: randomUUID(),
  preview: randomUUID(),
};

function pathOf(door: Door, things: Things): string {
  const filled = door.file
    .replace(/\/?(page\.tsx|route\.ts)$/, '')
    .replace(/\/\[\[\.\.\.\w+\]\]/, '')
    .replaceAll(/\[(\w+)\]/g, (_, name: string) =>
      name in things ? things[name as Name] : name === 'atMs' ? '1000' : 'anything',
    );
  return `/${filled}`;
}

function knock(door: Door, things: Things, who: Person | null): Promise<Response> {
  return send(app, isPage(door) ? 'GET' : door.method, pathOf(door, things), door.rule.body, {
    ...door.rule.headers,
    ...(who ? { cookie: who.cookie } : {}),
  });
}

/** What a person can tell from an answer: status and body; of a page, its text without what Next adds. */
async function seen(answer: Response): Promise<string> {
  const body = (await answer.text())
    .replaceAll(/<script\b.*?<\/script>/gs, '')
    .replaceAll(/nonce="[^"]*"/g, '');
  return `${answer.status} ${answer.headers.get('content-type')} ${body}`;
}

test('every page and route on disk is in the list, with exactly its methods', async () => {
  const files = (await readdir(APP, { recursive: true })).filter((file) =>
    /(^|\/)(page\.tsx|route\.tsx?)$/.test(file),
  );
  const onDisk: Record<string, string[]> = {};
  for (const file of files) {
    const source = await readFile(join(APP, file), 'utf8');
    onDisk[file] = file.endsWith('page.tsx')
      ? ['page']
      : METHODS.filter((method) =>
          new RegExp(
            `export (const|async function|function) ${method}\\b|export \\{[^}]*\\b${method}\\b`,
          ).test(source),
        );
  }
  const listed = Object.fromEntries(
    Object.entries(WHO_MAY).map(([file, rules]) => [
      file,
      METHODS.concat('page').filter((method) => method in rules),
    ]),
  );
  expect(onDisk).toEqual(listed);
});

describe('nobody', () => {
  test.each(doors.filter(({ rule }) => rule.who !== 'public').map((door) => [named(door), door] as const))(
    '%s',
    async (_, door) => {
      const answer = await knock(door, ours, null);
      if (isPage(door)) {
        expect(answer.status).toBe(307);
        expect(answer.headers.get('location')).toBe(
          `/sign-in?back=${encodeURIComponent(pathOf(door, ours))}`,
        );
      } else {
        expect(answer.status).toBe(401);
      }
    },
  );
});

describe('the owner of another workshop sees what they would see where no workshop is', () => {
  test.each(ofMembers.map((door) => [named(door), door] as const))('%s', async (_, door) => {
    const answer = await seen(await knock(door, ours, people.stranger));
    expect(answer).toMatch(/^404 /);
    expect(answer).toBe(await seen(await knock(door, { ...ours, workshop: 'nowhere' }, people.stranger)));
  });
});

describe('a member whose role is too small', () => {
  const restricted = ofMembers.filter(({ rule }) => SMALLER[rule.who as keyof typeof SMALLER] !== null);
  test.each(restricted.map((door) => [named(door), door] as const))('%s', async (_, door) => {
    const smaller = door.rule.who === 'owner' ? people.editor : people.viewer;
    expect((await knock(door, ours, smaller)).status).toBe(403);
  });
});

describe('ids of another workshop below one’s own answer as ids that were never given', () => {
  const cases = ofMembers.flatMap((door) =>
    NAMES.filter((name) => name !== 'workshop')
      .filter((name) => door.file.includes(`[${name}]`))
      // The files of exports are named, not numbered.
      .filter((name) => !(name === 'file' && door.file.includes('/exports/')))
      .map((name) => [`${named(door)} with their ${name}`, door, name] as const),
  );
  test.each(cases)('%s', async (_, door, name) => {
    const strange = await seen(await knock(door, { ...ours, [name]: theirs[name] }, people.owner));
    expect(strange).toMatch(/^404 /);
    expect(strange).toBe(await seen(await knock(door, { ...ours, [name]: NOWHERE[name] }, people.owner)));
  });
});

describe('what another site sends is refused before anything is done', () => {
  const changing = doors.filter(({ method }) => ['POST', 'PUT', 'PATCH', 'DELETE'].includes(method));
  test.each(changing.map((door) => [named(door), door] as const))('%s', async (_, door) => {
    for (const headers of [
      { origin: 'https://elsewhere.example' },
      { origin: 'null' },
      { origin: 'https://elsewhere.example', 'sec-fetch-site': 'cross-site' },
    ]) {
      const answer = await send(app, door.method, pathOf(door, ours), door.rule.body, {
        ...door.rule.headers,
        ...headers,
        cookie: people.owner.cookie,
      });
      expect(answer.status).toBe(403);
    }
  });
});

test('after all of that, both workshops are as they were', async () => {
  for (const { workshop, lesson, recording, member, invitation, file } of [ours, theirs]) {
    expect(await app.db.lesson.findUniqueOrThrow({ where: { id: lesson } })).toMatchObject({
      version: 1,
      content: { title: 'Box chain' },
    });
    expect(await app.db.recording.count({ where: { id: recording, state: 'ready' } })).toBe(1);
    expect(await app.db.member.count({ where: { id: member, role: 'owner' } })).toBe(1);
    expect(await app.db.invitation.count({ where: { id: invitation } })).toBe(1);
    expect(await app.db.transcriptFile.count({ where: { id: file } })).toBe(1);
    expect(await app.db.workshop.count({ where: { slug: workshop, about: '' } })).toBe(1);
  }
  expect(await app.db.lesson.count()).toBe(2);
  expect(await app.db.workshop.count()).toBe(2);
});
