/** Recordings to edit, and what is measured on them: made in code, the demo's own, and spoken by a program where there is one. */

import { execFileSync, spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { compareSound } from '#lib/retiming/compare-sound.ts';
import { type EditList, editListOf } from '#lib/retiming/edit-list.ts';
import { samplesInMemory } from '#lib/retiming/samples.ts';
import { editSound, ffmpeg, judge, silenceIn, type Treatment, treat, type Verdict } from './edited-sound.ts';
import { MADE_RATE, mix, music, speak, VOICES, workshop } from './made-sound.ts';

export interface MadeRecording {
  readonly name: string;
  readonly sound: Float32Array;
}

const [LOW, HIGH, MIDDLE] = VOICES as readonly [(typeof VOICES)[0], (typeof VOICES)[0], (typeof VOICES)[0]];

/** Three made in code and the demo's: all that every machine has. */
export const ownRecordings = (seconds: number): readonly MadeRecording[] => [
  { name: 'low voice', sound: speak(LOW, seconds, 1) },
  { name: 'high voice in a workshop', sound: mix([speak(HIGH, seconds, 2), 1], [workshop(seconds, 3), 1]) },
  { name: 'middle voice over music', sound: mix([speak(MIDDLE, seconds, 4), 1], [music(seconds, 5), 0.6]) },
  { name: 'the demo', sound: demoSound(seconds) },
];

/** Two more voices, of the speech program, with workshop noise and with music; none where it is missing. */
export function spokenRecordings(seconds: number): readonly MadeRecording[] {
  if (spawnSync('espeak-ng', ['--version']).status !== 0) return [];
  const first = spoken('en-gb', seconds, 11);
  const second = spoken('en-us+f3', seconds, 12);
  return [
    { name: 'spoken, in a workshop', sound: mix([first, 1], [workshop(seconds, 13), 0.7]) },
    { name: 'spoken, over music', sound: mix([second, 1], [music(seconds, 14), 0.4]) },
  ];
}

/** Mono, 16,000 samples a second, -1 to 1. */
function demoSound(seconds: number): Float32Array {
  const path = join(import.meta.dirname, '../../prisma/demo/recording.mp4');
  const bytes = ffmpeg(['-i', path, '-vn', '-ac', '1', '-ar', String(MADE_RATE), '-f', 's16le', 'pipe:1']);
  return asSound(bytes).slice(0, seconds * MADE_RATE);
}

/** Sentences of random words, so that none comes twice. */
function spoken(voice: string, seconds: number, seed: number): Float32Array {
  const words =
    'ring wire jump pliers copper open close weave pass lay turn hold left right through second first mandrel cut file anneal pickle solder bend stretch row column pair eight four under over behind twist gently now then take add leave measure count check again'.split(
      ' ',
    );
  let state = seed;
  const next = (below: number): number => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) >>> 0;
    return (state >>> 8) % below;
  };
  const sentences = Array.from({ length: Math.ceil(seconds / 2) }, () =>
    Array.from({ length: 5 + next(9) }, () => words[next(words.length)]).join(' '),
  );
  const wave = execFileSync('espeak-ng', ['-v', voice, '-s', '150', '--stdout'], {
    input: `${sentences.join('. ')}.`,
    maxBuffer: 1 << 30,
  });
  const pcm = ffmpeg(['-i', 'pipe:0', '-ac', '1', '-ar', String(MADE_RATE), '-f', 's16le', 'pipe:1'], wave);
  return asSound(pcm).slice(0, seconds * MADE_RATE);
}

const asSound = (bytes: Buffer): Float32Array =>
  Float32Array.from({ length: bytes.length >> 1 }, (_, k) => bytes.readInt16LE(2 * k) / 32_768);

/** The list that the program finds for two sounds as it hears them. */
export function compareWhole(old: Int16Array, heard: Int16Array): EditList {
  const steps = compareSound(samplesInMemory(old), samplesInMemory(heard));
  let step = steps.next();
  while (!step.done) step = steps.next();
  return editListOf(step.value);
}

/** Edits a recording, treats it, compares it and holds what was found against the truth. */
export function tryEdit(
  recording: MadeRecording,
  treatment: Treatment,
  seed: number,
  folder: string,
): Verdict {
  const other = speak(VOICES[(seed + 1) % VOICES.length] ?? LOW, 20, seed + 500);
  const made = editSound(recording.sound, other, seed, seed % 2 === 1);
  const old = treat(
    recording.sound,
    { name: '', codec: ['-c:a', 'aac', '-b:a', '128k'], ending: 'mp4' },
    folder,
  );
  return judge(compareWhole(old, treat(made.sound, treatment, folder)), made, {
    delayMs: treatment.isLate ? delayOf(recording.sound, treatment, folder) : 0,
    isSilent: silenceIn(made.sound),
  });
}

/** By how much a treatment shifts sound, ms: by trying every shift on some seconds that were not edited. */
function delayOf(sound: Float32Array, treatment: Treatment, folder: string): number {
  const piece = sound.slice(0, 12 * MADE_RATE);
  const plain = decodePlain(piece, folder);
  const treated = treat(piece, treatment, folder);
  const from = 3 * 8_000;
  let best = { sum: Number.NEGATIVE_INFINITY, shift: 0 };
  for (let shift = -800; shift <= 800; shift++) {
    let sum = 0;
    for (let k = from; k < from + 24_000; k++) sum += (plain[k] ?? 0) * (treated[k + shift] ?? 0);
    if (sum > best.sum) best = { sum, shift };
  }
  return best.shift / 8;
}

function decodePlain(sound: Float32Array, folder: string): Int16Array {
  return treat(sound, { name: 'plain', codec: ['-c:a', 'flac'], ending: 'mkv' }, folder);
}
