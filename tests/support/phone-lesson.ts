/**
 * What a teacher brings along: a recording as a phone makes it (stored
 * sideways, frames at uneven times) and a transcript. Short by itself; with
 * LONG_LESSON set, ten minutes and 5,000 cues. Words invented.
 */
import { rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { makeWithFfmpeg } from './clips.ts';

export const isLong = (process.env['LONG_LESSON'] ?? '') !== '';

export interface PhoneLesson {
  readonly recording: string;
  readonly transcript: string;
  readonly seconds: number;
  readonly cues: number;
  /** How many cues it has, as the screens write it. */
  readonly count: string;
}

/** Words of the cue with this number, counted from 1. */
export const cueWords = (number: number): string => `Part ${number} of the books chain.`;

export async function phoneLesson(folder: string): Promise<PhoneLesson> {
  const { seconds, cues } = isLong ? { seconds: 600, cues: 5_000 } : { seconds: 40, cues: 60 };
  const recording = join(folder, 'my phone.mp4');
  const transcript = join(folder, 'my phone.vtt');
  const flat = join(folder, 'flat.mp4');
  await makeWithFfmpeg(
    ...['-f', 'lavfi', '-i', `testsrc2=size=640x360:rate=30:duration=${seconds}`],
    ...['-f', 'lavfi', '-i', `sine=duration=${seconds}`],
    ...['-vf', "select='not(mod(n,3))+lt(mod(n,300),90)'", '-fps_mode', 'vfr'],
    ...['-c:v', 'libx264', '-preset', 'ultrafast', '-crf', '34', '-pix_fmt', 'yuv420p'],
    ...['-c:a', 'aac', '-b:a', '48k', flat],
  );
  await makeWithFfmpeg('-i', flat, '-c', 'copy', '-metadata:s:v', 'rotate=90', recording);
  await rm(flat);
  const time = (ms: number) => new Date(ms).toISOString().slice(11, 23);
  const stepMs = Math.floor((seconds * 1000) / cues);
  const lines = Array.from(
    { length: cues },
    (_, k) => `${time(k * stepMs)} --> ${time(k * stepMs + stepMs - 20)}\n${cueWords(k + 1)}\n`,
  );
  await writeFile(transcript, `WEBVTT\n\n${lines.join('\n')}`);
  return { recording, transcript, seconds, cues, count: cues.toLocaleString('en') };
}
