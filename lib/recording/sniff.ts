/**
 * What a file is, told by its first bytes alone: names and announced types
 * are claims. Only containers of the list below go on to ffmpeg, and ffmpeg is
 * then told which one it is, so that a text that names other files (a
 * playlist) is never read as one. Nothing may stand before the container's
 * own beginning.
 */
import { failed, ok, type Result } from '#lib/result.ts';

/** Containers that are taken, by the name under which ffmpeg reads them. */
export const CONTAINERS = ['mov', 'matroska', 'mp3', 'wav', 'ogg', 'flac', 'aac'] as const;
export type Container = (typeof CONTAINERS)[number];

/** Containers that are recognised and not taken. */
export const OTHER_CONTAINERS = ['avi', 'mpeg-ts', 'mpeg-ps', 'windows-media', 'flash', 'realmedia'] as const;
export type OtherContainer = (typeof OTHER_CONTAINERS)[number];

/** What a file that is no recording looks like. */
export const LOOKS = [
  'empty',
  'playlist',
  'web-page',
  'subtitles',
  'archive',
  'image',
  'document',
  'unknown',
] as const;
export type Look = (typeof LOOKS)[number];

export type SniffFault =
  | { readonly code: 'not-a-recording'; readonly looksLike: Look }
  | { readonly code: 'container-not-taken'; readonly container: OtherContainer };

/** How many first bytes `sniff` wants to see; fewer only where the file ends. */
export const SNIFF_BYTES = 4096;

/** The container of a file, from its first bytes. */
export function sniff(head: Uint8Array): Result<Container, SniffFault> {
  const container = containerOf(head);
  if (container) return ok(container);
  const other = otherContainerOf(head);
  return failed(
    other
      ? { code: 'container-not-taken', container: other }
      : { code: 'not-a-recording', looksLike: lookOf(head) },
  );
}

function containerOf(head: Uint8Array): Container | null {
  if (isMov(head)) return 'mov';
  // EBML header (RFC 8794) whose document type is one of the two.
  if (has(head, 0, [0x1a, 0x45, 0xdf, 0xa3]))
    return /matroska|webm/.test(ascii(head, 0, 64)) ? 'matroska' : null;
  if (hasText(head, 0, 'RIFF') || hasText(head, 0, 'RF64')) return hasText(head, 8, 'WAVE') ? 'wav' : null;
  if (hasText(head, 0, 'OggS')) return 'ogg';
  if (hasText(head, 0, 'fLaC')) return 'flac';
  if (hasText(head, 0, 'ID3') && (head[3] ?? 0xff) < 0xff && (head[4] ?? 0xff) < 0xff) return 'mp3';
  if (isAdts(head)) return 'aac';
  if (isMp3(head)) return 'mp3';
  return null;
}

/** Pictures use the same boxes as recordings (ISO/IEC 14496-12); their brands tell them apart. */
const PICTURE_BRANDS = ['heic', 'heix', 'mif1', 'msf1', 'avif', 'avis', 'jxl '];

function isMov(head: Uint8Array): boolean {
  const size = uint32(head, 0);
  const type = ascii(head, 4, 8);
  if (type === 'ftyp') return size >= 12 && size <= 4096 && !PICTURE_BRANDS.includes(ascii(head, 8, 12));
  // Older QuickTime files have no ftyp. A size of 1 means that a 64-bit one follows.
  if (type === 'wide') return size === 8;
  return (type === 'moov' || type === 'mdat') && (size === 1 || size > 8);
}

/**
 * MPEG audio layer III (ISO/IEC 11172-3): a valid header, and another one
 * where its frame ends, so that a stray 0xFF does not pass.
 */
function isMp3(head: Uint8Array): boolean {
  const length = mp3FrameBytes(head, 0);
  return length !== null && (length + 4 > head.length || mp3FrameBytes(head, length) !== null);
}

const BITRATES_1 = [32, 40, 48, 56, 64, 80, 96, 112, 128, 160, 192, 224, 256, 320];
const BITRATES_2 = [8, 16, 24, 32, 40, 48, 56, 64, 80, 96, 112, 128, 144, 160];
const SAMPLE_RATES = [44_100, 48_000, 32_000];

function mp3FrameBytes(head: Uint8Array, at: number): number | null {
  const [sync = 0, second = 0, third = 0] = head.subarray(at, at + 3);
  if (sync !== 0xff || (second & 0xe0) !== 0xe0) return null;
  const version = (second >> 3) & 3; // 3: MPEG 1, 2: MPEG 2, 0: MPEG 2.5
  const isLayer3 = ((second >> 1) & 3) === 1;
  const bitrate = (version === 3 ? BITRATES_1 : BITRATES_2)[(third >> 4) - 1];
  const rate = SAMPLE_RATES[(third >> 2) & 3];
  if (version === 1 || !isLayer3 || bitrate === undefined || rate === undefined) return null;
  const sampleRate = version === 3 ? rate : version === 2 ? rate / 2 : rate / 4;
  return Math.floor(((version === 3 ? 144 : 72) * bitrate * 1000) / sampleRate) + ((third >> 1) & 1);
}

/** AAC in ADTS frames (ISO/IEC 13818-7): a header, and another one where the frame ends. */
function isAdts(head: Uint8Array): boolean {
  const length = adtsFrameBytes(head, 0);
  return length !== null && (length + 6 > head.length || adtsFrameBytes(head, length) !== null);
}

function adtsFrameBytes(head: Uint8Array, at: number): number | null {
  const [sync = 0, second = 0, third = 0, fourth = 0, fifth = 0, sixth = 0] = head.subarray(at, at + 6);
  if (sync !== 0xff || (second & 0xf6) !== 0xf0 || ((third >> 2) & 15) > 12) return null;
  const length = ((fourth & 3) << 11) | (fifth << 3) | (sixth >> 5);
  return length >= 7 ? length : null;
}

function otherContainerOf(head: Uint8Array): OtherContainer | null {
  if (hasText(head, 0, 'RIFF') && hasText(head, 8, 'AVI ')) return 'avi';
  if (has(head, 0, [0, 0, 1, 0xba])) return 'mpeg-ps';
  if (head[0] === 0x47 && head[188] === 0x47 && head[376] === 0x47) return 'mpeg-ts';
  if (head[4] === 0x47 && head[196] === 0x47 && head[388] === 0x47) return 'mpeg-ts';
  if (has(head, 0, [0x30, 0x26, 0xb2, 0x75, 0x8e, 0x66])) return 'windows-media';
  if (hasText(head, 0, 'FLV')) return 'flash';
  if (hasText(head, 0, '.RMF')) return 'realmedia';
  return null;
}

const PLAYLIST =
  /^\s*(#EXTM3U|#EXTINF|ffconcat|\[playlist\]|\[reference\]|RTSPtext|SMILtext|rtsp:|v=0\s+o=|file\s+['"/.\w])|<(MPD|asx|smil|SmoothStreamingMedia)[\s>]/i;

function lookOf(head: Uint8Array): Look {
  if (head.length === 0) return 'empty';
  if (
    hasText(head, 0, 'PK') ||
    has(head, 0, [0x1f, 0x8b]) ||
    hasText(head, 0, 'Rar!') ||
    hasText(head, 0, '7z')
  ) {
    return 'archive';
  }
  if (isPicture(head)) return 'image';
  if (hasText(head, 0, '%PDF') || has(head, 0, [0xd0, 0xcf, 0x11, 0xe0]) || hasText(head, 0, '{\\rtf'))
    return 'document';
  const text = new TextDecoder().decode(head.subarray(0, 1024));
  if (PLAYLIST.test(text)) return 'playlist';
  if (/^\s*(<!doctype html|<html|<head|<script|<\?php|<body)/i.test(text)) return 'web-page';
  if (/^\uFEFF?WEBVTT|^\uFEFF?\s*\d+\s*\r?\n\d\d:\d\d:\d\d[,.]\d{3} -->/.test(text)) return 'subtitles';
  return 'unknown';
}

const isPicture = (head: Uint8Array): boolean =>
  has(head, 0, [0xff, 0xd8, 0xff]) ||
  has(head, 0, [0x89, 0x50, 0x4e, 0x47]) ||
  hasText(head, 0, 'GIF8') ||
  hasText(head, 0, 'BM') ||
  has(head, 0, [0x49, 0x49, 0x2a, 0]) ||
  has(head, 0, [0x4d, 0x4d, 0, 0x2a]) ||
  (hasText(head, 0, 'RIFF') && hasText(head, 8, 'WEBP')) ||
  (hasText(head, 4, 'ftyp') && PICTURE_BRANDS.includes(ascii(head, 8, 12))) ||
  /^\s*(<\?xml[^>]*>\s*)?<svg/i.test(ascii(head, 0, 300));

const ascii = (bytes: Uint8Array, start: number, end: number): string =>
  String.fromCharCode(...bytes.subarray(start, end));

const has = (bytes: Uint8Array, at: number, wanted: readonly number[]): boolean =>
  wanted.every((byte, index) => bytes[at + index] === byte);

const hasText = (bytes: Uint8Array, at: number, wanted: string): boolean =>
  ascii(bytes, at, at + wanted.length) === wanted;

const uint32 = (bytes: Uint8Array, at: number): number =>
  bytes.length < at + 4 ? 0 : new DataView(bytes.buffer, bytes.byteOffset).getUint32(at);
