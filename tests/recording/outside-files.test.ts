/**
 * Recordings that nobody here made, healthy and broken. Expected facts are
 * ffprobe's and were written down with the files, as was whether a full,
 * strict decode succeeds.
 */
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Ffmpeg } from '#lib/recording/find-ffmpeg.ts';
import { examineFile, testFfmpeg } from '#tests/support/clips.ts';
import { haveOutsideCases, outsideJson } from '#tests/support/outside-cases.ts';

interface Case {
  readonly file: string;
  readonly ffprobe: {
    readonly ok: boolean;
    readonly duration: string | null;
    readonly streams: readonly {
      readonly codec_type: string;
      readonly codec_name: string;
      readonly width?: number;
      readonly height?: number;
      readonly rotation?: number;
    }[];
  };
  readonly fullDecode: { readonly strictRc: number };
}

const present = haveOutsideCases('media');
const cases = present
  ? outsideJson<readonly Case[]>('media/manifest.json').filter(({ file }) =>
      /\.(mp4|mov|mkv|webm|mp3|m4b)$/.test(file),
    )
  : [];
const pathOf = (file: string): string =>
  fileURLToPath(new URL(`../../../shared/suites/media/${file}`, import.meta.url));

let ffmpeg: Ffmpeg;
beforeAll(async () => {
  ffmpeg = await testFfmpeg();
});

describe.skipIf(!present)('healthy files are taken', () => {
  const healthy = cases.filter(({ ffprobe, fullDecode }) => ffprobe.ok && fullDecode.strictRc === 0);
  it.each(healthy)('$file', async ({ file, ffprobe }) => {
    const result = await examineFile(ffmpeg, pathOf(file));
    if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.fault)}`);
    const { facts } = result.value;
    if (ffprobe.duration !== null) {
      // ffprobe's own figure, to the 50 ms by which a converted file's last frame may differ.
      expect(Math.abs(facts.durationMs - Number(ffprobe.duration) * 1000)).toBeLessThanOrEqual(50);
    }
    const video = ffprobe.streams.find((stream) => stream.codec_type === 'video');
    const audio = ffprobe.streams.find((stream) => stream.codec_type === 'audio');
    expect(facts.video?.codec).toBe(video?.codec_name);
    expect(facts.audio?.codec).toBe(audio?.codec_name);
    if (video && facts.video) {
      // ffprobe counts degrees against the clock.
      const turned = (((-(video.rotation ?? 0) % 360) + 360) % 360) as 0 | 90 | 180 | 270;
      expect(facts.video.rotation).toBe(turned);
      const upright = turned % 180 !== 0;
      expect([facts.video.width, facts.video.height]).toEqual(
        upright ? [video.height, video.width] : [video.width, video.height],
      );
    }
  });
});

describe.skipIf(!present)('broken files are refused with a reason', () => {
  const broken = cases.filter(({ ffprobe, fullDecode }) => !ffprobe.ok || fullDecode.strictRc !== 0);
  it.each(broken)('$file', async ({ file }) => {
    const result = await examineFile(ffmpeg, pathOf(file));
    expect(result.ok).toBe(false);
  });

  it.skipIf(!cases.some(({ file }) => file === 'derived-truncated-faststart.mp4'))(
    'a cut-off file is told where it ends',
    async () => {
      const result = await examineFile(ffmpeg, pathOf('derived-truncated-faststart.mp4'));
      if (result.ok) throw new Error('taken');
      expect(result.fault).toMatchObject({ code: 'breaks-off', announcedMs: 3070 });
    },
  );
});
