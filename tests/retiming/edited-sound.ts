/**
 * Edits made on purpose, so that the truth about them is known: cuts, inserts,
 * a trimmed start, a moved part, then what an editor's program does to the
 * sound. And the judge that holds a comparison against that truth.
 */
import { execFileSync } from 'node:child_process';
import type { EditList } from '#lib/retiming/edit-list.ts';
import { randomFrom } from '#tests/faults/random.ts';
import { MADE_RATE } from './made-sound.ts';

/** A piece of the new recording: of the old one from there on, or new (null). Seconds. */
export interface TruePiece {
  readonly newStart: number;
  readonly newEnd: number;
  readonly oldStart: number | null;
}

export interface MadeEdit {
  readonly sound: Float32Array;
  readonly pieces: readonly TruePiece[];
  readonly oldSeconds: number;
}

/** Three cuts (short, middle, long), an insert, a trimmed start, and with `move` a part put elsewhere. */
export function editSound(old: Float32Array, insert: Float32Array, seed: number, move: boolean): MadeEdit {
  const random = randomFrom(seed);
  const oldSeconds = old.length / MADE_RATE;
  const trim = random() < 0.5 ? 0.7 + random() * 7 : 0;
  const kinds = shuffled(['short', 'middle', 'long', 'insert', ...(move ? ['move'] : [])], random);
  // Points at which something happens, well apart.
  const room = (oldSeconds - trim) / (kinds.length + 1);
  const lengths: Readonly<Record<string, () => number>> = {
    short: () => 1 + random(),
    middle: () => 2 + random() * 6,
    long: () => Math.min(room * 0.3, 5 + random() * 15),
    insert: () => Math.min(insert.length / MADE_RATE, 2 + random() * 15),
    move: () => Math.min(room * 0.3, 6 + random() * 10),
  };
  const spans: Taken[] = [];
  let at = trim;
  let moved: Taken | null = null;
  for (const [k, kind] of kinds.entries()) {
    const point = trim + room * (k + 0.65 + random() * 0.7);
    const length = lengths[kind]?.() ?? 0;
    spans.push({ of: old, from: at, to: point });
    at = kind === 'insert' ? point : point + length;
    if (kind === 'insert') spans.push({ of: insert, from: 0, to: length });
    if (kind === 'move') moved = { of: old, from: point, to: at };
  }
  spans.push({ of: old, from: at, to: oldSeconds });
  if (moved) spans.splice(spans.length - 1 - Math.floor(random() * 2), 0, moved);
  return { ...splice(spans, old), oldSeconds };
}

/** A part of a sound, s. */
interface Taken {
  readonly of: Float32Array;
  readonly from: number;
  readonly to: number;
}

function shuffled(list: readonly string[], random: () => number): readonly string[] {
  return list
    .map((item) => ({ item, by: random() }))
    .toSorted((one, other) => one.by - other.by)
    .map(({ item }) => item);
}

function splice(spans: readonly Taken[], old: Float32Array): Pick<MadeEdit, 'sound' | 'pieces'> {
  const pieces: TruePiece[] = [];
  const parts = spans.map(({ of, from, to }) =>
    of.slice(Math.round(from * MADE_RATE), Math.round(to * MADE_RATE)),
  );
  const sound = new Float32Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const [k, part] of parts.entries()) {
    sound.set(part, at);
    const newStart = at / MADE_RATE;
    at += part.length;
    const newEnd = at / MADE_RATE;
    const span = spans[k];
    const oldStart = span?.of === old ? Math.round(span.from * MADE_RATE) / MADE_RATE : null;
    const last = pieces.at(-1);
    // What was moved to where it came from was not moved.
    if (last && follows(last, newStart, oldStart)) pieces[pieces.length - 1] = { ...last, newEnd };
    else pieces.push({ newStart, newEnd, oldStart });
  }
  return { sound, pieces };
}

const follows = (last: TruePiece, newStart: number, oldStart: number | null): boolean =>
  last.oldStart !== null &&
  oldStart !== null &&
  Math.abs(last.oldStart + newStart - last.newStart - oldStart) < 0.001;

/** What is done to the sound of the new recording: filters and a codec, as ffmpeg is told. */
export interface Treatment {
  readonly name: string;
  readonly filters?: string;
  readonly codec: readonly string[];
  /** Ending of a container that holds it. */
  readonly ending: string;
  /** Whether the filters hand sound on later than they get it, so that all of it is shifted. */
  readonly isLate?: true;
}

const AAC = (bits: string) => ({ codec: ['-c:a', 'aac', '-b:a', bits], ending: 'mp4' });
const OPUS = (bits: string) => ({ codec: ['-c:a', 'libopus', '-b:a', bits, '-ar', '48000'], ending: 'webm' });
const MP3 = (bits: string) => ({ codec: ['-c:a', 'libmp3lame', '-b:a', bits], ending: 'mp3' });

export const TREATMENTS: readonly Treatment[] = [
  { name: 'aac 64k', ...AAC('64k') },
  { name: 'opus 24k', ...OPUS('24k') },
  { name: 'mp3 48k, half as loud', filters: 'volume=0.5', ...MP3('48k') },
  {
    name: 'equaliser, compressor, aac 48k',
    filters:
      'equalizer=f=200:t=q:w=1:g=-8,equalizer=f=2500:t=q:w=1:g=7,acompressor=threshold=0.05:ratio=4:attack=10:release=120:makeup=2',
    ...AAC('48k'),
  },
  { name: 'noise reduction, opus 32k', filters: 'afftdn=nr=14:nf=-35', isLate: true, ...OPUS('32k') },
  {
    name: 'high pass, loudness evened, aac 96k',
    filters: 'highpass=f=120,dynaudnorm=f=300:g=11',
    ...AAC('96k'),
  },
  { name: 'hiss added, mp3 64k', filters: 'aeval=val(0)+0.006*(random(0)-0.5)', ...MP3('64k') },
  { name: 'low pass, aac 32k', filters: 'lowpass=f=3000', ...AAC('32k') },
];

/** Sound as the program hears it: through the treatment, then decoded to 8,000 samples a second. */
export function treat(sound: Float32Array, treatment: Treatment, folder: string): Int16Array {
  const path = `${folder}/treated.${treatment.ending}`;
  const bytes = Buffer.from(Int16Array.from(sound, (value) => value * 32_000).buffer);
  ffmpeg(
    [
      ...['-f', 's16le', '-ar', String(MADE_RATE), '-ac', '1', '-i', 'pipe:0'],
      ...(treatment.filters ? ['-af', treatment.filters] : []),
      ...treatment.codec,
      path,
    ],
    bytes,
  );
  return decode(path);
}

/** A file's sound, as the program hears it. */
export function decode(path: string): Int16Array {
  const bytes = ffmpeg(['-i', path, '-vn', '-ac', '1', '-ar', '8000', '-f', 's16le', 'pipe:1']);
  return new Int16Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + (bytes.length & ~1)));
}

export function ffmpeg(args: readonly string[], input?: Buffer): Buffer {
  const program = process.env['FFMPEG_BIN'] ?? 'ffmpeg';
  return execFileSync(program, ['-hide_banner', '-v', 'error', '-y', ...args], {
    input: input ?? '',
    maxBuffer: 1 << 30,
  });
}

export interface Verdict {
  /** Error of where kept sound is said to lie, ms, every 100 ms of it. */
  readonly mapErrors: readonly number[];
  /** Kept sound that is said to be new, or new sound that is said to be old, in hundredths. */
  readonly wrongSide: number;
  /** Error of each true edit point that is not in silence, ms; 1,000 where none was found near. */
  readonly pointErrors: readonly number[];
  readonly cuts: number;
  readonly cutsFound: number;
  /** Edit points where there are none. */
  readonly spurious: number;
  readonly newSeconds: number;
}

/**
 * Holds an edit list against the truth.
 * @param delayMs by how much the treatment shifts all sound; measured apart from the comparison.
 * @param isSilent whether there is silence around a moment of the new recording, s.
 */
export function judge(
  list: EditList,
  { pieces, oldSeconds }: MadeEdit,
  {
    delayMs,
    isSilent,
    speed = 1,
  }: { delayMs: number; isSilent: (newSeconds: number) => boolean; speed?: number },
): Verdict {
  const trueAt = (newMs: number): number | null => {
    const at = ((newMs - delayMs) / 1000) * speed;
    const piece = pieces.find(({ newStart, newEnd }) => at >= newStart && at < newEnd);
    return piece?.oldStart == null ? null : (piece.oldStart + at - piece.newStart) * 1000;
  };
  const saidAt = (newMs: number): number | null => {
    const found = list.edits.find(
      (edit) =>
        (edit.kind === 'kept' || edit.kind === 'moved') &&
        newMs >= edit.new.startMs &&
        newMs < edit.new.endMs,
    );
    if (!found) return null;
    const part = (newMs - found.new.startMs) / (found.new.endMs - found.new.startMs);
    return found.old.startMs + part * (found.old.endMs - found.old.startMs);
  };
  const mapErrors: number[] = [];
  let wrong = 0;
  let all = 0;
  for (let newMs = 50; newMs < list.newMs; newMs += 100) {
    const truth = trueAt(newMs);
    const said = saidAt(newMs);
    all += 1;
    if (truth !== null && said !== null) mapErrors.push(Math.abs(truth - said));
    else if (truth !== said) wrong += 1;
  }

  const ends = pieces.flatMap(({ newStart }, k) => (k === 0 ? [] : [(newStart / speed) * 1000 + delayMs]));
  const joins = list.edits
    .filter((edit) => edit.kind !== 'cut')
    .map((edit) => edit.new.startMs)
    .filter((at) => at > 100);
  const pointErrors = ends
    .filter((at) => !isSilent(at / 1000))
    .map((at) => Math.min(1_000, ...joins.map((join) => Math.abs(join - at))));
  const spurious = joins.filter((join) => ends.every((at) => Math.abs(join - at) > 1_000)).length;

  const gaps = trueCuts(pieces, oldSeconds).filter((cut) => cut.to - cut.from >= 1);
  const said = list.edits.filter((edit) => edit.kind === 'cut');
  const found = gaps.filter((gap) =>
    said.some(
      ({ old }) =>
        Math.min(old.endMs / 1000, gap.to) - Math.max(old.startMs / 1000, gap.from) >
        0.5 * (gap.to - gap.from),
    ),
  );
  return {
    mapErrors,
    wrongSide: all === 0 ? 0 : (wrong * 100) / all,
    pointErrors,
    cuts: gaps.length,
    cutsFound: found.length,
    spurious,
    newSeconds: list.newMs / 1000,
  };
}

function trueCuts(pieces: readonly TruePiece[], oldSeconds: number): readonly { from: number; to: number }[] {
  const kept = pieces
    .flatMap(({ oldStart, newStart, newEnd }) =>
      oldStart === null ? [] : [{ from: oldStart, to: oldStart + newEnd - newStart }],
    )
    .toSorted((one, other) => one.from - other.from);
  const cuts: { from: number; to: number }[] = [];
  let reached = 0;
  for (const { from, to } of [...kept, { from: oldSeconds, to: oldSeconds }]) {
    if (from - reached > 0.001) cuts.push({ from: reached, to: from });
    reached = Math.max(reached, to);
  }
  return cuts;
}

/** Whether the sound around a moment is softer than a hundredth of its loud parts, s. */
export function silenceIn(sound: Float32Array): (seconds: number) => boolean {
  const energies: number[] = [];
  const step = MADE_RATE / 50;
  for (let at = 0; at + step <= sound.length; at += step) {
    let energy = 0;
    for (let k = 0; k < step; k++) energy += (sound[at + k] ?? 0) ** 2;
    energies.push(energy);
  }
  const loud = energies.toSorted((one, other) => one - other)[Math.floor(energies.length * 0.9)] ?? 0;
  return (seconds) => {
    const middle = Math.round(seconds * 50);
    // Silence on either side makes every point in it as good as another.
    const soft = (from: number, to: number) =>
      energies.slice(Math.max(0, from), to).every((energy) => energy < loud / 10_000);
    return soft(middle - 5, middle) || soft(middle, middle + 5);
  };
}

/** The value below which so large a share of the values lies. */
export function quantile(values: readonly number[], share: number): number {
  const ordered = values.toSorted((one, other) => one - other);
  return ordered[Math.min(ordered.length - 1, Math.floor(ordered.length * share))] ?? 0;
}
