/**
 * A transcript file, whole: from bytes to the cues of a lesson. It either
 * reads them, or asks which encoding the text has, or says why the file is no
 * transcript. The same bytes and answers give the same cues.
 */
import { failed, ok, type Result } from '#lib/result.ts';
import type { Span } from '#lib/time/time.ts';
import { type Cue, MOST_CUES } from './cue.ts';
import { cuesOfScript } from './cues-of-script.ts';
import { cuesOfSrt } from './cues-of-srt.ts';
import { cuesOfStampedText } from './cues-of-stamped-text.ts';
import { cuesOfTtml } from './cues-of-ttml.ts';
import { cuesOfWebVtt } from './cues-of-webvtt.ts';
import { detectFormat, type OtherFile, otherFileOf, type TranscriptFormat } from './detect-format.ts';
import { withTiming } from './edit-cues.ts';
import { decodeAs, decodeBytes, type Encoding, type EncodingCandidate } from './encoding.ts';
import { type Loss, lossOf } from './loss.ts';
import { speechBetween } from './spread-script.ts';
import { takeCues } from './take-cues.ts';

/** Largest transcript file, bytes: a hundred hours of speech are less than half of it. */
export const LARGEST_TRANSCRIPT_BYTES = 20_000_000;

export type TranscriptFault =
  | { readonly code: 'transcript-empty' }
  | { readonly code: 'transcript-not-text'; readonly looksLike: OtherFile }
  | { readonly code: 'transcript-without-times'; readonly firstLines: string }
  | {
      readonly code: 'transcript-without-cues';
      readonly format: TranscriptFormat;
      readonly losses: readonly Loss[];
    }
  | { readonly code: 'transcript-too-many-cues'; readonly cues: number; readonly most: number };

export interface ReadTranscript {
  readonly kind: 'read';
  readonly format: TranscriptFormat;
  readonly encoding: Encoding;
  readonly cues: readonly Cue[];
  /** In order of lines. */
  readonly losses: readonly Loss[];
}

export interface WhichEncoding {
  readonly kind: 'which-encoding';
  readonly candidates: readonly EncodingCandidate[];
}

interface Reading {
  /** The encoding that was chosen, where it was asked for. */
  readonly encoding?: Encoding | undefined;
  /** Length of the recording, where it is known; ends the last piece of a stamped text. */
  readonly recordingMs: number | null;
  /** Pauses of the recording, over whose speech a script is spread. */
  readonly pauses?: readonly Span[] | undefined;
  readonly newId: () => string;
}

/** Reads a transcript file. Linear in its length; never throws. */
export function readTranscript(
  bytes: Uint8Array,
  reading: Reading,
): Result<ReadTranscript | WhichEncoding, TranscriptFault> {
  const looksLike = otherFileOf(bytes);
  if (looksLike) return failed({ code: 'transcript-not-text', looksLike });
  const { encoding: chosen } = reading;
  const decoded = chosen
    ? ({ kind: 'text', encoding: chosen, text: decodeAs(bytes, chosen) } as const)
    : decodeBytes(bytes);
  if (decoded.kind === 'unsure') return ok({ kind: 'which-encoding', candidates: decoded.candidates });

  const { encoding, text } = decoded;
  if (text.trim() === '') return failed({ code: 'transcript-empty' });
  const format = detectFormat(text);
  if (!format) return failed({ code: 'transcript-without-times', firstLines: text.trim().slice(0, 200) });
  const read = readAs(format, text, reading);
  if (read.found.length > MOST_CUES)
    return failed({ code: 'transcript-too-many-cues', cues: read.found.length, most: MOST_CUES });
  const taken = takeCues(read.found, reading.newId);
  const losses = [...unreadableCharacters(text), ...read.losses, ...taken.losses].sort(
    (a, b) => a.line - b.line,
  );
  if (taken.cues.length === 0) return failed({ code: 'transcript-without-cues', format, losses });
  const cues = format === 'script' ? taken.cues.map((one) => withTiming(one, 'approximate')) : taken.cues;
  return ok({ kind: 'read', format, encoding, cues, losses });
}

function readAs(format: TranscriptFormat, text: string, { recordingMs, pauses = [] }: Reading) {
  switch (format) {
    case 'webvtt':
      return cuesOfWebVtt(text);
    case 'srt':
      return cuesOfSrt(text);
    case 'ttml':
      return cuesOfTtml(text, recordingMs);
    case 'stamped text':
      return cuesOfStampedText(text, recordingMs);
    case 'script': {
      const speech = recordingMs === null ? [] : speechBetween(pauses, recordingMs);
      return { found: cuesOfScript(text, speech), losses: [] };
    }
  }
}

/** Lines with a character that the bytes did not hold, or that text cannot. */
const unreadableCharacters = (text: string): readonly Loss[] =>
  text
    .split(/\r\n?|\n/)
    .flatMap((line, index) =>
      /[\uFFFD\0]/.test(line) ? [lossOf('character-unreadable', index + 1, line)] : [],
    );
