/** Two readers of WebVTT that others wrote, to check and to measure ours by. */
import { createRequire } from 'node:module';

interface OutsideCue {
  readonly id: string;
  /** Seconds. */
  readonly startTime: number;
  readonly endTime: number;
  readonly text: string;
}

interface W3cReading {
  readonly cues: readonly OutsideCue[];
  readonly errors: readonly { readonly message: string; readonly line: number }[];
}

interface W3cParser {
  parse(text: string, mode: string): W3cReading;
}

interface VttJsParser {
  oncue: (cue: OutsideCue) => void;
  parse(text: string): void;
  flush(): void;
}

interface VttJs {
  readonly WebVTT: {
    readonly Parser: new (window: object, decoder: object) => VttJsParser;
    StringDecoder(): object;
  };
  readonly VTTCue: unknown;
  readonly VTTRegion: unknown;
}

const require = createRequire(import.meta.url);
const { WebVTTParser } = require('webvtt-parser') as { WebVTTParser: new () => W3cParser };
const { WebVTT, VTTCue, VTTRegion } = require('vtt.js') as VttJs;

/** The W3C's own parser and validator (npm webvtt-parser). */
export const readWithW3cParser = (
  text: string,
  mode: 'subtitles/captions/descriptions' | 'chapters' = 'subtitles/captions/descriptions',
): W3cReading => new WebVTTParser().parse(text, mode);

/** npm vtt.js. */
export function readWithVttJs(text: string): readonly OutsideCue[] {
  const cues: OutsideCue[] = [];
  const parser = new WebVTT.Parser({ VTTCue, VTTRegion }, WebVTT.StringDecoder());
  parser.oncue = (cue) => cues.push(cue);
  parser.parse(text);
  parser.flush();
  return cues;
}
