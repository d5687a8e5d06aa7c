/** Arbitrary cues as a lesson holds them, for properties. */
import fc from 'fast-check';
import { type Cue, compareCues } from '#lib/transcript/cue.ts';
import { tidyCueText } from '#lib/transcript/tidy-text.ts';

const words = fc.oneof(
  fc.constantFrom(
    'Open the ring.',
    'a < b & c > d',
    '&amp; &lt; &#60;',
    '<b>not bold</b>',
    '<v Mara>not a voice',
    '{\\an8} {i}',
    '00:01.000 --> 00:02.000',
    '-->',
    'NOTE this',
    '12',
    'WEBVTT',
    'æøå ž 輪 🔗',
    '\u00a0two\u200espaces',
  ),
  fc.string({ maxLength: 30, unit: 'grapheme' }),
);

/** A cue's text: one to three lines, none blank. */
const text = fc
  .array(words, { minLength: 1, maxLength: 3 })
  .map((lines) => tidyCueText(lines.join('\n').replace(/[\uFEFF\uFFFD]/g, '')))
  .filter((said) => said !== '');

const settings = fc.constantFrom('', 'line:0', 'align:start position:10%,line-left', 'size:50% line:85%,end');

/** Cues in order of time; they may overlap. */
export const anyCues: fc.Arbitrary<readonly Cue[]> = fc
  .array(
    fc.record({ startMs: fc.nat(20_000_000), length: fc.integer({ min: 1, max: 60_000 }), text, settings }),
    {
      minLength: 1,
      maxLength: 12,
    },
  )
  .map((made) =>
    made
      .map(({ startMs, length, ...rest }, index) => ({
        id: `c${index}`,
        startMs,
        endMs: startMs + length,
        ...rest,
      }))
      .sort(compareCues),
  );

/** What a file keeps of cues: everything but their ids. */
export const spoken = (cues: readonly Cue[]) =>
  cues
    .map(({ startMs, endMs, text: said, settings: placed }) => ({
      startMs,
      endMs,
      text: said,
      settings: placed,
    }))
    // Cues that start and end together have no order of their own.
    .sort((a, b) => a.startMs - b.startMs || b.endMs - a.endMs || (a.text < b.text ? -1 : 1));
