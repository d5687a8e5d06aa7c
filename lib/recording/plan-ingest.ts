/**
 * Decides what is made of a recording, and says it as ffmpeg's arguments. One
 * run decodes the file once, whole and strictly, and on the way writes the
 * file for pupils (where the original is not one), the sound for the waveform
 * and the loudness. Pure; run-ffmpeg.ts runs it.
 */
import { failed, ok, type Result } from '#lib/result.ts';
import type { RecordingFault } from './fault.ts';
import type { Layout } from './layout.ts';
import type { Container } from './sniff.ts';
import { SUMMARY_SAMPLE_RATE } from './sound-summary.ts';
import type { Source, SourceAudio, SourceVideo } from './source.ts';

/** Larger pictures are refused: beyond 8K, so no camera's. */
export const MOST_PIXELS = 8192 * 4320;
/** Far beyond any lesson, ms. */
export const LONGEST_RECORDING_MS = 12 * 3_600_000;

/** Codecs that are decoded, by ffmpeg's names. Others are refused by name. */
const PICTURE_CODECS = [
  'h264',
  'hevc',
  'av1',
  'vp8',
  'vp9',
  'mpeg4',
  'mpeg2video',
  'mjpeg',
  'prores',
  'theora',
  'dnxhd',
];
const SOUND_CODECS = ['aac', 'mp3', 'mp2', 'opus', 'vorbis', 'flac', 'alac', 'ac3', 'eac3'];

export interface IngestPlan {
  readonly made: 'original' | 'repacked' | 'converted';
  readonly type: 'video/mp4' | 'audio/mp4' | 'audio/mpeg';
  /** Ending of the file for pupils. */
  readonly ending: 'mp4' | 'm4a' | 'mp3';
  readonly video: 'none' | 'keep' | 'convert';
  readonly audio: 'none' | 'keep' | 'convert';
  /** Size of the picture for pupils as it is seen; null without one. */
  readonly size: { readonly width: number; readonly height: number } | null;
}

/** What has to be made, or why the file cannot be taken. */
export function planIngest(
  container: Container,
  layout: Layout,
  source: Source,
): Result<IngestPlan, RecordingFault> {
  const refusal = refusalOf(source);
  if (refusal) return failed(refusal);
  const { video, audio } = source;
  if (!video) return ok(planSound(container, layout, source));
  const keepsVideo = isWebPicture(video);
  const keepsAudio = !audio || isWebSound(audio);
  const kept = isServable(container, layout, source) ? 'original' : 'repacked';
  return ok({
    made: keepsVideo && keepsAudio ? kept : 'converted',
    type: 'video/mp4',
    ending: 'mp4',
    video: keepsVideo ? 'keep' : 'convert',
    audio: !audio ? 'none' : keepsAudio ? 'keep' : 'convert',
    size: keepsVideo ? seenSize(video) : webSize(video),
  });
}

function refusalOf({ video, audio, announcedMs }: Source): RecordingFault | null {
  if (!video && !audio) return { code: 'no-sound-nor-picture' };
  if (video && !PICTURE_CODECS.includes(video.codec)) {
    return { code: 'codec-not-taken', codec: video.codec, of: 'picture' };
  }
  if (audio && !SOUND_CODECS.includes(audio.codec) && !/^(pcm|adpcm)_/.test(audio.codec)) {
    return { code: 'codec-not-taken', codec: audio.codec, of: 'sound' };
  }
  if (video && video.width * video.height > MOST_PIXELS) {
    return { code: 'picture-too-large', width: video.width, height: video.height, mostPixels: MOST_PIXELS };
  }
  return announcedMs !== null && announcedMs > LONGEST_RECORDING_MS
    ? { code: 'too-long', durationMs: announcedMs, longestMs: LONGEST_RECORDING_MS }
    : null;
}

function planSound(container: Container, layout: Layout, source: Source): IngestPlan {
  const common = { video: 'none', size: null } as const;
  if (container === 'mp3' && source.audio?.codec === 'mp3') {
    return { ...common, made: 'original', type: 'audio/mpeg', ending: 'mp3', audio: 'keep' };
  }
  const kept = source.audio && isWebSound(source.audio);
  return {
    ...common,
    made: !kept ? 'converted' : isServable(container, layout, source) ? 'original' : 'repacked',
    type: 'audio/mp4',
    ending: 'm4a',
    audio: kept ? 'keep' : 'convert',
  };
}

/** An MP4 that can be sent as it is: index first, and it does not tell where it was recorded. */
const isServable = (container: Container, layout: Layout, source: Source): boolean =>
  container === 'mov' &&
  layout.fastStart &&
  layout.brand !== 'qt  ' &&
  layout.brand !== '' &&
  !source.hasPlace;

/** H.264 that every browser's decoder takes, and not larger than is sensible to send. */
const isWebPicture = (video: SourceVideo): boolean =>
  video.codec === 'h264' &&
  /^(Constrained Baseline|Baseline|Main|High|Progressive High|Constrained High)$/.test(video.profile) &&
  /^yuvj?420p$/.test(video.pixelFormat) &&
  Math.max(video.width, video.height) <= 2560;

const isWebSound = (audio: SourceAudio): boolean =>
  audio.codec === 'aac' && audio.sampleRate <= 48_000 && audio.channels <= 8;

/** A picture as it is seen: pixels made square, turned. */
export function seenSize(video: SourceVideo): { width: number; height: number } {
  const width = Math.max(1, Math.round(video.width * video.pixelAspect));
  return video.rotation % 180 === 0
    ? { width, height: video.height }
    : { width: video.height, height: width };
}

/** The size of a converted picture: as seen, at most 1920 by 1080 (or upright), both even as H.264 wants. */
export function webSize(video: SourceVideo): { width: number; height: number } {
  const { width, height } = seenSize(video);
  const shrink = Math.min(1, 1920 / Math.max(width, height), 1080 / Math.min(width, height));
  const even = (length: number): number => Math.max(2, Math.floor((length * shrink) / 2) * 2);
  return { width: even(width), height: even(height) };
}

/**
 * The rate to which a converted picture is brought, or null to keep each
 * picture's own time. Stated rates that no screen shows (a file whose clock
 * ticks 57,600 times a second) would make a decoder's level absurd.
 */
export function webRate(video: SourceVideo): number | null {
  if (video.tickRate !== null && video.tickRate <= 61) return null;
  return (video.framesPerSecond ?? 30) > 31 ? 60 : 30;
}

/** What stands before the input: only this container, only this file. */
export const inputArguments = (container: Container, path: string): string[] => [
  '-protocol_whitelist',
  'file,pipe',
  '-format_whitelist',
  container,
  '-f',
  container,
  '-max_pixels',
  String(MOST_PIXELS),
  '-i',
  `file:${path}`,
];

/** Number of the pipe on which the sound for the waveform leaves. */
export const SOUND_PIPE = 3;

export interface IngestRun {
  readonly container: Container;
  readonly source: Source;
  readonly plan: IngestPlan;
  /** Absolute paths. */
  readonly input: string;
  readonly output: string;
}

/** The arguments of the one run, after the program's own. */
export function ingestArguments({ container, source, plan, input, output }: IngestRun): string[] {
  const { video, audio } = source;
  const filters: string[] = [];
  const outputs: string[] = [];
  if (audio) {
    const parts = plan.audio === 'convert' ? '[sound][forweb]' : '[sound]';
    filters.push(`[0:${audio.index}]asplit=${plan.audio === 'convert' ? 2 : 1}${parts}`);
    // Late, missing or doubled sound is brought to its own time, so that peaks stand where they are heard.
    filters.push(
      `[sound]ebur128=framelog=verbose,aresample=${SUMMARY_SAMPLE_RATE}:async=1:first_pts=0,` +
        'aformat=sample_fmts=s16:channel_layouts=mono[summary]',
    );
    if (plan.audio === 'convert') filters.push(`[forweb]${webSoundFilter(audio)}[web]`);
    outputs.push('-map', '[summary]', '-f', 's16le', `pipe:${SOUND_PIPE}`);
  }
  if (plan.made !== 'original') {
    if (video) outputs.push('-map', `0:${video.index}`, ...videoArguments(video, plan));
    if (audio && plan.audio === 'keep') outputs.push('-map', `0:${audio.index}`, '-c:a', 'copy');
    if (audio && plan.audio === 'convert') outputs.push('-map', '[web]', '-c:a', 'aac', '-b:a', '160k');
    // What tells where and when it was recorded stays with the original.
    outputs.push(
      '-map_metadata',
      '-1',
      '-map_chapters',
      '-1',
      '-movflags',
      '+faststart',
      '-f',
      'mp4',
      `file:${output}`,
    );
  }
  // A picture that is not converted is still decoded, to see that it can be.
  if (video && plan.video === 'keep') {
    outputs.push('-map', `0:${video.index}`, '-fps_mode', 'passthrough', '-f', 'null', '-');
  }
  return [
    '-xerror',
    '-err_detect',
    'explode',
    ...inputArguments(container, input),
    ...(filters.length > 0 ? ['-filter_complex', filters.join(';')] : []),
    ...outputs,
  ];
}

function videoArguments(video: SourceVideo, plan: IngestPlan): string[] {
  if (plan.video === 'keep') return ['-c:v', 'copy', '-tag:v', 'avc1'];
  const rate = webRate(video);
  const { width, height } = plan.size ?? webSize(video);
  const filter = [
    ...(rate === null ? [] : [`fps=${rate}`]),
    `scale=${width}:${height}:flags=bicubic`,
    'setsar=1',
    'format=yuv420p',
  ];
  return [
    ...['-vf', filter.join(','), '-fps_mode', 'vfr'],
    // Each picture keeps its own time where the rate is kept; the file's clock counts them.
    ...(rate === null ? ['-enc_time_base', '-1'] : []),
    ...['-c:v', 'libx264', '-preset', 'veryfast', '-crf', '21', '-profile:v', 'high'],
    // Seeking to a step must not decode half a minute.
    ...['-force_key_frames', 'expr:gte(t,n_forced*2)'],
  ];
}

function webSoundFilter(audio: SourceAudio): string {
  const rate = Math.min(48_000, Math.max(audio.sampleRate, 16_000));
  const layout = audio.channels === 1 ? 'mono' : 'stereo';
  return `aresample=${[44_100, 48_000].includes(rate) ? rate : 48_000}:async=1000,aformat=channel_layouts=${layout}`;
}

/** Integrated loudness in LUFS (ITU-R BS.1770) from the report of the run; null without sound or in silence. */
export function readLoudness(report: string): number | null {
  const match = [...report.matchAll(/^\s+I:\s+(-?[\d.]+) LUFS/gm)].at(-1);
  const lufs = Number(match?.[1] ?? Number.NaN);
  // -70 is the gate of the standard: nothing was loud enough to be measured.
  return Number.isFinite(lufs) && lufs > -70 ? lufs : null;
}
