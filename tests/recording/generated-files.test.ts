/** Recordings made here by ffmpeg, healthy, odd and broken, against what ffmpeg was told to make. */
import { mkdtemp, readFile, rm, truncate, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Ffmpeg } from '#lib/recording/find-ffmpeg.ts';
import { examineFile, makeWithFfmpeg, testFfmpeg, twoSeconds } from '#tests/support/clips.ts';

let ffmpeg: Ffmpeg;
let folder: string;
/** One thread: while they wait for each other, several burn ten times the processor time. */
const VP8 = ['-c:v', 'libvpx', '-deadline', 'realtime', '-cpu-used', '8', '-threads', '1', '-c:a', 'libopus'];
const H264 = ['-c:v', 'libx264', '-preset', 'ultrafast', '-pix_fmt', 'yuv420p', '-c:a', 'aac'];

const SECRET = 'canary.mp4';
const lists: Record<string, (secret: string) => string> = {
  'HLS by name': () => `#EXTM3U\n#EXT-X-TARGETDURATION:2\n#EXTINF:2,\n${SECRET}\n#EXT-X-ENDLIST\n`,
  'HLS by path': (secret) => `#EXTM3U\n#EXT-X-TARGETDURATION:2\n#EXTINF:2,\n${secret}\n#EXT-X-ENDLIST\n`,
  'HLS by file address': (secret) => `#EXTM3U\n#EXTINF:2,\nfile:${secret}\n#EXT-X-ENDLIST\n`,
  concat: () => `ffconcat version 1.0\nfile ${SECRET}\n`,
  'concat without its head': (secret) => `file '${secret}'\n`,
  DASH: () =>
    `<?xml version="1.0"?><MPD xmlns="urn:mpeg:dash:schema:mpd:2011" type="static" mediaPresentationDuration="PT2S"><Period><AdaptationSet><Representation id="1" bandwidth="1" mimeType="video/mp4"><BaseURL>${SECRET}</BaseURL></Representation></AdaptationSet></Period></MPD>`,
  ASX: (secret) => `<asx version="3.0"><entry><ref href="${secret}"/></entry></asx>`,
  SDP: () => 'v=0\no=- 0 0 IN IP4 127.0.0.1\ns=x\nc=IN IP4 127.0.0.1\nt=0 0\nm=video 9 RTP/AVP 96\n',
  RTSP: () => 'RTSPtext\nrtsp://127.0.0.1:9/x\n',
  'a web page': () => '<!doctype html><video src="canary.mp4"></video>',
  'blank lines before a list': () => `\n\n#EXTM3U\n#EXTINF:2,\n${SECRET}\n`,
};

beforeAll(async () => {
  ffmpeg = await testFfmpeg();
  folder = await mkdtemp(join(tmpdir(), 'generated-'));
});
afterAll(() => rm(folder, { recursive: true }));

const inFolder = (name: string): string => join(folder, name);

async function taken(path: string) {
  const result = await examineFile(ffmpeg, path);
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.fault)}`);
  return result.value;
}

async function refused(path: string) {
  const result = await examineFile(ffmpeg, path);
  if (result.ok) throw new Error('taken');
  return result.fault;
}

describe('what is made', () => {
  it('nothing, of an MP4 that can be played as it is', async () => {
    const path = inFolder('fast.mp4');
    await makeWithFfmpeg(...twoSeconds(), ...H264, '-movflags', '+faststart', path);
    const { facts, playablePath } = await taken(path);
    expect(facts.playable).toMatchObject({ made: 'original', type: 'video/mp4', width: 320, height: 240 });
    expect(playablePath).toBe(path);
  });

  it('a repacked one, where the index stands last', async () => {
    const path = inFolder('slow.mp4');
    await makeWithFfmpeg(...twoSeconds(), ...H264, path);
    expect((await taken(path)).facts.playable.made).toBe('repacked');
  });

  it('a repacked one without the place, where the file tells where it was recorded', async () => {
    const path = inFolder('place.mp4');
    await makeWithFfmpeg(
      ...twoSeconds(),
      ...H264,
      '-movflags',
      '+faststart+use_metadata_tags',
      '-metadata',
      'com.apple.quicktime.location.ISO6709=+11.11+022.22/',
      path,
    );
    expect((await readFile(path)).includes('+11.11+022.22')).toBe(true);
    const result = await examineFile(ffmpeg, path, async ({ playablePath, facts }) => {
      expect(facts.playable.made).toBe('repacked');
      expect((await readFile(playablePath)).includes('+11.11+022.22')).toBe(false);
    });
    expect(result.ok).toBe(true);
  });

  it.each([
    ['webm', VP8],
    ['mkv', ['-c:v', 'libx264', '-pix_fmt', 'yuv444p', '-c:a', 'flac']],
  ])('a converted one that begins at once, of %s', async (ending, codecs) => {
    const path = inFolder(`clip.${ending}`);
    await makeWithFfmpeg(...twoSeconds('321x241'), ...codecs, path);
    await examineFile(ffmpeg, path, async ({ playablePath, facts }) => {
      expect(facts.playable).toMatchObject({ made: 'converted', width: 320, height: 240 });
      const bytes = await readFile(playablePath);
      expect(bytes.indexOf('moov')).toBeLessThan(bytes.indexOf('mdat'));
      const report = await makeWithFfmpeg('-i', playablePath, '-f', 'null', '-');
      expect(report).toMatch(/Video: h264 \(High\).*yuv420p/);
      expect(report).toMatch(/Audio: aac/);
    });
    const { facts } = await taken(path);
    expect(Math.abs(facts.durationMs - 2000)).toBeLessThanOrEqual(50);
  });

  it.each([
    ['mp3', 'mp3', 'original', 'audio/mpeg'],
    ['wav', 'pcm_s16le', 'converted', 'audio/mp4'],
    ['flac', 'flac', 'converted', 'audio/mp4'],
    ['ogg', 'libvorbis', 'converted', 'audio/mp4'],
    ['m4a', 'aac', 'repacked', 'audio/mp4'],
    ['aac', 'aac', 'repacked', 'audio/mp4'],
  ])('of sound alone in %s', async (ending, codec, made, type) => {
    const path = inFolder(`tone.${ending}`);
    await makeWithFfmpeg('-f', 'lavfi', '-i', 'sine=duration=2', '-c:a', codec, path);
    const { facts } = await taken(path);
    expect(facts).toMatchObject({ video: null, playable: { made, type, width: null } });
    expect(Math.abs(facts.durationMs - 2000)).toBeLessThanOrEqual(100);
  });
});

describe('as phones record', () => {
  it('a turned picture of varying rate stays upright and as long', async () => {
    const flat = inFolder('flat.mp4');
    const path = inFolder('phone.mp4');
    // Every third picture of the second half is missing: 30 a second, then 20.
    await makeWithFfmpeg(
      ...twoSeconds('640x360', 30),
      ...['-vf', "select='lt(t,1)+mod(n,3)'", '-fps_mode', 'vfr', ...H264, flat],
    );
    await makeWithFfmpeg('-i', flat, '-c', 'copy', '-metadata:s:v', 'rotate=90', path);
    const { facts } = await taken(path);
    expect(facts.video).toMatchObject({ width: 360, height: 640 });
    expect((facts.video?.rotation ?? 0) % 180).toBe(90);
    expect(Math.abs(facts.durationMs - 2000)).toBeLessThanOrEqual(50);
  });

  it('a converted one is turned in its pixels and keeps the time of every picture', async () => {
    const flat = inFolder('vfr.mkv');
    const path = inFolder('turned.mp4');
    await makeWithFfmpeg(
      ...twoSeconds('640x360', 30),
      ...['-vf', "select='lt(t,1)+mod(n,3)'", '-fps_mode', 'vfr', '-c:v', 'mpeg4', '-c:a', 'aac', flat],
    );
    await makeWithFfmpeg('-i', flat, '-c', 'copy', '-metadata:s:v', 'rotate=90', path);
    const count = (report: string): string =>
      /frame=\s*(\d+)/.exec(report.split('\r').at(-1) ?? '')?.[1] ?? '';
    await examineFile(ffmpeg, path, async ({ playablePath, facts }) => {
      expect(facts.playable).toMatchObject({ made: 'converted', width: 360, height: 640 });
      const report = await makeWithFfmpeg('-i', playablePath, '-fps_mode', 'passthrough', '-f', 'null', '-');
      expect(report).toContain('360x640');
      expect(report).not.toContain('rotation of');
      const before = await makeWithFfmpeg('-i', path, '-fps_mode', 'passthrough', '-f', 'null', '-');
      expect(count(report)).toBe(count(before));
    });
  });
});

describe('files that break off are refused, and told where', () => {
  it.each([
    ['mkv', ['-c:v', 'libx264', '-c:a', 'aac']],
    ['webm', VP8],
  ])('%s', async (ending, codecs) => {
    const path = inFolder(`cut.${ending}`);
    const source = ['-f', 'lavfi', '-i', 'testsrc2=duration=6', '-f', 'lavfi', '-i', 'sine=duration=6'];
    await makeWithFfmpeg(...source, ...codecs, path);
    await truncate(path, Math.floor((await readFile(path)).length * 0.6));
    const fault = await refused(path);
    expect(fault.code).toBe('breaks-off');
    if (fault.code !== 'breaks-off') return;
    expect(fault.announcedMs).toBeGreaterThanOrEqual(6000);
    expect(fault.endsAtMs).toBeGreaterThan(1000);
    expect(fault.endsAtMs).toBeLessThan(5500);
  });

  it('mp3 and wav', async () => {
    for (const name of ['cut.mp3', 'cut.wav', 'cut.flac']) {
      const path = inFolder(name);
      await makeWithFfmpeg('-f', 'lavfi', '-i', 'sine=duration=6', path);
      await truncate(path, Math.floor((await readFile(path)).length / 2));
      expect((await refused(path)).code, name).toBe('breaks-off');
    }
  });

  it('an MP4 without its index', async () => {
    const path = inFolder('no-index.mp4');
    await makeWithFfmpeg(...twoSeconds(), ...H264, path);
    await truncate(path, Math.floor((await readFile(path)).length / 2));
    expect((await refused(path)).code).toBe('index-missing');
  });

  it('a damaged picture in the middle', async () => {
    const path = inFolder('damaged.mp4');
    await makeWithFfmpeg(...twoSeconds('640x480'), ...H264, '-movflags', '+faststart', path);
    const bytes = await readFile(path);
    const middle = Math.floor((bytes.indexOf('mdat') + bytes.length) / 2);
    bytes.fill(0xff, middle, middle + 3000);
    await writeFile(path, bytes);
    expect(['damaged', 'unreadable', 'breaks-off']).toContain((await refused(path)).code);
  });
});

describe('lists that name another file never make ffmpeg read it', () => {
  let secret: string;
  beforeAll(async () => {
    secret = inFolder(SECRET);
    await makeWithFfmpeg(...twoSeconds(), ...H264, '-movflags', '+faststart', secret);
  });

  it.each(Object.keys(lists))('%s, named .mp4', async (name) => {
    const path = inFolder('lesson.mp4');
    await writeFile(path, lists[name]?.(secret) ?? '');
    expect((await refused(path)).code).toBe('not-a-recording');
  });

  it.each(['mp4', 'mkv', 'mp3', 'wav', 'ogg', 'flac'])(
    'behind the first bytes of a true %s',
    async (ending) => {
      const real = inFolder(`real.${ending}`);
      await makeWithFfmpeg('-f', 'lavfi', '-i', 'sine=duration=1', real);
      for (const name of ['HLS by path', 'concat', 'DASH']) {
        const path = inFolder(`disguised.${ending}`);
        const list = Buffer.from(`\n${lists[name]?.(secret)}`);
        await writeFile(path, Buffer.concat([(await readFile(real)).subarray(0, 32), list]));
        expect((await examineFile(ffmpeg, path)).ok, name).toBe(false);
      }
    },
  );

  it('this ffmpeg would read the other file, were it let', async () => {
    // Shows that the tests above can fail: without our arguments the list is followed.
    const path = inFolder('open.m3u8');
    await writeFile(path, lists['HLS by path']?.(secret) ?? '');
    const report = await makeWithFfmpeg('-allowed_extensions', 'ALL', '-i', path, '-f', 'null', '-');
    expect(report).toContain("canary.mp4' for reading");
  });
});
