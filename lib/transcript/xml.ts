/**
 * Reads XML as far as captions need it (W3C XML 1.0): elements, attributes,
 * text, CDATA, the five named references and numbered ones. It takes any text:
 * what is not closed is closed where it can be, what is not open is passed
 * over, and nothing outside the text is ever fetched. Linear in its length.
 */
import { decodeXML } from 'entities';

export interface XmlElement {
  readonly kind: 'element';
  /** Name without its prefix. */
  readonly name: string;
  /** Line of its start tag, from 1. */
  readonly line: number;
  /** By their names as written, prefix and all. */
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly XmlNode[];
}
interface XmlText {
  readonly kind: 'text';
  readonly text: string;
}
export type XmlNode = XmlElement | XmlText;

/** Elements nested deeper than this count as text of the one they stand in. */
const DEEPEST = 200;
const NAME = /[^\s=/>]*/y;
const SPACE = /[\s/]*/y;
const EQUALS = /\s*=\s*/y;
const BARE_VALUE = /[^\s>]*/y;

interface Open {
  readonly written: string;
  readonly children: XmlNode[];
}

/** The elements and text of a document, in order. `xml` has its lines parted by `\n`. */
export function readXml(xml: string): readonly XmlNode[] {
  const root: XmlNode[] = [];
  const open: Open[] = [];
  const lineAt = lineCounter(xml);
  const add = (node: XmlNode) => (open.at(-1)?.children ?? root).push(node);
  const addText = (text: string) => text !== '' && add({ kind: 'text', text });

  const begin = (tag: number): number => {
    const { written, attributes, closed, next } = readStartTag(xml, tag);
    if (written === '' || open.length >= DEEPEST) return next;
    const children: XmlNode[] = [];
    const name = written.slice(written.indexOf(':') + 1);
    add({ kind: 'element', name, line: lineAt(tag), attributes, children });
    if (!closed) open.push({ written, children });
    return next;
  };
  const end = (tag: number): number => {
    const close = xml.indexOf('>', tag);
    const written = xml.slice(tag + 2, close < 0 ? undefined : close).trim();
    const opened = open.findLastIndex((one) => one.written === written);
    if (opened >= 0) open.length = opened;
    return close < 0 ? xml.length : close + 1;
  };

  for (let at = 0; at < xml.length; ) {
    const tag = xml.indexOf('<', at);
    addText(decodeXML(xml.slice(at, tag < 0 ? undefined : tag)));
    if (tag < 0) break;
    const aside = skipAside(xml, tag);
    if (aside) addText(aside.text);
    at = aside ? aside.next : xml.startsWith('</', tag) ? end(tag) : begin(tag);
  }
  return root;
}

/** Tells the line of a position, from 1; positions may only grow from call to call. */
function lineCounter(text: string): (position: number) => number {
  let line = 1;
  let next = text.indexOf('\n');
  return (position) => {
    for (; next >= 0 && next < position; next = text.indexOf('\n', next + 1)) line += 1;
    return line;
  };
}

/** A comment, a processing instruction, a declaration or CDATA; null where there is none. One without an end runs to the text's. */
function skipAside(xml: string, at: number): { readonly text: string; readonly next: number } | null {
  const until = (mark: string, from: number) => {
    const end = xml.indexOf(mark, from);
    return end < 0 ? xml.length : end + mark.length;
  };
  if (xml.startsWith('<!--', at)) return { text: '', next: until('-->', at + 4) };
  if (xml.startsWith('<![CDATA[', at)) {
    const end = xml.indexOf(']]>', at);
    return end < 0
      ? { text: xml.slice(at + 9), next: xml.length }
      : { text: xml.slice(at + 9, end), next: end + 3 };
  }
  if (xml.startsWith('<?', at)) return { text: '', next: until('?>', at) };
  if (!xml.startsWith('<!', at)) return null;
  // A document type may hold declarations between brackets.
  const close = xml.indexOf('>', at);
  const bracket = xml.indexOf('[', at);
  const nested = bracket >= 0 && bracket < close;
  return { text: '', next: nested ? until('>', until(']', bracket)) : until('>', at) };
}

function readStartTag(xml: string, tag: number) {
  const attributes = new Map<string, string>();
  let at = tag + 1;
  const take = (pattern: RegExp): string => {
    pattern.lastIndex = at;
    const found = pattern.exec(xml)?.[0] ?? '';
    at += found.length;
    return found;
  };
  const written = take(NAME);
  let closed = false;
  while (at < xml.length) {
    closed = take(SPACE).endsWith('/');
    if (xml[at] === '>') break;
    const name = take(NAME);
    if (take(EQUALS) === '') {
      // A sign that can begin no name would stop the reading here for ever.
      if (name === '') at += 1;
      continue;
    }
    const quote = xml[at];
    if (quote !== '"' && quote !== "'") {
      attributes.set(name, take(BARE_VALUE));
      continue;
    }
    const end = xml.indexOf(quote, at + 1);
    attributes.set(name, decodeXML(xml.slice(at + 1, end < 0 ? undefined : end)));
    at = end < 0 ? xml.length : end + 1;
  }
  return { written, attributes, closed, next: at + 1 };
}

/** The value of an attribute, whatever its prefix; null where there is none. */
export function attributeOf(element: XmlElement, name: string): string | null {
  for (const [written, value] of element.attributes)
    if (written === name || written.endsWith(`:${name}`)) return value;
  return null;
}

/** Every element of that name at or below a list of nodes, in order. */
export function* elementsNamed(nodes: readonly XmlNode[], name: string): Generator<XmlElement> {
  for (const node of nodes) {
    if (node.kind === 'text') continue;
    if (node.name === name) yield node;
    yield* elementsNamed(node.children, name);
  }
}

/** All text at or below a node. */
export const textOf = (node: XmlNode): string =>
  node.kind === 'text' ? node.text : node.children.map(textOf).join('');
