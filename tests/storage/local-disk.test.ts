/** Files on disk: whole or not there, read in spans, closed when the reader leaves. */
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { openLocalDisk } from '#lib/storage/local-disk.ts';
import { isStorageKey, recordingKey } from '#lib/storage/storage-key.ts';

let root: string;
beforeEach(async () => {
  root = await mkdtemp(join(tmpdir(), 'storage-'));
});
afterEach(() => rm(root, { recursive: true }));

const KEY = recordingKey('a1', 'original');

it('gives back what was put, and any span of it', async () => {
  const disk = openLocalDisk(root);
  await disk.put(KEY, new TextEncoder().encode('copper and verdigris'));
  expect(await disk.size(KEY)).toBe(20);
  expect(await new Response(disk.read(KEY, { start: 0, end: 20 })).text()).toBe('copper and verdigris');
  expect(await new Response(disk.read(KEY, { start: 7, end: 10 })).text()).toBe('and');
  expect(await new Response(disk.read(KEY, { start: 5, end: 5 })).text()).toBe('');
});

it('reads a file of several chunks whole', async () => {
  const disk = openLocalDisk(root);
  const bytes = new Uint8Array(300_001).map((_, index) => index % 251);
  await disk.put(KEY, bytes);
  const read = new Uint8Array(await new Response(disk.read(KEY, { start: 1, end: 300_001 })).arrayBuffer());
  expect(Buffer.compare(read, bytes.subarray(1))).toBe(0);
});

it('adopts a file by moving it', async () => {
  const disk = openLocalDisk(root);
  const made = join(root, 'made');
  await writeFile(made, 'finished');
  await disk.adopt(KEY, made);
  expect(await readdir(root)).toEqual(['stored']);
  expect(await disk.size(KEY)).toBe(8);
});

it('leaves nothing behind where a file could not be adopted', async () => {
  const disk = openLocalDisk(root);
  await expect(disk.adopt(KEY, join(root, 'absent'))).rejects.toThrow();
  expect(await disk.size(KEY)).toBeNull();
});

it('leaves a file where it was while its place cannot be taken, never under a name that nobody knows', async () => {
  const disk = openLocalDisk(root);
  const made = join(root, 'made');
  await writeFile(made, 'finished');
  // Something stands in the way of the last step.
  await mkdir(join(root, 'stored', KEY, 'in the way'), { recursive: true });
  await expect(disk.adopt(KEY, made)).rejects.toThrow();
  expect(await readFile(made, 'utf8')).toBe('finished');
});

it('lends a file under a path and takes no harm when that is removed', async () => {
  const disk = openLocalDisk(root);
  await disk.put(KEY, new Uint8Array([1, 2, 3]));
  const lent = await disk.lend(KEY, root, 'input');
  expect([...(await readFile(lent))]).toEqual([1, 2, 3]);
  await rm(lent);
  expect(await disk.size(KEY)).toBe(3);
});

it('closes the file when the reader leaves in the middle, and opens none before the first read', async () => {
  const disk = openLocalDisk(root);
  await disk.put(KEY, new Uint8Array(1_000_000));
  const openFiles = async (): Promise<number> => (await readdir('/proc/self/fd')).length;
  const before = await openFiles();
  const streams = Array.from({ length: 20 }, () => disk.read(KEY, { start: 0, end: 1_000_000 }));
  expect(await openFiles()).toBe(before);
  for (const stream of streams) {
    const reader = stream.getReader();
    await reader.read();
    await reader.cancel();
  }
  expect(await openFiles()).toBe(before);
});

it('removes, and removing twice is no fault', async () => {
  const disk = openLocalDisk(root);
  await disk.put(KEY, new Uint8Array(1));
  await disk.remove(KEY);
  await disk.remove(KEY);
  expect(await disk.size(KEY)).toBeNull();
});

it.each([
  '../x',
  'recordings/../x',
  'recordings/a/..',
  '/etc/passwd',
  'recordings/a/b c',
  'original',
  'a//b',
  '',
])('refuses a key that we did not make: %s', async (key) => {
  expect(isStorageKey(key)).toBe(false);
  await expect(openLocalDisk(root).size(key)).rejects.toThrow('not a storage key');
});
