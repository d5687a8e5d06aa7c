/** Sound made in code, put together and written as a file that a teacher could bring. */
import { ffmpeg } from '#tests/retiming/edited-sound.ts';
import { MADE_RATE } from '#tests/retiming/made-sound.ts';

/** The parts one behind the other. */
export function spliced(...parts: readonly Float32Array[]): Float32Array {
  const whole = new Float32Array(parts.reduce((sum, part) => sum + part.length, 0));
  let to = 0;
  for (const part of parts) {
    whole.set(part, to);
    to += part.length;
  }
  return whole;
}

/** Samples from one second to another; to the end where no other is named. */
export const fromTo = (sound: Float32Array, from: number, to = sound.length / MADE_RATE): Float32Array =>
  sound.slice(Math.round(from * MADE_RATE), Math.round(to * MADE_RATE));

/** Writes AAC in MP4, whatever the file is called. */
export function writeSoundFile(path: string, sound: Float32Array): void {
  const bytes = Buffer.from(Int16Array.from(sound, (value) => value * 32_000).buffer);
  const input = ['-f', 's16le', '-ar', String(MADE_RATE), '-ac', '1', '-i', 'pipe:0'];
  // The quick way of coding takes a third of the time; how well it sounds is nothing here.
  const coded = ['-c:a', 'aac', '-aac_coder', 'fast', '-b:a', '64k', '-movflags', '+faststart'];
  ffmpeg([...input, ...coded, '-f', 'mp4', path], bytes);
}
