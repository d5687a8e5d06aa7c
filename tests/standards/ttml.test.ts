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
