/**
 * A script: what is said, without times. Paragraphs are parted by blank lines,
 * lines inside one are only how wide it was typed; each sentence becomes a
 * piece, a long one several.
 */
import type { Span } from '#lib/time/time.ts';
import type { FoundCue } from './found-cue.ts';
import { spreadOver } from './spread-script.ts';
import { normaliseLines } from './webvtt-read.ts';
import { breakCost, gluedPlaces, wordsOf } from './word-breaks.ts';

/** A piece longer than this is parted, characters: about two captions. */
const LONGEST_PIECE = 120;
/** A sentence shorter than this goes together with one beside it in its paragraph. */
const SHORT_PIECE = 30;

interface Piece {
  readonly line: number;
  readonly text: string;
}

/** @param speech where speech was found; empty where there is no recording yet */
export function cuesOfScript(text: string, speech: readonly Span[]): readonly FoundCue[] {
  const pieces = piecesOf(text);
  const spans = spreadOver(
    pieces.map((piece) => piece.text),
    speech,
    0,
  );
  return pieces.map((piece, index) => {
    const { startMs, endMs } = spans[index] ?? { startMs: 0, endMs: 1 };
    return { ...piece, startMs, endMs, settings: '' };
  });
}

function piecesOf(text: string): readonly Piece[] {
  const pieces: Piece[] = [];
  let paragraph: string[] = [];
  let line = 1;
  const close = () => {
    const said = paragraph.join(' ');
    for (const piece of piecesOfParagraph(said)) pieces.push({ line, text: piece });
    paragraph = [];
  };
  normaliseLines(text)
    .split('\n')
    .forEach((written, index) => {
      if (written.trim() === '') {
        close();
        return;
      }
      if (paragraph.length === 0) line = index + 1;
      paragraph.push(written.trim());
    });
  close();
  return pieces;
}

function piecesOfParagraph(said: string): readonly string[] {
  const sentences = said
    .split(/(?<=[.!?…]["'”’)\]]{0,3})\s+(?=["'“‘([]{0,3}[\p{Lu}\p{N}])/u)
    .filter((one) => one.trim() !== '');
  const whole: string[] = [];
  for (const sentence of sentences) {
    const before = whole.at(-1);
    const isShort = Math.min(before?.length ?? LONGEST_PIECE, sentence.length) < SHORT_PIECE;
    if (before !== undefined && isShort && before.length + sentence.length < LONGEST_PIECE)
      whole[whole.length - 1] = `${before} ${sentence}`;
    else whole.push(sentence);
  }
  return whole.flatMap((sentence) =>
    sentence.length <= LONGEST_PIECE ? [sentence] : partSentence(sentence),
  );
}

/** A long sentence in parts of like length, each ending where it reads best. */
function partSentence(sentence: string): readonly string[] {
  const words = wordsOf(sentence);
  const glued = gluedPlaces(words);
  const wanted = sentence.length / Math.ceil(sentence.length / LONGEST_PIECE);
  const parts: string[] = [];
  let from = 0;
  let left = sentence.length;
  while (from < words.length) {
    let length = 0;
    let best = words.length;
    let bestCost = Number.POSITIVE_INFINITY;
    for (let at = from + 1; at < words.length; at += 1) {
      length += (words[at - 1]?.length ?? 0) + 1;
      if (length > LONGEST_PIECE && best < words.length) break;
      if (glued[at - 1]) continue;
      const cost = breakCost(words, at) * 6 + Math.abs(wanted - length);
      if (cost < bestCost) [best, bestCost] = [at, cost];
    }
    const end = left <= LONGEST_PIECE ? words.length : best;
    const part = words.slice(from, end).join(' ');
    parts.push(part);
    left -= part.length + 1;
    from = end;
  }
  return parts;
}
