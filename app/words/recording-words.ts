/** Words about recordings: why one is not taken, what is being done, what it is. */

import type { RecordingFacts } from '#lib/recording/facts.ts';
import { mayTryAgain, type RecordingFault } from '#lib/recording/fault.ts';
import type { Look, OtherContainer } from '#lib/recording/sniff.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';

/** What the file list of a phone or computer would show. */
export const TAKEN_WORDS = 'MP4, MOV, MKV or WebM video; MP3, M4A, WAV, FLAC, Ogg or AAC sound';

const LOOK_WORDS: Record<Look, string> = {
  empty: 'This file is empty.',
  playlist: 'This is a playlist: a list of other files, not a recording itself.',
  'web-page': 'This is a web page, not a recording.',
  subtitles: 'This is a transcript. Bring it in under Transcript.',
  archive: 'This is an archive. Unpack it and bring in the recording inside.',
  image: 'This is a picture, not a recording.',
  document: 'This is a document, not a recording.',
  unknown: `This file is none of the recordings that can be taken: ${TAKEN_WORDS}.`,
};

/** Codecs as people write them, by the names that programs give them. */
const CODEC_NAMES: readonly (readonly [RegExp, string])[] = [
  [/^(avc|h264)/i, 'H.264'],
  [/^(hevc|h265)/i, 'H.265'],
  [/^(aac|mp4a)/i, 'AAC'],
  [/^pcm/i, 'PCM'],
  [/^(vp8|vp9|av1|mp3|flac|alac|ac3|mjpeg)$/i, ''],
];

/** `H.264` for `avc` and `h264`; a codec unknown here keeps the name it came with. */
export function codecWords(codec: string): string {
  const known = CODEC_NAMES.find(([pattern]) => pattern.test(codec));
  return known ? known[1] || codec.toUpperCase() : codec;
}

const CONTAINER_NAMES: Record<OtherContainer, string> = {
  avi: 'an AVI file',
  'mpeg-ts': 'an MPEG transport stream (often .ts or .mts)',
  'mpeg-ps': 'an MPEG program stream (often .mpg or .vob)',
  'windows-media': 'a Windows Media file',
  flash: 'a Flash video',
  realmedia: 'a RealMedia file',
};

/** One or two sentences: what is wrong, and what to do. */
export function recordingFaultWords(fault: RecordingFault): string {
  switch (fault.code) {
    case 'not-a-recording':
      return LOOK_WORDS[fault.looksLike];
    case 'container-not-taken':
      return `This is ${CONTAINER_NAMES[fault.container]}, which cannot be taken. Export it as MP4 and bring that in.`;
    case 'unreadable':
      return 'This file begins like a recording, but nothing in it can be read. Copy it from the camera again, or export it anew.';
    case 'index-missing':
      return 'This file is not complete: its index, written at the very end, is missing. The recording or the copying was cut short. Copy it again.';
    case 'no-sound-nor-picture':
      return 'There is neither sound nor picture in this file.';
    case 'codec-not-taken':
      return `The ${fault.of} is stored as ${codecWords(fault.codec)}, which cannot be taken. Export the recording as H.264 with AAC sound.`;
    case 'picture-too-large':
      return `The picture is too large, ${fault.width} × ${fault.height}. Export it with at most 8192 × 4320.`;
    case 'too-long':
      return `The recording is ${formatTimeCode(fault.durationMs)} long; ${formatTimeCode(fault.longestMs)} is the most.`;
    case 'too-short':
      return 'The recording has no length.';
    case 'breaks-off':
      return fault.announcedMs === null
        ? `The file breaks off at ${formatTimeCode(fault.endsAtMs)}. Copy it again, or export it anew.`
        : `The file breaks off at ${formatTimeCode(fault.endsAtMs)} of ${formatTimeCode(fault.announcedMs)}: the rest is missing. Copy it again, or export it anew.`;
    case 'damaged':
      return `The file is damaged at about ${formatTimeCode(fault.atMs)}. Copy it again, or export it anew.`;
    case 'incomplete':
      return 'Not all of the file arrived. Send it again.';
    case 'took-too-long':
      return 'This took longer than it should, and was stopped. Try again; if it happens again, export the recording as MP4 first.';
    case 'too-much-memory':
      return 'This recording needs more memory than the server has to give. Export it smaller, for example 1920 × 1080.';
    case 'disk-full':
      return 'The server’s disk is full. Your file is kept as far as it came; make room, then try again.';
    case 'converter-missing':
      return 'ffmpeg is missing on the server, so recordings cannot be taken in. Your file is kept; install ffmpeg, then try again.';
    case 'gave-up':
      return 'Something went wrong on our side, several times. Your file is kept; try again later.';
  }
}

/** What to call a recording that was not taken: its own fault, or ours. */
export const refusedTitle = (fault: RecordingFault): string =>
  mayTryAgain(fault) ? 'Could not be taken in' : 'Cannot be taken';

/** The steps after the last byte, in their order. */
export const INGEST_STEPS = ['identify', 'look-through', 'poster', 'store'] as const;

/** What a step does. */
export function stepWords(step: string | null): string {
  switch (step) {
    case 'identify':
      return 'Finding out what it is';
    case 'look-through':
      return 'Looking through all of it';
    case 'convert':
      return 'Looking through all of it and making a copy for the web';
    case 'poster':
      return 'Taking the poster picture';
    case 'store':
      return 'Putting everything in its place';
    default:
      return 'Waiting for its turn';
  }
}

/** `640 MB`, `1.4 GB`: thousands, as shops and systems print them. */
export function sizeWords(bytes: number): string {
  if (bytes < 1_000_000) return `${Math.max(1, Math.round(bytes / 1000))} kB`;
  if (bytes < 1_000_000_000) return `${(bytes / 1_000_000).toFixed(bytes < 10_000_000 ? 1 : 0)} MB`;
  return `${(bytes / 1_000_000_000).toFixed(2)} GB`;
}

/** `about 2 minutes left`; rough on purpose. */
export function timeLeftWords(ms: number): string {
  const seconds = Math.round(ms / 1000);
  if (seconds < 10) return 'a few seconds left';
  if (seconds < 60) return `about ${Math.round(seconds / 5) * 5} seconds left`;
  const minutes = Math.round(seconds / 60);
  if (minutes < 60) return `about ${minutes} ${minutes === 1 ? 'minute' : 'minutes'} left`;
  return `about ${Math.round(minutes / 6) / 10} hours left`;
}

export function madeWords(made: RecordingFacts['playable']['made']): string {
  switch (made) {
    case 'original':
      return 'Played as you brought it in';
    case 'repacked':
      return 'Same picture and sound, repacked for the web';
    case 'converted':
      return 'A copy was made for the web; the original is kept';
  }
}
