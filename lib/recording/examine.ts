/**
 * Takes a file in: tells what it is, decodes it whole and strictly, and makes
 * what a lesson needs from it, in one run of ffmpeg. Knows files, no database.
 */
import { open, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { failed, ok, type Result } from '#lib/result.ts';
import type { RecordingFacts } from './facts.ts';
import type { RecordingFault } from './fault.ts';
import type { Ffmpeg } from './find-ffmpeg.ts';
import { type Layout, readLayout } from './layout.ts';
import {
  type IngestPlan,
  ingestArguments,
  inputArguments,
  planIngest,
  readLoudness,
  seenSize,
} from './plan-ingest.ts';
import { type FfmpegEnd, runFfmpeg } from './run-ffmpeg.ts';
import { type Container, SNIFF_BYTES, sniff } from './sniff.ts';
import { listenToSound, type SoundSummary } from './sound-summary.ts';
import { readSource, type Source } from './source.ts';

/** What is going on, in the order in which it happens. */
export type ExamineStep = 'identify' | 'look-through' | 'convert';

export interface Examination {
  /** Absolute path, in `folder`, which holds nothing else of anybody's. */
  readonly path: string;
  readonly folder: string;
  readonly signal: AbortSignal;
  readonly onStep: (step: ExamineStep, percent: number) => void;
}

/** What was made; `playablePath` is the file itself where it can be played as it is. */
export interface Examined {
  readonly facts: RecordingFacts;
  readonly playablePath: string;
  readonly ending: IngestPlan['ending'];
  readonly sound: SoundSummary | null;
  readonly loudnessLufs: number | null;
}

/** A probe reads headers only, ms. */
const PROBE_MS = 60_000;
/** Patience with a run: slow machines convert slower than a recording plays. */
const patienceMs = (announcedMs: number | null, sizeBytes: number): number =>
  15 * 60_000 + 12 * (announcedMs ?? (sizeBytes / 20_000) * 1000);
/** How far the decoded end may lie before the announced one: padding, rounding, a last picture's own length. */
const TOLERANCE_MS = 1_000;

export async function examine(ffmpeg: Ffmpeg, at: Examination): Promise<Result<Examined, RecordingFault>> {
  at.onStep('identify', 0);
  const identified = await identify(ffmpeg, at);
  if (!identified.ok) return identified;
  const { container, layout, source, sizeBytes } = identified.value;
  const planned = planIngest(container, layout, source);
  if (!planned.ok) return planned;
  const plan = planned.value;

  const step = plan.video === 'convert' || plan.audio === 'convert' ? 'convert' : 'look-through';
  at.onStep(step, 0);
  const output = join(at.folder, `playable.${plan.ending}`);
  const listener = source.audio ? listenToSound() : null;
  const run = await runFfmpeg(ffmpeg, {
    args: ingestArguments({ container, source, plan, input: at.path, output }),
    folder: at.folder,
    signal: at.signal,
    limitMs: patienceMs(source.announcedMs, sizeBytes),
    onProgress: (doneMs) => at.onStep(step, percentOf(doneMs, source.announcedMs)),
    onSound: (bytes) => listener?.take(bytes),
  });
  const sound = listener?.finish() ?? null;
  const decodedMs = Math.max(run.doneMs, sound?.durationMs ?? 0);
  const fault = await faultOf(ffmpeg, at, { container, layout, source }, run, decodedMs);
  if (fault) return failed(fault);

  const playablePath = plan.made === 'original' ? at.path : output;
  const durationMs = await durationOf(ffmpeg, at, plan, layout, source, playablePath, decodedMs);
  return ok({
    facts: factsOf(container, source, plan, durationMs, (await stat(playablePath)).size),
    playablePath,
    ending: plan.ending,
    sound: sound && sound.peaks.length > 0 ? sound : null,
    loudnessLufs: readLoudness(run.report),
  });
}

interface Identified {
  readonly container: Container;
  readonly layout: Layout;
  readonly source: Source;
}

async function identify(
  ffmpeg: Ffmpeg,
  at: Examination,
): Promise<Result<Identified & { sizeBytes: number }, RecordingFault>> {
  const file = await open(at.path, 'r');
  try {
    const readAt = async (position: number, length: number): Promise<Uint8Array> => {
      const { bytesRead, buffer } = await file.read(Buffer.alloc(length), 0, length, position);
      return buffer.subarray(0, bytesRead);
    };
    const sizeBytes = (await file.stat()).size;
    const sniffed = sniff(await readAt(0, SNIFF_BYTES));
    if (!sniffed.ok) return sniffed;
    const container = sniffed.value;
    const layout = await readLayout(container, readAt, sizeBytes);
    const source = await probe(ffmpeg, at, container, at.path);
    if (!source) {
      return failed({ code: container === 'mov' && !layout.hasIndex ? 'index-missing' : 'unreadable' });
    }
    return ok({ container, layout, source, sizeBytes });
  } finally {
    await file.close();
  }
}

async function probe(
  ffmpeg: Ffmpeg,
  { folder, signal }: Examination,
  container: Container,
  path: string,
): Promise<Source | null> {
  const args = inputArguments(container, path);
  return readSource((await runFfmpeg(ffmpeg, { args, folder, signal, limitMs: PROBE_MS })).report);
}

/** Why the run says that the file cannot be taken; null where it can. */
async function faultOf(
  ffmpeg: Ffmpeg,
  at: Examination,
  { container, layout, source }: Identified,
  run: FfmpegEnd,
  decodedMs: number,
): Promise<RecordingFault | null> {
  const { announcedMs } = source;
  if (run.end === 'too-long') return { code: 'took-too-long', longestMs: Math.round(run.doneMs) };
  if (/No space left on device/.test(run.report)) return { code: 'disk-full' };
  if (/Cannot allocate memory/.test(run.report)) return { code: 'too-much-memory' };
  const endsEarly = (endMs: number): boolean =>
    layout.whole === false || (announcedMs !== null && endMs < announcedMs - TOLERANCE_MS);
  if (run.end === 'failed') {
    // The strict run stopped at the first fault; how far can one see at all?
    const endsAtMs = Math.max(decodedMs, await lenientEnd(ffmpeg, at, container, source));
    if (endsAtMs === 0) return { code: 'unreadable' };
    return endsEarly(endsAtMs)
      ? { code: 'breaks-off', endsAtMs, announcedMs }
      : { code: 'damaged', atMs: decodedMs };
  }
  // A container that counts its bytes and has them all needs no second proof.
  if (layout.whole !== true && endsEarly(decodedMs)) {
    return { code: 'breaks-off', endsAtMs: decodedMs, announcedMs };
  }
  return decodedMs === 0 ? { code: 'too-short' } : null;
}

async function lenientEnd(
  ffmpeg: Ffmpeg,
  { path, folder, signal }: Examination,
  container: Container,
  source: Source,
): Promise<number> {
  const streams = [source.video?.index, source.audio?.index].filter((index) => index !== undefined);
  const run = await runFfmpeg(ffmpeg, {
    args: [
      ...inputArguments(container, path),
      ...streams.flatMap((index) => ['-map', `0:${index}`]),
      ...['-fps_mode', 'passthrough', '-f', 'null', '-'],
    ],
    folder,
    signal,
    limitMs: patienceMs(source.announcedMs, 0),
  });
  return run.doneMs;
}

/** How long the file for pupils plays: as it announces, where that was found to be true. */
async function durationOf(
  ffmpeg: Ffmpeg,
  at: Examination,
  plan: IngestPlan,
  layout: Layout,
  source: Source,
  playablePath: string,
  decodedMs: number,
): Promise<number> {
  if (plan.made !== 'original') {
    return (await probe(ffmpeg, at, 'mov', playablePath))?.announcedMs ?? decodedMs;
  }
  const { announcedMs } = source;
  const isTrue =
    announcedMs !== null && (layout.whole === true || Math.abs(announcedMs - decodedMs) <= TOLERANCE_MS);
  return isTrue ? announcedMs : decodedMs;
}

function factsOf(
  container: Container,
  { video, audio }: Source,
  plan: IngestPlan,
  durationMs: number,
  sizeBytes: number,
): RecordingFacts {
  return {
    container,
    durationMs,
    video: video && {
      codec: video.codec,
      ...seenSize(video),
      rotation: video.rotation,
      framesPerSecond: video.framesPerSecond,
    },
    audio: audio && { codec: audio.codec, channels: audio.channels, sampleRate: audio.sampleRate },
    playable: {
      type: plan.type,
      made: plan.made,
      width: plan.size?.width ?? null,
      height: plan.size?.height ?? null,
      sizeBytes,
    },
  };
}

const percentOf = (doneMs: number, announcedMs: number | null): number =>
  announcedMs ? Math.min(99, Math.floor((doneMs * 100) / announcedMs)) : 0;
