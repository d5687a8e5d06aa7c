/** A recording's sound as a file of plain samples, read piece by piece: two hours of it are 115 MB. */
import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import { join } from 'node:path';
import { RATE, type SampleSource } from '#lib/retiming/samples.ts';
import type { Ffmpeg } from './find-ffmpeg.ts';
import { runFfmpeg } from './run-ffmpeg.ts';

/** Decoding is far faster than playing; this is for disks and machines that are not. */
const LONGEST_MS = 30 * 60_000;
/** Samples that are read from the file at once: 8 s. */
const PIECE = 65_536;

/**
 * Writes a recording's sound into `folder`: mono, 16 bits.
 * @returns its path, or null where it has none that can be decoded.
 */
export async function extractSound(
  ffmpeg: Ffmpeg,
  { path, folder, name, signal }: { path: string; folder: string; name: string; signal: AbortSignal },
): Promise<string | null> {
  const output = join(folder, `${name}.raw`);
  const sound = ['-map', '0:a:0', '-ac', '1', '-ar', String(RATE), '-f', 's16le'];
  const { end } = await runFfmpeg(ffmpeg, {
    args: ['-i', path, '-vn', '-sn', '-dn', ...sound, output],
    folder,
    signal,
    limitMs: LONGEST_MS,
  });
  return end === 'done' ? output : null;
}

export interface SoundFile extends SampleSource {
  close(): void;
}

/** Opens such a file. Two pieces of it are held: what reads forward and what looks back a little both find theirs. */
export function openSoundFile(path: string): SoundFile {
  const file = openSync(path, 'r');
  const length = Math.floor(fstatSync(file).size / 2);
  const held = [0, 1].map(() => ({ piece: -1, samples: new Int16Array(PIECE) }));
  let latest = 0;
  const pieceAt = (piece: number): Int16Array => {
    const known = held.findIndex((one) => one.piece === piece);
    if (known >= 0) {
      latest = known;
      return held[known]?.samples ?? new Int16Array(PIECE);
    }
    latest = 1 - latest;
    const one = held[latest] ?? { piece: -1, samples: new Int16Array(PIECE) };
    one.samples.fill(0);
    readSync(file, new Uint8Array(one.samples.buffer), 0, PIECE * 2, piece * PIECE * 2);
    one.piece = piece;
    return one.samples;
  };
  return {
    length,
    read(from, into) {
      let done = 0;
      while (done < into.length) {
        const at = from + done;
        if (at < 0 || at >= length) {
          into[done] = 0;
          done += 1;
          continue;
        }
        const piece = Math.floor(at / PIECE);
        const samples = pieceAt(piece);
        const start = at - piece * PIECE;
        const count = Math.min(into.length - done, PIECE - start, length - at);
        for (let k = 0; k < count; k++) into[done + k] = (samples[start + k] as number) / 32_768;
        done += count;
      }
    },
    close: () => closeSync(file),
  };
}
