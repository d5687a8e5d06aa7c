/**
 * Receiving recordings: tus 1.0.0 as its text asks (the sentences quoted in the
 * names are its own rules), who may send, and what becomes of a file that came
 * whole.
 */
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startApp, type TestApp } from '#tests/support/app.ts';
import { makeWithFfmpeg, twoSeconds } from '#tests/support/clips.ts';
import { type SignedIn, signedInOwner } from '#tests/support/signed-in.ts';

let app: TestApp;
let owner: SignedIn;
let stranger: SignedIn;
let folder: string;
let clip: Uint8Array<ArrayBuffer>;
const LARGEST = 5_000_000;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'uploads-'));
  const path = join(folder, 'clip.mp4');
  await makeWithFfmpeg(
    ...twoSeconds(),
    '-c:v',
    'libx264',
    '-preset',
    'ultrafast',
    '-pix_fmt',
    'yuv420p',
    '-c:a',
    'aac',
    path,
  );
  clip = new Uint8Array(await readFile(path));
  app = await startApp({ BENCHLEAF_LARGEST_RECORDING: String(LARGEST) });
  owner = await signedInOwner(app);
  stranger = await signedInOwner(app);
}, 240_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

const base64 = (text: string): string => Buffer.from(text).toString('base64');
const metadataOf = (who: SignedIn, name = 'clip.mp4'): string =>
  `workshop ${base64(who.workshop)},lesson ${base64(who.lessonId)},filename ${base64(name)}`;

async function tus(
  method: string,
  path: string,
  headers: Record<string, string> = {},
  body?: Uint8Array<ArrayBuffer>,
  who: SignedIn | null = owner,
): Promise<Response> {
  return fetch(path.startsWith('http') ? path : `${app.address}${path}`, {
    method,
    headers: {
      'tus-resumable': '1.0.0',
      origin: app.address,
      ...(who ? { cookie: who.cookie } : {}),
      ...headers,
    },
    ...(body ? { body } : {}),
  });
}

async function create(length: number, who: SignedIn = owner, name?: string): Promise<string> {
  const answer = await tus(
    'POST',
    '/api/uploads',
    { 'upload-length': String(length), 'upload-metadata': metadataOf(who, name) },
    undefined,
    who,
  );
  expect(answer.status).toBe(201);
  return answer.headers.get('location') ?? '';
}

const patch = (path: string, offset: number, body: Uint8Array<ArrayBuffer>, who = owner): Promise<Response> =>
  tus(
    'PATCH',
    path,
    { 'upload-offset': String(offset), 'content-type': 'application/offset+octet-stream' },
    body,
    who,
  );

interface Listed {
  readonly current: string | null;
  readonly recordings: readonly {
    id: string;
    state: string;
    fault: unknown;
    facts: { durationMs: number };
  }[];
}
const list = async (): Promise<Listed> => (await tus('GET', `${owner.api}/recordings`)).json();

async function stateOf(id: string, wanted: readonly string[]): Promise<Listed['recordings'][number]> {
  for (let tries = 0; tries < 200; tries++) {
    const found = (await list()).recordings.find((recording) => recording.id === id);
    if (found && wanted.includes(found.state)) return found;
    await new Promise((resolve) => setTimeout(resolve, 150));
  }
  throw new Error(`${id} did not become ${wanted.join(' or ')}: ${JSON.stringify(await list())}`);
}

describe('the protocol', () => {
  it('OPTIONS names version, extensions and the largest size', async () => {
    const answer = await tus('OPTIONS', '/api/uploads');
    expect(answer.status).toBe(204);
    expect(answer.headers.get('tus-version')).toContain('1.0.0');
    expect(answer.headers.get('tus-extension')).toBe('creation,creation-with-upload,termination');
    expect(answer.headers.get('tus-max-size')).toBe(String(LARGEST));
  });
  it('another version is answered 412 with Tus-Version, and nothing is done', async () => {
    const answer = await tus('POST', '/api/uploads', { 'tus-resumable': '0.2.0', 'upload-length': '5' });
    expect(answer.status).toBe(412);
    expect(answer.headers.get('tus-version')).toBe('1.0.0');
  });
  it('HEAD tells offset and length, and must not be cached', async () => {
    const path = await create(10);
    const answer = await tus('HEAD', path);
    expect(answer.status).toBe(200);
    expect(answer.headers.get('upload-offset')).toBe('0');
    expect(answer.headers.get('upload-length')).toBe('10');
    expect(answer.headers.get('cache-control')).toContain('no-store');
    expect(answer.headers.get('tus-resumable')).toBe('1.0.0');
  });
  it('PATCH with another content type is answered 415', async () => {
    const path = await create(10);
    const answer = await tus(
      'PATCH',
      path,
      { 'upload-offset': '0', 'content-type': 'application/octet-stream' },
      new Uint8Array(5),
    );
    expect(answer.status).toBe(415);
  });
  it('PATCH at another offset is answered 409 and leaves the upload as it is', async () => {
    const path = await create(10);
    expect((await patch(path, 0, new Uint8Array(4))).headers.get('upload-offset')).toBe('4');
    expect((await patch(path, 2, new Uint8Array(4))).status).toBe(409);
    expect((await tus('HEAD', path)).headers.get('upload-offset')).toBe('4');
  });
  it('a POST that means PATCH says so in a header', async () => {
    const path = await create(10);
    const answer = await tus(
      'POST',
      path,
      {
        'x-http-method-override': 'PATCH',
        'upload-offset': '0',
        'content-type': 'application/offset+octet-stream',
      },
      new Uint8Array(3),
    );
    expect(answer.status).toBe(204);
    expect((await tus('HEAD', path)).headers.get('upload-offset')).toBe('3');
  });
  it('more than was announced is refused', async () => {
    const path = await create(10);
    const answer = await patch(path, 0, new Uint8Array(11));
    expect(answer.status).toBe(413);
    expect(Number((await tus('HEAD', path)).headers.get('upload-offset'))).toBeLessThanOrEqual(10);
  });
  it('larger than the largest is refused at creation', async () => {
    const answer = await tus('POST', '/api/uploads', {
      'upload-length': String(LARGEST + 1),
      'upload-metadata': metadataOf(owner),
    });
    expect(answer.status).toBe(413);
  });
  it.each(['filename not*base64', 'a b c', ''])(
    'metadata that is not valid is refused: %j',
    async (metadata) => {
      const answer = await tus('POST', '/api/uploads', { 'upload-length': '5', 'upload-metadata': metadata });
      expect(answer.status).toBe(400);
    },
  );
  it('an empty upload is refused, and one of unknown length not offered', async () => {
    const headers = { 'upload-metadata': metadataOf(owner) };
    expect((await tus('POST', '/api/uploads', { ...headers, 'upload-length': '0' })).status).toBe(400);
    expect((await tus('POST', '/api/uploads', { ...headers, 'upload-defer-length': '1' })).status).toBe(501);
  });
  it('DELETE ends an upload and leaves nothing', async () => {
    const path = await create(10);
    expect((await tus('DELETE', path)).status).toBe(204);
    expect((await tus('HEAD', path)).status).toBe(404);
    const id = path.split('/').at(-1);
    expect((await list()).recordings.some((recording) => recording.id === id)).toBe(false);
  });
});

describe('who may', () => {
  it('nobody without a session', async () => {
    expect((await tus('POST', '/api/uploads', { 'upload-length': '5' }, undefined, null)).status).toBe(401);
  });
  it('nobody for a lesson of another workshop', async () => {
    const headers = { 'upload-length': '5', 'upload-metadata': metadataOf(owner) };
    expect((await tus('POST', '/api/uploads', headers, undefined, stranger)).status).toBe(404);
  });
  it.each(['HEAD', 'PATCH', 'DELETE'])('%s of another’s upload finds nothing', async (method) => {
    const path = await create(10);
    const headers =
      method === 'PATCH' ? { 'upload-offset': '0', 'content-type': 'application/offset+octet-stream' } : {};
    const body = method === 'PATCH' ? new Uint8Array(5) : undefined;
    expect((await tus(method, path, headers, body, stranger)).status).toBe(404);
    expect((await tus('HEAD', path)).headers.get('upload-offset')).toBe('0');
  });
  it('a viewer may not send', async () => {
    await app.db.member.updateMany({
      where: { workshop: { slug: stranger.workshop } },
      data: { role: 'viewer' },
    });
    const headers = { 'upload-length': '5', 'upload-metadata': metadataOf(stranger) };
    expect((await tus('POST', '/api/uploads', headers, undefined, stranger)).status).toBe(403);
  });
});

describe('a recording that came', () => {
  it('in two parts, with the server killed between them, is taken in and played in spans', async () => {
    const path = await create(clip.length, owner, '../../etc/ti\u0000tle.mp4');
    const half = Math.floor(clip.length / 2);
    await patch(path, 0, clip.subarray(0, half));
    await app.web.kill();
    await app.web.start();
    expect((await tus('HEAD', path)).headers.get('upload-offset')).toBe(String(half));
    expect((await patch(path, half, clip.subarray(half))).status).toBe(204);
    const id = path.split('/').at(-1) ?? '';
    // The last answer may have been lost: the upload still says that it is whole.
    const again = await tus('HEAD', path);
    expect(again.headers.get('upload-offset')).toBe(String(clip.length));
    const ready = await stateOf(id, ['ready', 'refused']);
    expect(ready).toMatchObject({ state: 'ready', facts: { durationMs: 2000 } });
    expect((await list()).current).toBe(id);

    const media = `${owner.api}/recordings/${id}/media`;
    const part = await tus('GET', media, { range: 'bytes=4-7' });
    expect(part.status).toBe(206);
    expect(await part.text()).toBe('ftyp');
    expect(part.headers.get('content-range')).toMatch(/^bytes 4-7\/\d+$/);
    expect(part.headers.get('x-content-type-options')).toBe('nosniff');
    expect((await tus('GET', media, { range: 'bytes=99999999-' })).status).toBe(416);
    expect((await tus('HEAD', media)).headers.get('accept-ranges')).toBe('bytes');
    expect((await tus('GET', media, {}, undefined, stranger)).status).toBe(404);

    const still = await tus('GET', `${owner.api}/recordings/${id}/stills/1500`);
    expect(still.headers.get('content-type')).toBe('image/jpeg');
    expect([...new Uint8Array(await still.arrayBuffer()).subarray(0, 3)]).toEqual([0xff, 0xd8, 0xff]);
    const peaks = await (await tus('GET', `${owner.api}/recordings/${id}/peaks`)).arrayBuffer();
    // A tone of two seconds: twenty windows a second, none of them silent.
    expect(peaks.byteLength).toBeGreaterThanOrEqual(40);
    expect(Math.min(...new Uint8Array(peaks).subarray(2, 38))).toBeGreaterThan(10);
  });

  it('while the worker is killed again and again is taken in all the same', async () => {
    const path = await create(clip.length);
    await patch(path, 0, clip);
    for (let kills = 0; kills < 3; kills++) {
      await new Promise((resolve) => setTimeout(resolve, 150 * kills));
      await app.worker.kill();
      await app.worker.start();
    }
    const id = path.split('/').at(-1) ?? '';
    const row = await app.db.recording.findUniqueOrThrow({ where: { id } });
    expect(['waiting', 'ingesting', 'ready']).toContain(row.state);
    for (let tries = 0; tries < 400; tries++) {
      if ((await app.db.recording.findUniqueOrThrow({ where: { id } })).state === 'ready') break;
      await new Promise((resolve) => setTimeout(resolve, 200));
    }
    expect(await app.db.recording.findUniqueOrThrow({ where: { id } })).toMatchObject({
      state: 'ready',
      fault: null,
    });
  });

  it('and is none is refused with its reason, and can be removed', async () => {
    const text = new Uint8Array(Buffer.from('#EXTM3U\n#EXTINF:2,\n/etc/hostname\n'));
    const path = await create(text.length, owner, 'looks-like.mp4');
    await patch(path, 0, text);
    const id = path.split('/').at(-1) ?? '';
    const refused = await stateOf(id, ['refused', 'ready']);
    expect(refused.fault).toEqual({ code: 'not-a-recording', looksLike: 'playlist' });
    expect((await tus('POST', `${owner.api}/recordings/${id}/retry`)).status).toBe(409);
    expect((await tus('DELETE', `${owner.api}/recordings/${id}`)).status).toBe(204);
  });

  it('whose last step was missed is found when a worker starts', async () => {
    const path = await create(clip.length);
    const id = path.split('/').at(-1) ?? '';
    await patch(path, 0, clip.subarray(0, -1));
    // As if the process died between the last byte and the database.
    const { appendFile } = await import('node:fs/promises');
    await appendFile(join(app.files, 'uploads', id), clip.subarray(-1));
    await app.worker.kill();
    await app.worker.start();
    expect((await stateOf(id, ['ready', 'refused'])).state).toBe('ready');
  });
});
