/** Sentences of a transcript with their times, whole or as far as the cues show where they end. */
import type { Cue } from '#lib/transcript/cue.ts';
import { offsetToMs } from '#lib/transcript/word-times.ts';
import type { Unit } from './boundaries.ts';
import { wordsOf } from './content-words.ts';

/** Silence that ends a sentence, ms: longer than a breath; shorter where no full stops are written. */
const PAUSE_MS = 700;
const PAUSE_WITHOUT_STOPS_MS = 200;
/** A sentence is cut after so many words at the end of a cue. */
const MOST_WORDS = 40;
const MOST_WORDS_WITHOUT_STOPS = 16;
/** Fewer sentence ends than one in so many words, and the transcript is taken to have none. */
const WORDS_A_STOP = 60;

const SENTENCE_END = /[.!?…]["'’”)\]]*(?=\s|$)/g;

export interface Sentence extends Unit {
  /** The cue that it begins in. */
  readonly cueId: string;
}

/**
 * Sentences in order of time. A cue that holds the end of one and the start
 * of the next is parted there; the time between is reckoned from its letters.
 */
export function sentencesOf(cues: readonly Cue[]): readonly Sentence[] {
  const pieces = cues.flatMap(piecesOf);
  const words = pieces.reduce((sum, piece) => sum + wordsOf(piece.text).length, 0);
  const hasStops = pieces.filter((piece) => piece.ends).length * WORDS_A_STOP >= words;
  const sentences: Sentence[] = [];
  let parts: Piece[] = [];
  let count = 0;
  const close = () => {
    const first = parts[0];
    const last = parts.at(-1);
    if (first && last)
      sentences.push({
        text: parts.map((part) => part.text).join(' '),
        startMs: first.startMs,
        cueId: first.cueId,
        endMs: Math.max(...parts.map((part) => part.endMs)),
      });
    parts = [];
    count = 0;
  };
  pieces.forEach((piece, index) => {
    parts.push(piece);
    count += wordsOf(piece.text).length;
    const silenceMs = (pieces[index + 1]?.startMs ?? Number.POSITIVE_INFINITY) - piece.endMs;
    const pause = silenceMs >= (hasStops ? PAUSE_MS : PAUSE_WITHOUT_STOPS_MS);
    if (piece.ends || pause || count >= (hasStops ? MOST_WORDS : MOST_WORDS_WITHOUT_STOPS)) close();
  });
  return sentences;
}

interface Piece extends Sentence {
  /** Whether a sentence ends with it. */
  readonly ends: boolean;
}

/** A cue, parted behind each sentence end inside it; nothing of a cue that holds no words. */
function piecesOf(cue: Cue): readonly Piece[] {
  const cuts = [...cue.text.matchAll(SENTENCE_END)].map((end) => end.index + end[0].length);
  const edges = [0, ...cuts.filter((cut) => cut < cue.text.length), cue.text.length];
  return edges.slice(1).flatMap((to, index) => {
    const from = edges[index] ?? 0;
    const text = cue.text.slice(from, to).replace(/\s+/g, ' ').trim();
    if (wordsOf(text).length === 0) return [];
    const startMs = from === 0 ? cue.startMs : Math.round(offsetToMs(cue, from + 1));
    const endMs = to === cue.text.length ? cue.endMs : Math.round(offsetToMs(cue, to));
    return [{ text, startMs, endMs, cueId: cue.id, ends: cuts.includes(to) }];
  });
}
