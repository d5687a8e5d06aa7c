/** Which kind of transcript a text is, told by what stands in it and never by its name. */
import { readStampedLine } from './cues-of-stamped-text.ts';
import { isSrtTimes } from './srt-read.ts';
import { isTtml } from './ttml-read.ts';
import { isWebVtt } from './webvtt-read.ts';

export const TRANSCRIPT_FORMATS = ['webvtt', 'srt', 'ttml', 'stamped text', 'script'] as const;
export type TranscriptFormat = (typeof TRANSCRIPT_FORMATS)[number];

/** The format; a script where no time is found in it at all, null where there are no words either. */
export function detectFormat(text: string): TranscriptFormat | null {
  if (isWebVtt(text)) return 'webvtt';
  if (isTtml(text)) return 'ttml';
  const lines = text.split(/\r\n?|\n/);
  // Also WebVTT that has lost its first line: its times are SRT's with a point.
  if (lines.some((line) => isSrtTimes(line))) return 'srt';
  if (lines.some((line) => readStampedLine(line) !== null)) return 'stamped text';
  const isOther = /^\uFEFF?\s*(?:[{<]|\[\s*[{["])/.test(text);
  return !isOther && /\p{L}/u.test(text) ? 'script' : null;
}

/** Files that people take for transcripts, by their first bytes. */
export const OTHER_FILES = ['pdf', 'word-processor', 'picture-or-recording', 'markup'] as const;
export type OtherFile = (typeof OTHER_FILES)[number];

const ascii = (text: string): readonly number[] => Array.from(text, (character) => character.charCodeAt(0));

/** First bytes of kinds of file, with where they stand. Sources: the formats' own documents, from memory. */
const SIGNATURES: readonly (readonly [OtherFile, readonly number[], number])[] = [
  ['pdf', ascii('%PDF-'), 0],
  ['word-processor', [...ascii('PK'), 3, 4], 0],
  ['word-processor', ascii('{\\rtf'), 0],
  ['word-processor', [0xd0, 0xcf, 0x11, 0xe0], 0],
  ['picture-or-recording', [0x89, ...ascii('PNG')], 0],
  ['picture-or-recording', [0xff, 0xd8, 0xff], 0],
  ['picture-or-recording', ascii('GIF8'), 0],
  ['picture-or-recording', ascii('RIFF'), 0],
  ['picture-or-recording', ascii('OggS'), 0],
  ['picture-or-recording', ascii('ID3'), 0],
  ['picture-or-recording', ascii('fLaC'), 0],
  ['picture-or-recording', [0x1a, 0x45, 0xdf, 0xa3], 0],
  ['picture-or-recording', ascii('ftyp'), 4],
];

/** What a file is that cannot be a transcript of ours; null where its bytes do not tell. */
export function otherFileOf(bytes: Uint8Array): OtherFile | null {
  const known = SIGNATURES.find(([, mark, at]) => mark.every((byte, index) => bytes[at + index] === byte));
  if (known) return known[0];
  const head = new TextDecoder().decode(bytes.subarray(0, 20_000)).trimStart();
  return /^<(?:\?xml|!doctype|html|transcript)/i.test(head) && !isTtml(head) ? 'markup' : null;
}
