/** What of a lesson can be taken along as text in open formats, from a draft or from a revision alike. */
import { writeChaptersJson } from '#lib/chapters/chapters-json.ts';
import { writeChaptersWebVtt } from '#lib/chapters/chapters-webvtt.ts';
import { writeFfmetadata } from '#lib/chapters/ffmetadata.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { writeSrt } from '#lib/transcript/srt-write.ts';
import { writeStampedText } from '#lib/transcript/stamped-text-write.ts';
import { writeTtml } from '#lib/transcript/ttml-write.ts';
import { writeWebVtt } from '#lib/transcript/webvtt-write.ts';
import type { Content } from './content.ts';

/** Names of the files, with their media types. */
export const TEXT_FILES = {
  'captions.vtt': 'text/vtt',
  'captions.srt': 'application/x-subrip',
  'captions.ttml': 'application/ttml+xml',
  'chapters.vtt': 'text/vtt',
  'chapters.json': 'application/json+chapters',
  'chapters.ffmetadata': 'text/plain',
  'transcript.txt': 'text/plain',
} as const;
export type TextFile = keyof typeof TEXT_FILES;

export const isTextFile = (name: string): name is TextFile => Object.hasOwn(TEXT_FILES, name);

export interface TextFileSource {
  readonly content: Content;
  readonly cues: readonly Cue[];
  /** Of the recording; null before there is one. */
  readonly durationMs: number | null;
}

/** One of the files. The same lesson gives the same bytes. */
export function writeTextFile(name: TextFile, { content, cues, durationMs }: TextFileSource): string {
  const { chapters, title, language } = content;
  // The last chapter ends with the recording, or, before there is one, with the last word.
  const endMs = durationMs ?? cues.at(-1)?.endMs ?? 0;
  switch (name) {
    case 'captions.vtt':
      return writeWebVtt(cues);
    case 'captions.srt':
      return writeSrt(cues);
    case 'captions.ttml':
      return writeTtml(cues, language);
    case 'transcript.txt':
      return writeStampedText(cues);
    case 'chapters.vtt':
      return writeChaptersWebVtt(chapters, endMs);
    case 'chapters.json':
      return writeChaptersJson(chapters, title);
    case 'chapters.ffmetadata':
      return writeFfmetadata(chapters, title, endMs);
  }
}
