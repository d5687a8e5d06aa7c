/**
 * WebVTT cue text: what stands between two blank lines of a cue, with its tags
 * and character references. Reading follows the cue text tokenizer and the cue
 * text parsing rules (W3C WebVTT, section 6.4); it takes any text.
 */
import { decodeHTML } from 'entities';
import { readTimestamp } from './webvtt-time.ts';

export type CueTag = 'c' | 'i' | 'b' | 'u' | 'ruby' | 'rt' | 'v' | 'lang';

export type CueNode =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'time'; readonly atMs: number }
  | {
      readonly kind: 'span';
      readonly tag: CueTag;
      readonly classes: readonly string[];
      /** Who speaks (v) or a language tag (lang); empty elsewhere. */
      readonly annotation: string;
      readonly children: readonly CueNode[];
    };

export type CueToken =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'time'; readonly text: string }
  | { readonly kind: 'end'; readonly name: string }
  | {
      readonly kind: 'start';
      readonly name: string;
      readonly classes: readonly string[];
      readonly annotation: string;
    };

/** The tokens of a cue text, in order. A tag that the text's end cuts off counts as closed there. */
export function cueTokens(text: string): readonly CueToken[] {
  const tokens: CueToken[] = [];
  let position = 0;
  while (position < text.length) {
    const open = text.indexOf('<', position);
    const end = open < 0 ? text.length : open;
    if (end > position) tokens.push({ kind: 'text', text: decode(text.slice(position, end)) });
    if (open < 0) break;
    const close = text.indexOf('>', open);
    const inside = text.slice(open + 1, close < 0 ? undefined : close);
    tokens.push(readTag(inside));
    position = close < 0 ? text.length : close + 1;
  }
  return tokens;
}

/** The tree of a cue text. Tags that mean nothing are passed over, with what they hold kept. */
export function readCueText(text: string): readonly CueNode[] {
  const root: CueNode[] = [];
  // The spans that are open, innermost last.
  const open: { readonly tag: CueTag; readonly children: CueNode[] }[] = [];
  for (const token of cueTokens(text)) {
    const into = open.at(-1)?.children ?? root;
    switch (token.kind) {
      case 'text':
        into.push(token);
        break;
      case 'time':
        into.push(...timeNodes(token.text));
        break;
      case 'start': {
        const tag = tagOf(token.name, open.at(-1)?.tag);
        if (!tag) break;
        const children: CueNode[] = [];
        const annotation = tag === 'v' || tag === 'lang' ? token.annotation : '';
        into.push({ kind: 'span', tag, classes: token.classes, annotation, children });
        open.push({ tag, children });
        break;
      }
      case 'end': {
        const innermost = open.at(-1)?.tag;
        if (innermost === token.name) open.pop();
        else if (innermost === 'rt' && token.name === 'ruby') open.splice(-2);
        break;
      }
    }
  }
  return root;
}

/** A time tag as a node; none where it is no time, or more than one. */
function timeNodes(text: string): readonly CueNode[] {
  const read = readTimestamp(text, 0);
  return read && read.next === text.length ? [{ kind: 'time', atMs: read.ms }] : [];
}

const decode = (text: string): string => (text.includes('&') ? decodeHTML(text) : text);

function readTag(inside: string): CueToken {
  const first = inside.charAt(0);
  if (first === '/') return { kind: 'end', name: inside.slice(1) };
  if (first >= '0' && first <= '9') return { kind: 'time', text: inside };
  const space = inside.search(/[ \t\n\f]/);
  const [name = '', ...classes] = (space < 0 ? inside : inside.slice(0, space)).split('.');
  const annotation =
    space < 0
      ? ''
      : decode(inside.slice(space))
          .trim()
          .replace(/[ \t\n\f\r]+/g, ' ');
  return { kind: 'start', name, classes: classes.filter((one) => one !== ''), annotation };
}

function tagOf(name: string, inside: CueTag | undefined): CueTag | null {
  switch (name) {
    case 'c':
    case 'i':
    case 'b':
    case 'u':
    case 'ruby':
    case 'v':
    case 'lang':
      return name;
    case 'rt':
      return inside === 'ruby' ? 'rt' : null;
    default:
      return null;
  }
}
