/** A recording that was taken in, without walking through an upload: a small made-up clip in its place. */
import { randomUUID } from 'node:crypto';
import { copyFile, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inject } from 'vitest';
import type { Database } from '#lib/data/database.ts';
import type { RecordingFacts } from '#lib/recording/facts.ts';
import { openLocalDisk } from '#lib/storage/local-disk.ts';
import { recordingKey } from '#lib/storage/storage-key.ts';
import { makeWithFfmpeg } from './clips.ts';

/**
 * Gives the lesson a ready recording of this length.
 * @param files the program's folder of files
 * @param sound a file with its sound; none: a tone
 */
export async function aReadyRecording(
  db: Database,
  files: string,
  lessonId: string,
  durationMs: number,
  sound: string | null = null,
): Promise<string> {
  const id = randomUUID();
  const made = await clipOf(durationMs, sound);
  const folder = await mkdtemp(join(tmpdir(), 'benchleaf-clip-'));
  const clip = join(folder, 'clip.mp4');
  const poster = join(folder, 'poster.jpg');
  const peaks = join(folder, 'peaks.bin');
  await copyFile(made.clip, clip);
  await copyFile(made.poster, poster);
  await writeFile(
    peaks,
    new Uint8Array(Math.ceil(durationMs / 50)).map((_, at) => (at * 37) % 200),
  );
  const disk = openLocalDisk(files);
  const keys = {
    playableKey: recordingKey(id, 'playable.mp4'),
    posterKey: recordingKey(id, 'poster.jpg'),
    peaksKey: recordingKey(id, 'peaks.bin'),
  };
  await disk.adopt(keys.playableKey, clip);
  await disk.adopt(keys.posterKey, poster);
  await disk.adopt(keys.peaksKey, peaks);
  await rm(folder, { recursive: true });
  const facts: RecordingFacts = {
    container: 'mov',
    durationMs,
    video: { codec: 'avc', width: 160, height: 90, rotation: 0, framesPerSecond: 2 },
    audio: { codec: 'aac', channels: 1, sampleRate: 44_100 },
    playable: { type: 'video/mp4', made: 'original', width: 160, height: 90, sizeBytes: 1 },
  };
  await db.recording.create({
    data: {
      id,
      lessonId,
      state: 'ready',
      originalName: 'clip.mp4',
      sizeBytes: 1n,
      pauses: [],
      facts,
      ...keys,
    },
  });
  await db.lesson.update({ where: { id: lessonId }, data: { recordingId: id } });
  return id;
}

interface Clip {
  readonly clip: string;
  readonly poster: string;
}

/** Clips with a tone, by their length, ms: made once in a process. */
const clips = new Map<number, Promise<Clip>>();

function clipOf(durationMs: number, sound: string | null): Promise<Clip> {
  // Another file may come to stand under the same path.
  if (sound !== null) return makeClip(durationMs, sound);
  const clip = clips.get(durationMs) ?? makeClip(durationMs, null);
  clips.set(durationMs, clip);
  return clip;
}

async function makeClip(durationMs: number, sound: string | null): Promise<Clip> {
  const folder = await mkdtemp(join(inject('testFolder'), 'clip-'));
  const clip = join(folder, 'clip.mp4');
  const poster = join(folder, 'poster.jpg');
  const seconds = String(durationMs / 1000);
  await makeWithFfmpeg(
    ...['-f', 'lavfi', '-i', `color=c=tan:s=160x90:r=2:d=${seconds}`],
    ...(sound === null ? ['-f', 'lavfi', '-i', `sine=f=220:d=${seconds}`] : ['-i', sound]),
    ...['-c:v', 'libx264', '-preset', 'ultrafast', '-pix_fmt', 'yuv420p'],
    ...['-c:a', 'aac', '-b:a', sound === null ? '16k' : '64k', '-movflags', '+faststart', clip],
  );
  await makeWithFfmpeg('-i', clip, '-frames:v', '1', poster);
  return { clip, poster };
}
