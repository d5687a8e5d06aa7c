/**
 * WebVTT against cases that others wrote: web-platform-tests' file parsing and
 * cue text, and the tests of mozilla/vtt.js, gated on those that Chromium 156
 * agrees with. (vtt.js's counts of regions are left out: they are of an older
 * syntax that stood in the header.) What we write is read by the W3C's own parser.
 */
import { describe, expect, test } from 'vitest';
import { type CueNode, readCueText } from '#lib/transcript/cue-text.ts';
import { readWebVtt, type WebVttCue, type WebVttFile } from '#lib/transcript/webvtt-read.ts';
import { haveOutsideCases, outsideJson, outsideText } from '#tests/support/outside-cases.ts';

interface FileCase {
  readonly id: string;
  readonly vtt: string;
  readonly valid?: boolean;
  readonly cueCount: number;
  readonly checks: readonly { readonly cue: number; readonly prop: string; readonly equals: unknown }[];
  readonly chromiumCore: boolean;
}

interface CueTextCase {
  readonly file: string;
  readonly index: number;
  readonly text: string;
  readonly expectedTree: string;
}

const CORE = new Set(['id', 'startTime', 'endTime', 'text']);

/** A property as the Web's cue object names it; times in seconds. */
function propertyOf(file: WebVttFile, cue: WebVttCue | undefined, name: string): unknown {
  if (!cue) return undefined;
  const region = file.regions.findLast((one) => one.id === cue.settings.region);
  switch (name) {
    case 'startTime':
      return cue.startMs / 1000;
    case 'endTime':
      return cue.endMs / 1000;
    case 'id':
      return cue.id;
    case 'text':
      return cue.text;
    case 'region.lines':
      return region?.lines;
    case 'region.scroll':
      return region?.scroll;
    case 'region.regionAnchorX':
      return region?.regionAnchor[0];
    case 'region.regionAnchorY':
      return region?.regionAnchor[1];
    default:
      return (cue.settings as unknown as Record<string, unknown>)[name];
  }
}

/** What a case expects and we do not give; empty where all is met. */
function missed(one: FileCase, only?: ReadonlySet<string>): readonly string[] {
  const file = readWebVtt(outsideText(`webvtt/${one.vtt}`));
  const found: string[] = [];
  if (one.valid === false && file.signed) found.push('taken, though it does not begin as it must');
  if (file.cues.length !== one.cueCount) found.push(`${file.cues.length} cues, not ${one.cueCount}`);
  for (const check of one.checks) {
    if (only && !only.has(check.prop)) continue;
    const got = propertyOf(file, file.cues[check.cue], check.prop);
    if (got !== check.equals) found.push(`cue ${check.cue} ${check.prop}: ${got}, not ${check.equals}`);
  }
  return found;
}

/** A cue text's tree in the form of the html5lib tests, as web-platform-tests write it. */
function treeOf(nodes: readonly CueNode[], depth = 0): string {
  const lead = `| ${'  '.repeat(depth)}`;
  return nodes
    .map((node) => {
      if (node.kind === 'text') return `${lead}"${node.text}"`;
      if (node.kind === 'time') return `${lead}<?timestamp ${clock(node.atMs)}>`;
      const element = { c: 'span', v: 'span', lang: 'span' }[node.tag as string] ?? node.tag;
      const attributes = [
        node.classes.length > 0 ? `${lead}  class="${node.classes.join(' ')}"` : '',
        node.tag === 'lang' ? `${lead}  lang="${node.annotation}"` : '',
        node.tag === 'v' ? `${lead}  title="${node.annotation}"` : '',
      ];
      return [`${lead}<${element}>`, ...attributes, treeOf(node.children, depth + 1)]
        .filter(Boolean)
        .join('\n');
    })
    .join('\n');
}

const clock = (ms: number): string => {
  const part = (n: number, digits: number) => String(Math.floor(n)).padStart(digits, '0');
  return `${part(ms / 3_600_000, 2)}:${part((ms / 60_000) % 60, 2)}:${part((ms / 1000) % 60, 2)}.${part(ms % 1000, 3)}`;
};

describe.skipIf(!haveOutsideCases('webvtt'))('WebVTT files of web-platform-tests and vtt.js', () => {
  const cases = haveOutsideCases('webvtt')
    ? outsideJson<{ cases: FileCase[] }>('webvtt/expected.json').cases
    : [];
  const agreed = cases.filter((one) => one.chromiumCore);

  test.each(agreed)('$id: cues, ids, times and text', (one) => {
    expect(missed(one, CORE)).toEqual([]);
  });

  // Two are left: a region whose id is an empty text (section 6.2 passes over `id:`), and a position with an
  // alignment that the standard does not know (section 6.3 passes the setting over; so does Chromium).
  test('settings and regions of at least 97 in 100 cases', () => {
    const wrong = agreed.map((one) => [one.id, ...missed(one)]).filter((found) => found.length > 1);
    console.log(`WebVTT, all properties: ${agreed.length - wrong.length} of ${agreed.length}`);
    for (const [id, ...found] of wrong) console.log(`  ${id}: ${found.slice(0, 3).join('; ')}`);
    expect(1 - wrong.length / agreed.length).toBeGreaterThanOrEqual(0.97);
  });
});

describe.skipIf(!haveOutsideCases('webvtt'))('WebVTT cue text of web-platform-tests', () => {
  const cases = haveOutsideCases('webvtt') ? outsideJson<CueTextCase[]>('webvtt/cuetext-expected.json') : [];
  test.each(cases)('$file $index: $text', ({ text, expectedTree }) => {
    expect(treeOf(readCueText(text))).toBe(expectedTree);
  });
});
