/** What is not a portable copy, or was bent into none, is refused whole and leaves nothing behind. */
import { unzipSync, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { copyBench, textOf } from '#tests/support/copy-bench.ts';

const { db, taught, lessonZip, bringIn, another } = await copyBench();

describe('what is not a copy is refused whole', () => {
  const cases: readonly (readonly [
    string,
    (files: Record<string, Uint8Array>, at: string) => Uint8Array,
    string,
  ])[] = [
    ['no zip at all', () => Buffer.from('WEBVTT\n\n'), 'not-a-zip'],
    ['a zip cut short', (files) => zipSync(files).slice(0, -40), 'not-a-zip'],
    ['a zip without a lesson', () => zipSync({ 'a.txt': Buffer.from('a') }), 'no-lesson'],
    [
      'a name that leads up',
      (files) => zipSync({ ...files, '../../evil': Buffer.from('x') }),
      'name-not-plain',
    ],
    [
      'a name from the root',
      (files) => zipSync({ ...files, '/etc/evil': Buffer.from('x') }),
      'name-not-plain',
    ],
    ['a name of Windows', (files) => zipSync({ ...files, 'C:\\evil': Buffer.from('x') }), 'name-not-plain'],
    [
      'two names that differ in capitals',
      (files, at) => zipSync({ ...files, [`${at}/LESSON.json`]: Buffer.from('{}') }),
      'name-twice',
    ],
    [
      'a link',
      (files, at) =>
        zipSync({
          ...files,
          [`${at}/link`]: [Buffer.from('/etc/passwd'), { os: 3, attrs: (0o120777 << 16) >>> 0 }],
        }),
      'is-a-link',
    ],
    [
      'a bomb',
      (files, at) => zipSync({ ...files, [`${at}/draft.json`]: [new Uint8Array(8_000_000), { level: 9 }] }),
      'blown-up',
    ],
    [
      'a document that is none',
      (files, at) => zipSync({ ...files, [`${at}/draft.json`]: Buffer.from('{') }),
      'not-as-described',
    ],
    [
      'a text that no database keeps',
      (files, at) =>
        zipSync({
          ...files,
          [`${at}/draft.json`]: Buffer.from(
            textOf(files, `${at}/draft.json`).replace('Welcome to', 'Welcome\\u0000to'),
          ),
        }),
      'not-as-described',
    ],
    [
      'a lesson of a later form',
      (files, at) =>
        zipSync({ ...files, [`${at}/lesson.json`]: changed(files, `${at}/lesson.json`, { schema: 2 }) }),
      'newer-form',
    ],
    [
      'a revision that is missing',
      (files, at) => zipSync(without(files, `${at}/revisions/2.json`)),
      'file-missing',
    ],
    [
      'revisions out of order',
      (files, at) =>
        zipSync({
          ...files,
          [`${at}/lesson.json`]: Buffer.from(
            textOf(files, `${at}/lesson.json`).replace('"number": 1', '"number": 9'),
          ),
        }),
      'revisions-out-of-order',
    ],
    [
      'a revision that names a file elsewhere',
      (files, at) =>
        zipSync({
          ...files,
          [`${at}/revisions/2.json`]: Buffer.from(
            textOf(files, `${at}/revisions/2.json`).replaceAll('media/recording-1.mp4', '/etc/passwd'),
          ),
        }),
      'not-as-described',
    ],
    [
      'a manifest that names a file elsewhere',
      (files, at) =>
        zipSync({
          ...files,
          [`${at}/lesson.json`]: Buffer.from(
            textOf(files, `${at}/lesson.json`).replaceAll('media/recording-1.mp4', 'media/../../x.mp4'),
          ),
        }),
      'not-as-described',
    ],
    [
      'a mark of a batch that is not there',
      (files, at) =>
        zipSync({
          ...files,
          [`${at}/bench.json`]: Buffer.from(
            textOf(files, `${at}/bench.json`).replace('"batch-1"', '"batch-9"'),
          ),
        }),
      'not-as-described',
    ],
    [
      'a report on a revision that is not there',
      (files, at) =>
        zipSync({
          ...files,
          [`${at}/bench.json`]: Buffer.from(
            textOf(files, `${at}/bench.json`).replaceAll('"revision": 1', '"revision": 3'),
          ),
        }),
      'not-as-described',
    ],
    [
      'a recording that is none',
      (files, at) => zipSync({ ...files, [`${at}/media/recording-1.mp4`]: Buffer.from('<html>') }),
      'recording-not-taken',
    ],
    [
      'a picture that is none',
      (files, at) =>
        zipSync({
          ...files,
          [Object.keys(files).find((name) => name.startsWith(`${at}/stills/`)) ?? '']:
            Buffer.from('<svg onload=alert(1)>'),
        }),
      'not-a-picture',
    ],
    [
      'a recording with a byte changed',
      (files, at) => spoilt(zipSync(files, { level: 0 }), files[`${at}/media/recording-1.mp4`]),
      'file-damaged',
    ],
  ];

  let copied: Record<string, Uint8Array> | undefined;

  test.each(cases)('%s', async (_name, spoil, code) => {
    const other = await another();
    copied ??= unzipSync(await lessonZip(taught));
    const bytes = spoil(copied, `l-${taught.lessonId}`);
    const sent = await bringIn(bytes, other.workshopId, other.userId);
    expect([sent.state, sent.fault?.code]).toEqual(['refused', code]);
    expect(await db.lesson.count({ where: { workshopId: other.workshopId } })).toBe(1);
  });
});

const without = (files: Record<string, Uint8Array>, name: string): Record<string, Uint8Array> =>
  Object.fromEntries(Object.entries(files).filter(([each]) => each !== name));

const changed = (files: Record<string, Uint8Array>, name: string, over: object): Uint8Array =>
  Buffer.from(JSON.stringify({ ...JSON.parse(textOf(files, name)), ...over }));

/** A stored zip in which one byte of a file is another. */
function spoilt(zip: Uint8Array, file: Uint8Array | undefined): Uint8Array {
  const at = Buffer.from(zip).indexOf(Buffer.from(file ?? []).subarray(0, 2_000));
  const bytes = Uint8Array.from(zip);
  const place = at + Math.floor((file?.length ?? 0) / 2);
  bytes[place] = (bytes[place] ?? 0) ^ 1;
  return bytes;
}
