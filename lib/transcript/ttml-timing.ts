/**
 * When each piece of a TTML document is shown: times nest (a child's begin
 * counts from its parent's, or, in sequence, from the end of the one before
 * it) and a parent's end cuts its children's (W3C TTML 1, section 10.4).
 * Seconds throughout; an end that nothing sets is Infinity.
 */
import { readTtmlTime, type TtmlClock } from './ttml-time.ts';
import { attributeOf, type XmlElement, type XmlNode } from './xml.ts';

/** A stretch of time, seconds. */
export interface Shown {
  readonly from: number;
  readonly to: number;
}

/** Words, or a line break, and when they are shown; in the order of the document. */
export interface Leaf {
  readonly text: string;
  /** Spaces and line breaks are kept as written. */
  readonly preserve: boolean;
  readonly shown: readonly Shown[];
}

export interface TimedParagraph {
  readonly element: XmlElement;
  /** Elements that it stands in, outermost first. */
  readonly within: readonly XmlElement[];
  readonly leaves: readonly Leaf[];
}

/** An element that is hidden and shown more often than this flickers; the rest is not looked at. */
const MOST_SETS = 100;

interface Place {
  readonly from: number;
  readonly to: number;
  readonly within: readonly XmlElement[];
  readonly preserve: boolean;
  /** When no element around it is hidden. */
  readonly visible: readonly Shown[];
}

/** The paragraphs of a body, in the order of the document. @param regions those of the head @param unread is told of times that cannot be read. */
export function timeParagraphs(
  body: XmlElement,
  regions: readonly XmlElement[],
  clock: TtmlClock,
  unread: (element: XmlElement, written: string) => void,
): readonly TimedParagraph[] {
  const paragraphs: TimedParagraph[] = [];
  const always = { from: 0, to: Number.POSITIVE_INFINITY };
  const timeOf = (element: XmlElement, name: string): number | null => {
    const written = attributeOf(element, name);
    if (written === null) return null;
    const seconds = readTtmlTime(written, clock);
    if (seconds === null) unread(element, `${name}="${written}"`);
    return seconds;
  };

  /** @returns where the element ends. */
  function time(element: XmlElement, around: Place, leaves: Leaf[]): number {
    const from = around.from + (timeOf(element, 'begin') ?? 0);
    const duration = timeOf(element, 'dur');
    const end = timeOf(element, 'end');
    const to = Math.min(
      around.to,
      duration === null ? Number.POSITIVE_INFINITY : from + duration,
      end === null ? Number.POSITIVE_INFINITY : around.from + end,
    );
    const space = element.attributes.get('xml:space');
    const inside: Place = {
      from,
      to,
      within: [...around.within, element],
      preserve: space ? space === 'preserve' : around.preserve,
      visible: overlaps(overlaps(around.visible, visibleSpans(element, from, to)), regionSpans(element)),
    };
    const own = element.name === 'p' ? [] : leaves;
    const contentEnd = timeChildren(element, inside, own);
    if (element.name === 'p') paragraphs.push({ element, within: around.within, leaves: own });
    return duration === null && end === null ? Math.min(to, contentEnd) : to;
  }

  /** @returns where the last child ends: the latest of them, or the last in sequence. */
  function timeChildren(element: XmlElement, place: Place, leaves: Leaf[]): number {
    const inSequence = attributeOf(element, 'timeContainer') === 'seq';
    const holdsWords = element.name === 'p' || element.name === 'span';
    let latest = place.from;
    for (const child of element.children) {
      const from = inSequence ? latest : place.from;
      const words = holdsWords ? wordsOf(child) : null;
      if (words !== null) {
        // Words last as long as they may, and in a sequence no time at all.
        const to = inSequence ? from : place.to;
        const shown = overlaps(place.visible, [{ from, to }]);
        leaves.push({ text: words, preserve: place.preserve, shown });
        latest = Math.max(latest, to);
      } else if (child.kind === 'element' && CONTENT.has(child.name)) {
        latest = Math.max(latest, time(child, { ...place, from }, leaves));
      }
    }
    return latest;
  }

  /** When an element is not hidden: by its own display, or by a `set` while that lasts. */
  function visibleSpans(element: XmlElement, from: number, to: number): readonly Shown[] {
    const own = [element, ...element.children].find(
      (one) =>
        one.kind === 'element' && (one === element || one.name === 'style') && attributeOf(one, 'display'),
    );
    const base = own?.kind !== 'element' || attributeOf(own, 'display') !== 'none';
    let spans: readonly Shown[] = base ? [{ from, to }] : [];
    const sets = element.children.filter((child) => child.kind === 'element' && child.name === 'set');
    for (const child of sets.slice(0, MOST_SETS)) {
      if (child.kind !== 'element') continue;
      const display = attributeOf(child, 'display');
      if (display === null) continue;
      const begin = from + (timeOf(child, 'begin') ?? 0);
      const length = timeOf(child, 'dur') ?? Number.POSITIVE_INFINITY;
      const until = from + (timeOf(child, 'end') ?? Number.POSITIVE_INFINITY);
      const set = { from: begin, to: Math.min(begin + length, until, to) };
      const rest = without(spans, set);
      spans =
        display === 'none' || set.to <= set.from ? rest : [...rest, set].sort((a, b) => a.from - b.from);
    }
    return spans;
  }

  // A region can come, go and be hidden; so does what stands in it.
  const shownRegions = new Map(
    regions.map((region) => {
      const from = timeOf(region, 'begin') ?? 0;
      const duration = timeOf(region, 'dur') ?? Number.POSITIVE_INFINITY;
      const to = Math.min(from + duration, timeOf(region, 'end') ?? Number.POSITIVE_INFINITY);
      return [attributeOf(region, 'id'), visibleSpans(region, from, to)] as const;
    }),
  );
  const regionSpans = (element: XmlElement): readonly Shown[] =>
    shownRegions.get(attributeOf(element, 'region')) ?? [always];

  time(body, { ...always, within: [], preserve: false, visible: [always] }, []);
  return paragraphs;
}

const CONTENT = new Set(['div', 'p', 'span']);

function wordsOf(node: XmlNode): string | null {
  if (node.kind === 'text') return node.text;
  return node.name === 'br' ? '\n' : null;
}

function overlaps(some: readonly Shown[], others: readonly Shown[]): readonly Shown[] {
  return some.flatMap((one) =>
    others
      .map((other) => ({ from: Math.max(one.from, other.from), to: Math.min(one.to, other.to) }))
      .filter(({ from, to }) => to > from),
  );
}

function without(spans: readonly Shown[], cut: Shown): readonly Shown[] {
  return spans
    .flatMap((span) => [
      { from: span.from, to: Math.min(span.to, cut.from) },
      { from: Math.max(span.from, cut.to), to: span.to },
    ])
    .filter(({ from, to }) => to > from);
}
