/**
 * Reads TTML and its IMSC text profile (W3C TTML 1, W3C TTML Profiles for
 * Internet Media Subtitles and Captions): what is shown when, as words with
 * line breaks. Colours, places and fonts are named as lost. Never throws.
 */
import { readingMs } from './found-cue.ts';
import { type Loss, lossOf } from './loss.ts';
import { readTtmlClock } from './ttml-time.ts';
import { type Leaf, type TimedParagraph, timeParagraphs } from './ttml-timing.ts';
import { normaliseLines } from './webvtt-read.ts';
import { attributeOf, elementsNamed, readXml, textOf, type XmlElement } from './xml.ts';

/** What one paragraph shows from one moment to another; several where its words come and go. */
export interface TtmlCue {
  /** Line of its paragraph, from 1. */
  readonly line: number;
  readonly startMs: number;
  readonly endMs: number;
  readonly text: string;
  /** Who speaks, or empty. */
  readonly voice: string;
}

/** A paragraph with more moments than this at which its words change is taken whole. */
const MOST_MOMENTS = 64;

/** Whether a text is a TTML document, by its first element. */
export function isTtml(text: string): boolean {
  if (!/^\uFEFF?\s*</.test(text)) return false;
  const first = readXml(text.slice(0, 20_000)).find((node) => node.kind === 'element');
  return first?.kind === 'element' && first.name === 'tt';
}

/** Reads a TTML file from decoded text. @param recordingMs ends what nothing else ends, where it is known. */
export function readTtml(
  text: string,
  recordingMs: number | null,
): { readonly cues: readonly TtmlCue[]; readonly losses: readonly Loss[] } {
  const root: XmlElement | undefined = elementsNamed(readXml(normaliseLines(text)), 'tt').next().value;
  if (!root) return { cues: [], losses: [] };
  const losses: Loss[] = [];
  const body = root.children.find((node) => node.kind === 'element' && node.name === 'body');
  losses.push(...headLosses(root));
  const timeBase = attributeOf(root, 'timeBase');
  if (timeBase !== null && timeBase !== 'media') losses.push(lossOf('time-base', root.line, timeBase));
  if (body?.kind !== 'element') return { cues: [], losses };

  const clock = readTtmlClock((name) => attributeOf(root, name));
  const paragraphs = timeParagraphs(
    body,
    [...elementsNamed(root.children, 'region')],
    clock,
    (element, written) => losses.push(lossOf('time-unreadable', element.line, written)),
  );
  const voices = voiceNames(root);
  const cues = paragraphs.flatMap((paragraph) => {
    losses.push(...markingLost(paragraph));
    return cuesOfParagraph(paragraph, voices, recordingMs, losses);
  });
  return { cues, losses };
}

function cuesOfParagraph(
  paragraph: TimedParagraph,
  voices: ReadonlyMap<string, string>,
  recordingMs: number | null,
  losses: Loss[],
): readonly TtmlCue[] {
  const { line } = paragraph.element;
  const leaves = paragraph.leaves.filter(({ shown }) => shown.length > 0);
  const all = leaves.flatMap(({ shown }) => shown.flatMap(({ from, to }) => [from, to]));
  let moments = [...new Set(all)].sort((a, b) => a - b);
  if (moments.length > MOST_MOMENTS) {
    losses.push(lossOf('word-times', line, linesOf(leaves)));
    moments = [moments[0] ?? 0, moments.at(-1) ?? 0];
  }
  const voice = voiceOf(paragraph, voices);
  const cues: TtmlCue[] = [];
  for (let at = 0; at + 1 < moments.length; at += 1) {
    const [from = 0, to = 0] = [moments[at], moments[at + 1]];
    const whole = moments.length === 2;
    const text = linesOf(whole ? leaves : leaves.filter((leaf) => shownAt(leaf, from)));
    const before = cues.at(-1);
    const startMs = Math.round(from * 1000);
    let endMs = Math.round(to * 1000);
    if (to === Number.POSITIVE_INFINITY) {
      endMs = recordingMs !== null && recordingMs > startMs ? recordingMs : startMs + readingMs(text);
      if (text !== '') losses.push(lossOf('end-missing', line, text));
    }
    if (before && before.text === text && before.endMs === startMs)
      cues[cues.length - 1] = { ...before, endMs };
    else cues.push({ line, startMs, endMs, text, voice });
  }
  if (cues.every(({ text }) => text === '')) losses.push(lossOf('cue-empty', line, ''));
  return cues.filter(({ text }) => text !== '');
}

const shownAt = ({ shown }: Leaf, at: number): boolean => shown.some(({ from, to }) => from <= at && at < to);

/** Words of several leaves as lines: spaces count once unless they are to be kept, and never at a line's edge. */
function linesOf(leaves: readonly Leaf[]): string {
  return leaves
    .map(({ text, preserve }) => (preserve || text === '\n' ? text : text.replace(/\s+/g, ' ')))
    .join('')
    .replace(/ {2,}/g, ' ')
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '')
    .join('\n');
}

/** Names of those who speak, by the ids of their agents. */
function voiceNames(root: XmlElement): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  for (const agent of elementsNamed(root.children, 'agent')) {
    const id = attributeOf(agent, 'id');
    const name = elementsNamed(agent.children, 'name').next().value;
    if (id !== null && name) names.set(id, textOf(name).replace(/\s+/g, ' ').trim());
  }
  return names;
}

function voiceOf({ element, within }: TimedParagraph, names: ReadonlyMap<string, string>): string {
  if (names.size === 0) return '';
  const inner = [...elementsNamed(element.children, 'span')].find(
    (span) => attributeOf(span, 'agent') !== null,
  );
  const who = [inner, element, ...within.toReversed()].find(
    (one) => one && attributeOf(one, 'agent') !== null,
  );
  return (who && names.get(attributeOf(who, 'agent')?.trim().split(/\s+/)[0] ?? '')) ?? '';
}

/** Elements of the head that a transcript has no place for. */
const HEAD = [
  ['style', 'style'],
  ['region', 'region'],
  ['title', 'note'],
  ['desc', 'note'],
  ['copyright', 'note'],
] as const;

function headLosses(root: XmlElement): readonly Loss[] {
  const head = root.children.find((node) => node.kind === 'element' && node.name === 'head');
  if (head?.kind !== 'element') return [];
  const agents = new Set([...elementsNamed(head.children, 'agent')]);
  return HEAD.flatMap(([name, code]) =>
    [...elementsNamed(head.children, name)]
      .filter((element) => !agents.has(element))
      .map((element) =>
        lossOf(code, element.line, textOf(element).trim() || (attributeOf(element, 'id') ?? '')),
      ),
  );
}

function markingLost({ element, within }: TimedParagraph): readonly Loss[] {
  const losses: Loss[] = [];
  const styled = (one: XmlElement) =>
    [...one.attributes.keys()].filter((name) => name === 'style' || name.startsWith('tts:'));
  const spans = [...elementsNamed(element.children, 'span')];
  const marking = new Set([element, ...spans].flatMap(styled));
  if (marking.size > 0) losses.push(lossOf('formatting', element.line, [...marking].join(', ')));
  const region = [element, ...within.toReversed()]
    .map((one) => attributeOf(one, 'region'))
    .find((name) => name !== null);
  if (region) losses.push(lossOf('place', element.line, region));
  const id = attributeOf(element, 'id');
  if (id !== null && !/^\D{0,12}\d+$/.test(id)) losses.push(lossOf('cue-name', element.line, id));
  return losses;
}
