/**
 * Captions as an MP4 file with one track of 3GPP timed text (3GPP TS 26.245;
 * boxes as in ISO/IEC 14496-12), from which ffmpeg copies the track beside
 * sound and picture. ffmpeg could make such a track from SRT too, but takes
 * words like `<b>` or `{\an8}` in a caption for marking and drops them.
 */
import type { Span } from '#lib/time/time.ts';
import { type Cue, compareCues } from './cue.ts';
import { tidyCueText } from './tidy-text.ts';

/** A sample states the length of its text in 16 bits. */
const MOST_BYTES = 0xffff;

/** What is shown during a span; empty where nothing is. */
export interface Shown extends Span {
  readonly text: string;
}

/**
 * Cues as spans that neither overlap nor leave gaps, from 0 to the end of the
 * last: timed text shows one sample at a time. Cues that are seen together
 * stand below each other, the earlier one above.
 */
export function shownInTurn(cues: readonly Cue[]): readonly Shown[] {
  const coming = cues
    .toSorted(compareCues)
    .map((cue) => ({ ...cue, text: tidyCueText(cue.text) }))
    .filter((cue) => cue.text !== '' && cue.endMs > cue.startMs);
  const moments = [...new Set([0, ...coming.flatMap(({ startMs, endMs }) => [startMs, endMs])])].sort(
    (one, other) => one - other,
  );
  const shown: Shown[] = [];
  let seen: typeof coming = [];
  let next = 0;
  for (const [index, startMs] of moments.entries()) {
    const endMs = moments[index + 1];
    if (endMs === undefined) break;
    seen = seen.filter((cue) => cue.endMs > startMs);
    for (let cue = coming[next]; cue && cue.startMs <= startMs; cue = coming[next]) {
      seen.push(cue);
      next += 1;
    }
    shown.push({ startMs, endMs, text: seen.map(({ text }) => text).join('\n') });
  }
  return shown;
}

/** The file. Without any caption its one sample shows nothing. */
export function writeTimedTextTrack(cues: readonly Cue[]): Uint8Array {
  const shown = shownInTurn(cues);
  const spans = shown.length > 0 ? shown : [{ startMs: 0, endMs: 1, text: '' }];
  const samples = spans.map(({ text }) => sampleOf(text));
  const fileType = box('ftyp', ascii('isom'), u32(0x200), ascii('isomiso2mp41'));
  const media = box('mdat', ...samples);
  const durationMs = spans.at(-1)?.endMs ?? 1;
  const index = movie(durationMs, {
    durations: spans.map(({ startMs, endMs }) => endMs - startMs),
    sizes: samples.map(({ length }) => length),
    at: fileType.length + 8,
  });
  return joined([fileType, media, index]);
}

/** A text behind its length (TS 26.245, 5.17); whole characters only, where it is longer than a sample can be. */
function sampleOf(text: string): Uint8Array {
  const bytes = new Uint8Array(MOST_BYTES);
  const { written } = new TextEncoder().encodeInto(text, bytes);
  return joined([u16(written), bytes.slice(0, written)]);
}

interface Samples {
  /** Milliseconds. */
  readonly durations: readonly number[];
  readonly sizes: readonly number[];
  /** Where the first one begins in the file. */
  readonly at: number;
}

function movie(durationMs: number, samples: Samples): Uint8Array {
  const matrix = [0x10000, 0, 0, 0, 0x10000, 0, 0, 0, 0x40000000].flatMap((value) => [u32(value)]);
  const ticksPerSecond = u32(1000);
  const movieHeader = fullBox(
    'mvhd',
    0,
    ...[u32(0), u32(0), ticksPerSecond, u32(durationMs), u32(0x10000), u16(0x100), u16(0), u32(0), u32(0)],
    ...[...matrix, ...Array.from({ length: 6 }, () => u32(0)), u32(2)],
  );
  const trackHeader = fullBox(
    'tkhd',
    // Enabled, in the movie.
    3,
    ...[u32(0), u32(0), u32(1), u32(0), u32(durationMs), u32(0), u32(0), u16(0), u16(0), u16(0), u16(0)],
    ...[...matrix, u32(0), u32(0)],
  );
  const undetermined = u16(0x55c4);
  const mediaHeader = fullBox(
    'mdhd',
    0,
    ...[u32(0), u32(0), ticksPerSecond, u32(durationMs), undetermined, u16(0)],
  );
  const handler = fullBox('hdlr', 0, u32(0), ascii('sbtl'), u32(0), u32(0), u32(0), new Uint8Array(1));
  const inThisFile = box('dinf', fullBox('dref', 0, u32(1), fullBox('url ', 1)));
  return box(
    'moov',
    movieHeader,
    box(
      'trak',
      trackHeader,
      box('mdia', mediaHeader, handler, box('minf', fullBox('nmhd', 0), inThisFile, sampleTable(samples))),
    ),
  );
}

const sampleTable = ({ durations, sizes, at }: Samples): Uint8Array =>
  box(
    'stbl',
    fullBox('stsd', 0, u32(1), sampleDescription()),
    fullBox('stts', 0, u32(durations.length), ...durations.flatMap((ms) => [u32(1), u32(ms)])),
    // All samples lie in one chunk.
    fullBox('stsc', 0, u32(1), u32(1), u32(sizes.length), u32(1)),
    fullBox('stsz', 0, u32(0), u32(sizes.length), ...sizes.map(u32)),
    fullBox('stco', 0, u32(1), u32(at)),
  );

/** White letters, centred, at the foot of the picture; how a player sets them is its own affair (TS 26.245, 5.16). */
function sampleDescription(): Uint8Array {
  const reserved = new Uint8Array(6);
  const nothing = u32(0);
  const [centred, atTheFoot] = [1, 0xff];
  const noBox = [nothing, nothing];
  const style = [u16(0), u16(0), u16(1), Uint8Array.of(0, 18), u32(0xffffffff)];
  const face = ascii('Sans-Serif');
  const fonts = box('ftab', u16(1), u16(1), Uint8Array.of(face.length), face);
  return box(
    'tx3g',
    ...[reserved, u16(1), nothing, Uint8Array.of(centred, atTheFoot), nothing, ...noBox, ...style, fonts],
  );
}

function box(type: string, ...parts: readonly Uint8Array[]): Uint8Array {
  const size = parts.reduce((sum, part) => sum + part.length, 8);
  return joined([u32(size), ascii(type), ...parts]);
}

const fullBox = (type: string, flags: number, ...parts: readonly Uint8Array[]): Uint8Array =>
  box(type, u32(flags), ...parts);

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

const ascii = (text: string): Uint8Array => new TextEncoder().encode(text);
const u16 = (value: number): Uint8Array => Uint8Array.of(value >>> 8, value & 0xff);
const u32 = (value: number): Uint8Array =>
  Uint8Array.of(value >>> 24, (value >>> 16) & 0xff, (value >>> 8) & 0xff, value & 0xff);
