/**
 * How a file is laid out, as far as it matters before decoding: whether it
 * says itself that more should follow, and whether a player can begin before
 * it has all of it. Reads headers only; the bytes come through a function, so
 * that nothing here knows a file.
 */
import type { Container } from './sniff.ts';

/** Reads `length` bytes from `at`; fewer where the file ends. */
export type ReadAt = (at: number, length: number) => Promise<Uint8Array>;

export interface Layout {
  /**
   * Whether all bytes that the file announces are there; null where it
   * announces nothing (then only the decoded length tells).
   */
  readonly whole: boolean | null;
  /** Whether an MP4 has its index; true for the others, which need none. */
  readonly hasIndex: boolean;
  /** An MP4 whose index stands before its sound and picture, in one piece. */
  readonly fastStart: boolean;
  /** An MP4's main brand (`isom`, `qt  `), else empty. */
  readonly brand: string;
}

const NOTHING_KNOWN: Layout = { whole: null, hasIndex: true, fastStart: false, brand: '' };
/** Boxes at the top of a file: a handful, or two a fragment. */
const MOST_BOXES = 200_000;

export async function readLayout(container: Container, readAt: ReadAt, size: number): Promise<Layout> {
  switch (container) {
    case 'mov':
      return movLayout(readAt, size);
    case 'matroska':
      return { ...NOTHING_KNOWN, whole: await isMatroskaWhole(readAt, size) };
    case 'wav':
      return { ...NOTHING_KNOWN, whole: await isWavWhole(readAt, size) };
    case 'mp3':
    case 'ogg':
    case 'flac':
    case 'aac':
      return NOTHING_KNOWN;
  }
}

/** Walks the boxes at the top of the file (ISO/IEC 14496-12, 4.2). */
async function movLayout(readAt: ReadAt, size: number): Promise<Layout> {
  const order: string[] = [];
  let brand = '';
  let at = 0;
  while (at + 8 <= size && order.length < MOST_BOXES) {
    const head = await readAt(at, 16);
    const view = new DataView(head.buffer, head.byteOffset, head.byteLength);
    const type = String.fromCharCode(...head.subarray(4, 8));
    if (type === 'ftyp') brand = String.fromCharCode(...head.subarray(8, 12));
    let length = view.getUint32(0);
    if (length === 1 && head.length === 16) length = Number(view.getBigUint64(8));
    // A size of 0 means: up to the end of the file.
    if (length === 0) length = size - at;
    // Bytes after the last box that are no box harm nobody.
    if (length < 8 || !/^[ -~\xa9]{4}$/.test(type)) break;
    order.push(type);
    at += length;
  }
  const moov = order.indexOf('moov');
  const mdat = order.indexOf('mdat');
  return {
    whole: at <= size && moov >= 0,
    hasIndex: moov >= 0,
    fastStart: moov >= 0 && mdat > moov && !order.includes('moof'),
    brand,
  };
}

/** Compares the segment's announced size with the file's (RFC 9559; sizes as in RFC 8794, 4). */
async function isMatroskaWhole(readAt: ReadAt, size: number): Promise<boolean | null> {
  const head = await readAt(0, 4096);
  const header = readVint(head, 4);
  if (!header || header.value === null) return null;
  const segment = header.end + header.value;
  const id = [0x18, 0x53, 0x80, 0x67];
  if (!id.every((byte, index) => head[segment + index] === byte)) return null;
  const length = readVint(head, segment + 4);
  if (!length || length.value === null) return null;
  return length.end + length.value <= size;
}

/** A variable-length number; value null where all its bits are set, which means unknown. */
function readVint(bytes: Uint8Array, at: number): { value: number | null; end: number } | null {
  const first = bytes[at];
  if (first === undefined || first === 0) return null;
  const width = Math.clz32(first) - 23;
  if (at + width > bytes.length) return null;
  let value = first & (0xff >> width);
  let allOnes = value === 0xff >> width;
  for (let index = 1; index < width; index++) {
    const byte = bytes[at + index] ?? 0;
    value = value * 256 + byte;
    allOnes &&= byte === 0xff;
  }
  return { value: allOnes ? null : value, end: at + width };
}

/** The size in the RIFF header; recorders that could not go back leave 0 or all ones. */
async function isWavWhole(readAt: ReadAt, size: number): Promise<boolean | null> {
  const head = await readAt(0, 8);
  if (head.length < 8 || head[3] === 0x34) return null; // RF64 keeps its sizes elsewhere
  const length = new DataView(head.buffer, head.byteOffset).getUint32(4, true);
  return length === 0 || length === 0xffff_ffff ? null : length + 8 <= size;
}
