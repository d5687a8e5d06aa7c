/**
 * When a word is spoken, as far as a cue alone can tell: its time is shared
 * out evenly over its characters. Speech runs at 12 to 18 characters a second
 * (common practice in subtitling), so that in a cue of a few seconds the
 * estimate is off by a word or two, and never outside the cue.
 */
import type { Cue } from './cue.ts';

type Timed = Pick<Cue, 'startMs' | 'endMs' | 'text'>;

/** The moment at which the character at `offset` is spoken; offsets beyond either end give that end. */
export function offsetToMs(cue: Timed, offset: number): number {
  if (cue.text.length === 0) return cue.startMs;
  const share = Math.min(Math.max(offset, 0), cue.text.length) / cue.text.length;
  return cue.startMs + Math.round((cue.endMs - cue.startMs) * share);
}

/** The offset of the character spoken at a moment: the other way round. */
export function msToOffset(cue: Timed, atMs: number): number {
  const share = (atMs - cue.startMs) / (cue.endMs - cue.startMs);
  return Math.round(cue.text.length * Math.min(Math.max(share, 0), 1));
}

/** Where the word starts that the character at `offset` belongs to; a gap belongs to the word behind it. */
export function wordStart(text: string, offset: number): number {
  let at = Math.min(Math.max(offset, 0), text.length);
  while (at < text.length && /\s/.test(text.charAt(at))) at += 1;
  while (at > 0 && !/\s/.test(text.charAt(at - 1))) at -= 1;
  return at;
}
