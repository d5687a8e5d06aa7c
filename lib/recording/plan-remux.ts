/**
 * How a copy of a recording is made that carries its captions and chapters
 * inside, said as ffmpeg's arguments. Sound and picture are copied bit by bit,
 * never encoded anew. The same input gives the same bytes. Pure;
 * make-remux.ts runs it.
 */
import { inputArguments } from './plan-ingest.ts';

export interface RemuxInputs {
  /** Absolute paths. */
  readonly recording: string;
  readonly recordingType: string;
  /** A track of timed text for MP4, SRT for Matroska; null where nothing is said. */
  readonly captions: string | null;
  /** Title and chapters as ffmetadata. */
  readonly chapters: string;
  /** ISO 639-2 code of what is spoken, or null. */
  readonly language: string | null;
}

/** The files that carry captions and chapters. */
export type RemuxEnding = 'mp4' | 'mkv';

/** The arguments after the program's own. */
export function remuxArguments(ending: RemuxEnding, inputs: RemuxInputs, output: string): string[] {
  const { captions, language } = inputs;
  const chaptersInput = captions === null ? 1 : 2;
  const spoken = (of: string): string[] =>
    language === null ? [] : [`-metadata:s:${of}`, `language=${language}`];
  return [
    // Every input keeps its own times: a caption before the first picture is still where it was.
    '-copyts',
    ...inputArguments(inputs.recordingType === 'audio/mpeg' ? 'mp3' : 'mov', inputs.recording),
    ...(captions === null ? [] : textInput(ending === 'mp4' ? 'mov' : 'srt', captions)),
    ...textInput('ffmetadata', inputs.chapters),
    ...['-map', '0:v:0?', '-map', '0:a:0?', ...(captions === null ? [] : ['-map', '1:s:0'])],
    ...['-c', 'copy'],
    // What sound carries before its beginning would move all that follows in Matroska, chapters excepted.
    ...(ending === 'mkv' ? ['-copypriorss', '0'] : []),
    ...['-map_metadata', String(chaptersInput), '-map_chapters', String(chaptersInput)],
    ...spoken('a:0'),
    ...(captions === null ? [] : [...spoken('s:0'), '-metadata:s:s:0', 'title=Captions']),
    // No dates, no random marks, no name of the program's version.
    ...['-fflags', '+bitexact'],
    ...(ending === 'mp4' ? ['-movflags', '+faststart', '-f', 'mp4'] : ['-f', 'matroska']),
    `file:${output}`,
  ];
}

const textInput = (format: 'mov' | 'srt' | 'ffmetadata', path: string): string[] => [
  ...['-protocol_whitelist', 'file,pipe', '-format_whitelist', format],
  ...['-f', format, '-i', `file:${path}`],
];

/**
 * Bibliographic codes of ISO 639-2, each of which has a terminological one
 * beside it. Source: the standard's code list, kept by the Library of Congress.
 */
const BIBLIOGRAPHIC = new Set(
  'alb arm baq bur chi cze dut fre geo ger gre ice mac mao may per rum slo tib wel'.split(' '),
);
const LETTERS = [...'abcdefghijklmnopqrstuvwxyz'];

/**
 * The ISO 639-2 code of a BCP 47 tag, which media files want: `eng` of `en-GB`;
 * null where there is none. It is the three-letter code that stands for the
 * tag's language (BCP 47 asks for the shorter one, so that the two name the same).
 */
export function languageCode(tag: string): string | null {
  const language = languageOf(tag);
  if (language === null || language.length > 3) return null;
  if (language.length === 3) return language;
  for (const first of LETTERS)
    for (const second of LETTERS)
      for (const third of LETTERS) {
        const code = first + second + third;
        if (languageOf(code) === language && !BIBLIOGRAPHIC.has(code)) return code;
      }
  return null;
}

function languageOf(tag: string): string | null {
  try {
    return new Intl.Locale(tag).language;
  } catch {
    return null;
  }
}
