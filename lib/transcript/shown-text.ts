/**
 * From what a transcript file marks up to what is shown: plain words. Cues in
 * Benchleaf hold plain text, since that is what a teacher mends, what a search
 * finds and what every other format can hold. Marking is listed as lost; who
 * speaks is not marking, so a voice is given back for the caller to write out.
 */
import { decodeHTML } from 'entities';
import { type CueToken, cueTokens } from './cue-text.ts';

export interface ShownText {
  readonly text: string;
  /** Names of the tags that were left out, each once. */
  readonly tags: readonly string[];
  /** Who speaks first in it, or empty. */
  readonly voice: string;
}

/** The words of a WebVTT cue text; what is set over other words (ruby) follows them in brackets. */
export function shownWebVttText(written: string): ShownText {
  if (!written.includes('<') && !written.includes('&')) return { text: written, tags: [], voice: '' };
  const tokens = cueTokens(written);
  const started = tokens.filter((token) => token.kind === 'start');
  const tags = new Set(started.map((token) => token.name || 'nameless').filter((name) => name !== 'v'));
  if (tokens.some((token) => token.kind === 'time')) tags.add('time');
  return {
    text: tokens.map((token) => wordsOf(token, tags.has('ruby'))).join(''),
    tags: [...tags],
    voice: started.find((token) => token.name === 'v')?.annotation ?? '',
  };
}

function wordsOf(token: CueToken, ruby: boolean): string {
  if (token.kind === 'text') return token.text;
  if (!ruby || token.kind === 'time' || token.name !== 'rt') return '';
  return token.kind === 'start' ? ' (' : ')';
}

const SRT_TAG = /<\/?(b|i|u|s|font)(?:\s[^<>]*)?>|\{\/?([bius])\}|\{(\\)[^{}]*\}/gi;
const SRT_ESCAPE = /&(?:amp|lt|gt|quot|apos|nbsp|#\d{1,7}|#x[\da-f]{1,6});/gi;

/**
 * The words of an SRT text. SRT has no rules; players know a few HTML tags and
 * `{\...}` for place. Anything else in angle brackets is taken as words.
 */
export function shownSrtText(written: string): ShownText & { readonly escapes: boolean } {
  const tags = new Set<string>();
  const bare = written.replace(SRT_TAG, (_, html?: string, curly?: string) => {
    tags.add((html ?? curly ?? 'place').toLowerCase());
    return '';
  });
  const text = bare.replace(SRT_ESCAPE, (sign) => decodeHTML(sign));
  return { text, tags: [...tags], voice: '', escapes: text !== bare };
}
