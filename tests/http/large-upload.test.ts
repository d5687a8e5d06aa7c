/**
 * A large upload must not make the web process large: bytes pass through it.
 * 200 MB; BENCHLEAF_LONG_TESTS=1 sends a whole gigabyte.
 */
import { readFile, writeFile } from 'node:fs/promises';
import { beforeAll, expect, it } from 'vitest';
import { startApp, type TestApp } from '#tests/support/app.ts';
import { type SignedIn, signedInOwner } from '#tests/support/signed-in.ts';

const MB = 1_000_000;
const SIZE = process.env['BENCHLEAF_LONG_TESTS'] === '1' ? 1000 * MB : 200 * MB;
const LIMIT_MB = 250;

let app: TestApp;
let owner: SignedIn;
beforeAll(async () => {
  app = await startApp({ BENCHLEAF_LARGEST_RECORDING: String(Number.MAX_SAFE_INTEGER) });
  owner = await signedInOwner(app);
}, 240_000);

/** Most memory that the web process held since the count began, MB. */
async function mostMemory(): Promise<number> {
  const status = await readFile(`/proc/${app.web.pid}/status`, 'utf8');
  return (Number(/^VmHWM:\s+(\d+) kB/m.exec(status)?.[1]) * 1024) / MB;
}

const base64 = (text: string): string => Buffer.from(text).toString('base64');

function create(bytes: number): Promise<Response> {
  return fetch(`${app.address}/api/uploads`, {
    method: 'POST',
    headers: {
      'tus-resumable': '1.0.0',
      origin: app.address,
      cookie: owner.cookie,
      'upload-length': String(bytes),
      'upload-metadata': `workshop ${base64(owner.workshop)},lesson ${base64(owner.lessonId)},filename ${base64('large.mp4')}`,
    },
  });
}

it('says at once that a file is larger than the room on the disk', async () => {
  const refused = await create(Number.MAX_SAFE_INTEGER);
  expect(refused.status).toBe(507);
  expect(await refused.text()).toContain('disk of the server is full');
});

it(`receives ${SIZE / MB} MB within ${LIMIT_MB} MB of memory`, async () => {
  const headers = { 'tus-resumable': '1.0.0', origin: app.address, cookie: owner.cookie };
  const created = await create(SIZE);
  const path = created.headers.get('location') ?? '';
  const before = await mostMemory();
  // From here on the system counts the peak anew: starting up is another matter.
  await writeFile(`/proc/${app.web.pid}/clear_refs`, '5');
  const atRest = await mostMemory();
  const chunk = new Uint8Array(MB / 2).fill(7);
  let left = SIZE;
  const body = new ReadableStream<Uint8Array>({
    pull(controller) {
      if (left <= 0) return controller.close();
      controller.enqueue(chunk);
      left -= chunk.length;
    },
  });
  const sent = await fetch(`${app.address}${path}`, {
    method: 'PATCH',
    headers: { ...headers, 'upload-offset': '0', 'content-type': 'application/offset+octet-stream' },
    body,
    duplex: 'half',
  } as RequestInit);
  expect(sent.status).toBe(204);
  expect(sent.headers.get('upload-offset')).toBe(String(SIZE));
  const most = await mostMemory();
  console.log(
    `web process: ${before.toFixed(0)} MB at most until then, ${atRest.toFixed(0)} MB at rest, at most ${most.toFixed(0)} MB while receiving ${SIZE / MB} MB`,
  );
  expect(most).toBeLessThan(LIMIT_MB);
}, 300_000);
