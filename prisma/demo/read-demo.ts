/** The demo lesson as it ships: its recording, its transcript, and what the teacher made of them. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { type Content, content } from '#lib/lesson/content.ts';
import { correctedDemoContent, demoContent } from './content.ts';
import { readNarration } from './voice.ts';

export interface Demo {
  readonly recordingPath: string;
  /** WebVTT with words as an automatic transcript misheard them. */
  readonly transcript: Uint8Array;
  /** What was really said, a text for each cue in order. */
  readonly said: readonly string[];
  readonly first: Content;
  readonly corrected: (published: Content) => Content;
}

const moments = z.record(z.string(), z.tuple([z.int(), z.int()]));

export function readDemo(): Demo {
  const here = (name: string) => join(import.meta.dirname, name);
  const spoken = moments.parse(JSON.parse(readFileSync(here('moments.json'), 'utf8')));
  return {
    recordingPath: here('recording.mp4'),
    transcript: readFileSync(here('recording.vtt')),
    said: readNarration(here('narration.json')).pieces.map((piece) => piece.text),
    first: content.parse(demoContent(spoken)),
    corrected: (published) => content.parse(correctedDemoContent(spoken, published)),
  };
}
