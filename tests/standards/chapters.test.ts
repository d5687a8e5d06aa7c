/**
 * Chapters against the podcast namespace's examples and schema, against
 * ffmpeg, which must give back from mp4, mkv and mp3 what we told it, and
 * against media files of other projects that hold chapters.
 */
import { execFile } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import type { Chapter } from '#lib/chapters/chapter.ts';
import { writeChaptersJson } from '#lib/chapters/chapters-json.ts';
import { readChapters } from '#lib/chapters/chapters-read.ts';
import { writeFfmetadata } from '#lib/chapters/ffmetadata.ts';
import { haveOutsideCases, outsideJson, outsideText } from '#tests/support/outside-cases.ts';

let made = 0;
const newId = () => `id-${made++}`;
const seen = (chapters: readonly Chapter[]) => chapters.map(({ startMs, title }) => [startMs, title]);

const TRICKY: readonly Chapter[] = [
  { id: 'a', kind: 'opening', title: 'Join = close; ring #2 \\ half open', startMs: 0 },
  { id: 'b', kind: 'repeat unit', title: '[CHAPTER] ;FFMETADATA1 “round” æøå 輪 🔗', startMs: 1_234 },
  { id: 'c', kind: 'clasp', title: 'ends in a \\', startMs: 2_001 },
  { id: 'd', kind: 'closing', title: '', startMs: 3_500 },
];
const TRICKY_SEEN = seen(TRICKY).map(([startMs, title]) => [startMs, title || 'closing']);

const present = haveOutsideCases('chapters') && haveOutsideCases('structured-data');

describe.skipIf(!present)('JSON chapters of the podcast namespace', () => {
  test.each(['podcast-ns-chapters-example.json', 'podcast-ns-chapters-exampleComplex.json'])('%s', (name) => {
    const file = outsideJson<{
      chapters: readonly { startTime: number; title?: string; toc?: boolean }[];
    }>(`chapters/${name}`);
    const { chapters, losses } = readChapters(outsideText(`chapters/${name}`), newId);
    const listed = file.chapters.filter(({ toc }) => toc !== false);
    expect(seen(chapters)).toEqual(
      listed.map(({ startTime, title }) => [startTime * 1000, title?.replace(/\s+/g, ' ') ?? '']),
    );
    const hidden = file.chapters.length - listed.length;
    expect(losses.filter(({ code }) => code === 'chapter-hidden')).toHaveLength(hidden);
  });

  test('what we write fits the schema and comes back as it was', () => {
    const schema = z.fromJSONSchema(outsideJson('structured-data/json-chapters.schema.json'));
    const file = writeChaptersJson(TRICKY, 'A lesson');
    expect(schema.safeParse(JSON.parse(file)).error).toBeUndefined();
    expect(schema.safeParse({ chapters: [] }).success).toBe(false);
    expect(seen(readChapters(file, newId).chapters)).toEqual(TRICKY_SEEN);
  });

  test('an ffmetadata file with every escaped sign', () => {
    const { chapters } = readChapters(outsideText('chapters/ffmeta-tricky.txt'), newId);
    expect(seen(chapters)).toEqual([
      [0, 'Join = close'],
      [1_000, 'Ring; pliers #2 second line'],
    ]);
  });
});

describe('ffmetadata', () => {
  test.each(['mp4', 'mkv', 'mp3'])('survives %s exactly', async (ending) => {
    const folder = await mkdtemp(join(tmpdir(), 'chapters-'));
    try {
      const ffmpeg = (...args: string[]) =>
        promisify(execFile)(process.env['FFMPEG_BIN'] ?? 'ffmpeg', [
          '-nostdin',
          '-v',
          'error',
          '-y',
          ...args,
        ]);
      const [metadata, media] = [join(folder, 'chapters.txt'), join(folder, `sound.${ending}`)];
      await writeFile(metadata, writeFfmetadata(TRICKY, 'Lesson = one; two # three \\ four', 5_000));
      const sound = ['-f', 'lavfi', '-i', 'sine=frequency=330:duration=5'];
      await ffmpeg(
        ...sound,
        '-i',
        metadata,
        '-map_metadata',
        '1',
        '-map_chapters',
        '1',
        '-map',
        '0:a',
        media,
      );
      const { stdout } = await ffmpeg('-copyts', '-i', media, '-f', 'ffmetadata', '-');
      const back = readChapters(stdout, newId);
      expect(seen(back.chapters)).toEqual(TRICKY_SEEN);
      expect(stdout.toLowerCase()).toContain('title=lesson \\= one\\; two \\# three \\\\ four');
    } finally {
      await rm(folder, { recursive: true });
    }
  });
});
