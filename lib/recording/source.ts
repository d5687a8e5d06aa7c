/**
 * What ffmpeg says about a file that it opened, read from its own report.
 * Everything here is a claim of the file: a duration may be announced and
 * missing, a frame rate of 57,600 or a rotation of -9e18 degrees may stand
 * there. What cannot be right is left out.
 */

export interface SourceVideo {
  /** Stream index in the file. */
  readonly index: number;
  readonly codec: string;
  /** `High`, `Main 10`; empty where none is stated. */
  readonly profile: string;
  readonly pixelFormat: string;
  /** As stored, before rotation. */
  readonly width: number;
  readonly height: number;
  /** Width of a pixel by its height. */
  readonly pixelAspect: number;
  /** Clockwise, as a player turns it. */
  readonly rotation: 0 | 90 | 180 | 270;
  /** Average frames a second, or null where unlikely. */
  readonly framesPerSecond: number | null;
  /** The rate by which all its times can be told, or null where unlikely. */
  readonly tickRate: number | null;
}

export interface SourceAudio {
  readonly index: number;
  readonly codec: string;
  readonly profile: string;
  readonly channels: number;
  readonly sampleRate: number;
}

export interface Source {
  /** As announced, or null; whole hundredths of a second. */
  readonly announcedMs: number | null;
  readonly video: SourceVideo | null;
  readonly audio: SourceAudio | null;
  /** Whether it tells where it was recorded. */
  readonly hasPlace: boolean;
}

/** Reads the report that `ffmpeg -i` prints; null where it could not open the file. */
export function readSource(report: string): Source | null {
  if (!/^Input #0, /m.test(report)) return null;
  const lines = report.split('\n');
  const videos: SourceVideo[] = [];
  const audios: SourceAudio[] = [];
  lines.forEach((line, at) => {
    // A file's own texts are printed behind a colon: they cannot look like this line.
    const match = /^ {2,4}Stream #0:(\d+)(?:\[0x[0-9a-f]+\])?(?:\([^)]*\))?: (Video|Audio): (.*)$/.exec(line);
    if (!match) return;
    const [, index = '', kind, rest = ''] = match;
    if (kind === 'Audio') {
      const audio = readAudio(Number(index), rest);
      if (audio) audios.push(audio);
    } else if (!rest.includes('(attached pic)')) {
      const until = lines.findIndex((other, later) => later > at && /^ {2,4}Stream #/.test(other));
      const video = readVideo(Number(index), rest, lines.slice(at + 1, until < 0 ? undefined : until));
      if (video) videos.push(video);
    }
  });
  return {
    announcedMs: readDuration(report),
    video: videos[0] ?? null,
    audio: audios[0] ?? null,
    hasPlace: /^ +[\w.-]*(location|gps|xyz)[\w.-]*\s*:/im.test(report),
  };
}

function readDuration(report: string): number | null {
  const match = /^ {2}Duration: (\d{1,6}):(\d\d):(\d\d)\.(\d\d)/m.exec(report);
  if (!match || /Estimating duration from bitrate/.test(report)) return null;
  const [, h, m, s, hundredths] = match;
  return ((Number(h) * 60 + Number(m)) * 60 + Number(s)) * 1000 + Number(hundredths) * 10;
}

function readVideo(index: number, rest: string, details: readonly string[]): SourceVideo | null {
  const size = /, (\d{1,6})x(\d{1,6})(?: \[SAR (\d+):(\d+) DAR \d+:\d+\])?/.exec(rest);
  const [, width = '0', height = '0', across = '1', down = '1'] = size ?? [];
  if (Number(width) === 0 || Number(height) === 0) return null;
  const aspect = Number(across) / Number(down);
  return {
    index,
    ...readCodec(rest),
    pixelFormat: /, ([a-z0-9]+)(?:\([^)]*\))?(?:, \d+x\d+)/.exec(rest)?.[1] ?? '',
    width: Number(width),
    height: Number(height),
    // Odder pixels than these were never recorded.
    pixelAspect: aspect >= 0.25 && aspect <= 4 ? aspect : 1,
    rotation: readRotation(details),
    framesPerSecond: likelyRate(/, ([\d.]+k?) fps/.exec(rest)?.[1]),
    tickRate: likelyRate(/, ([\d.]+k?) tbr/.exec(rest)?.[1]),
  };
}

/** `h264 (High) (avc1 / 0x31637661), ...`: the codec and, in the first brackets, its profile. */
function readCodec(rest: string): { codec: string; profile: string } {
  const match = /^([\w.-]+)(?: \(([^)/]*)\))?/.exec(rest);
  return { codec: (match?.[1] ?? 'unknown').slice(0, 40), profile: match?.[2] ?? '' };
}

/** ffmpeg states degrees against the clock; players and people turn with it. */
function readRotation(details: readonly string[]): SourceVideo['rotation'] {
  const stated = details
    .map((line) => /displaymatrix: rotation of (-?[\d.]+|-?nan|-?inf) degrees/.exec(line)?.[1])
    .find((text) => text !== undefined);
  const turned = ((Math.round(-Number(stated ?? 0)) % 360) + 360) % 360;
  return turned === 90 || turned === 180 || turned === 270 ? turned : 0;
}

function likelyRate(text: string | undefined): number | null {
  const rate = text?.endsWith('k') ? Number(text.slice(0, -1)) * 1000 : Number(text ?? Number.NaN);
  return rate > 0 && rate <= 960 ? rate : null;
}

const LAYOUTS: Record<string, number> = { mono: 1, stereo: 2, quad: 4 };

function readAudio(index: number, rest: string): SourceAudio | null {
  const match = /, (\d+) Hz, ([^,]+)/.exec(rest);
  const [, rate = '0', layout = ''] = match ?? [];
  if (Number(rate) === 0) return null;
  // `5.1(side)`, `2 channels`, `downmix`
  const named = LAYOUTS[layout.trim()] ?? Number(/^(\d+) channels/.exec(layout)?.[1] ?? Number.NaN);
  const pointed = /^(\d)\.(\d)/.exec(layout);
  const channels = pointed ? Number(pointed[1]) + Number(pointed[2]) : named;
  return {
    index,
    ...readCodec(rest),
    channels: Number.isInteger(channels) && channels > 0 && channels <= 64 ? channels : 2,
    sampleRate: Number(rate),
  };
}
