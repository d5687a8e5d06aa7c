/**
 * The demo's teacher: a synthetic voice, each piece of the narration spoken by
 * itself, so that where each begins and ends is known and not guessed.
 */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { z } from 'zod';

const narrationSchema = z.object({
  about: z.string(),
  voice: z.object({ name: z.string(), wordsPerMinute: z.int(), pitch: z.int() }),
  pieces: z.array(
    z.object({
      id: z.string(),
      scene: z.string(),
      text: z.string(),
      say: z.string().optional(),
      heard: z.string().optional(),
      pauseMs: z.int(),
    }),
  ),
});
export type Narration = z.infer<typeof narrationSchema>;

/** A piece of the narration with the span of the recording in which it is heard. */
export interface Spoken {
  readonly id: string;
  readonly scene: string;
  readonly text: string;
  readonly heard: string;
  readonly startMs: number;
  readonly endMs: number;
}

export const readNarration = (file: URL | string): Narration =>
  narrationSchema.parse(JSON.parse(readFileSync(file, 'utf8')));

const RATE = 22_050;
/** Silence before the first word. */
const LEAD_MS = 900;

/** Speaks the narration: mono 16-bit samples at 22,050 a second, and where each piece lies. */
export function speak({ voice, pieces }: Narration): { samples: Int16Array; spoken: Spoken[] } {
  const parts: Int16Array[] = [silence(LEAD_MS)];
  const spoken: Spoken[] = [];
  let length = parts[0]?.length ?? 0;
  const push = (part: Int16Array) => {
    parts.push(part);
    length += part.length;
  };
  for (const piece of pieces) {
    const sound = trim(synthesise(piece.say ?? piece.text, voice));
    const startMs = Math.round((length / RATE) * 1000);
    push(sound);
    const endMs = Math.round((length / RATE) * 1000);
    push(silence(piece.pauseMs));
    const { id, scene, text, heard = text } = piece;
    spoken.push({ id, scene, text, heard, startMs, endMs });
  }
  const samples = new Int16Array(length);
  let at = 0;
  for (const part of parts) {
    samples.set(part, at);
    at += part.length;
  }
  return { samples, spoken };
}

function synthesise(text: string, voice: Narration['voice']): Int16Array {
  const { name, wordsPerMinute, pitch } = voice;
  const args = ['-v', name, '-s', String(wordsPerMinute), '-p', String(pitch), '-g', '2', '--stdout', text];
  const wave = execFileSync('espeak-ng', args, { maxBuffer: 1 << 26 });
  const data = wave.indexOf('data') + 8;
  if (wave.readUInt32LE(24) !== RATE) throw new Error(`the voice speaks at ${wave.readUInt32LE(24)} samples`);
  const bytes = wave.subarray(data, data + Math.floor((wave.length - data) / 2) * 2);
  return Int16Array.from({ length: bytes.length / 2 }, (_, k) => bytes.readInt16LE(2 * k));
}

/** Without the silence at both ends, so that a cue begins and ends with sound. */
function trim(samples: Int16Array): Int16Array {
  const loud = (value: number) => Math.abs(value) > 250;
  const margin = RATE / 50;
  const first = Math.max(0, samples.findIndex(loud) - margin);
  const last = Math.min(samples.length, samples.findLastIndex(loud) + margin);
  return samples.slice(first, last);
}

const silence = (ms: number): Int16Array => new Int16Array(Math.round((ms * RATE) / 1000));

/** A WAVE file of mono 16-bit samples. */
export function waveFile(samples: Int16Array): Buffer {
  const head = Buffer.alloc(44);
  head.write('RIFF', 0);
  head.writeUInt32LE(36 + samples.byteLength, 4);
  head.write('WAVEfmt ', 8);
  head.writeUInt32LE(16, 16);
  head.writeUInt16LE(1, 20);
  head.writeUInt16LE(1, 22);
  head.writeUInt32LE(RATE, 24);
  head.writeUInt32LE(RATE * 2, 28);
  head.writeUInt16LE(2, 32);
  head.writeUInt16LE(16, 34);
  head.write('data', 36);
  head.writeUInt32LE(samples.byteLength, 40);
  return Buffer.concat([head, Buffer.from(samples.buffer, samples.byteOffset, samples.byteLength)]);
}
