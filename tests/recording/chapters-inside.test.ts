/** Chapters inside media files: those of other projects, and what we wrote into one. */
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readChapters } from '#lib/chapters/chapters-read.ts';
import { tellMetadata } from '#lib/recording/chapters-inside.ts';
import { testFfmpeg } from '#tests/support/clips.ts';
import { haveOutsideCases, outsideBytes } from '#tests/support/outside-cases.ts';

let made = 0;
const newId = () => `id-${made++}`;

async function chaptersOf(bytes: Uint8Array): Promise<readonly (readonly [number, string])[] | null> {
  const folder = await mkdtemp(join(tmpdir(), 'inside-'));
  try {
    const path = join(folder, 'input');
    await writeFile(path, bytes);
    const signal = AbortSignal.timeout(60_000);
    const text = await tellMetadata(await testFfmpeg(), { path, folder, signal });
    return text === null
      ? null
      : readChapters(text, newId).chapters.map(({ startMs, title }) => [startMs, title] as const);
  } finally {
    await rm(folder, { recursive: true });
  }
}

describe.skipIf(!haveOutsideCases('media'))('files of other projects', () => {
  // Starts and titles as ffprobe 5.1.9 -show_chapters prints them.
  test.each([
    [
      'sample_with_chapters.mkv',
      [
        [0, 'Chapter 1'],
        [2_000, 'Chapter 2'],
      ],
    ],
    [
      'chapters-id3v2.mp3',
      [
        [0, 'Introduction'],
        [1_000, 'New chapter'],
        [2_000, 'Chapter 1'],
      ],
    ],
  ])('%s: as ffprobe has them', async (name, chapters) => {
    expect(await chaptersOf(outsideBytes(`media/${name}`))).toEqual(chapters);
  });

  test('a file without chapters has none, and one that is no recording is no harm', async () => {
    expect(await chaptersOf(outsideBytes('media/friday.mp4'))).toEqual([]);
    expect(await chaptersOf(new TextEncoder().encode('#EXTM3U\nfile:///etc/hostname'))).toBeNull();
  });
});
