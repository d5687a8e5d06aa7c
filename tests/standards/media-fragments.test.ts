/** Times in addresses against the W3C's test cases of Media Fragments URI 1.0. */
import { describe, expect, test } from 'vitest';
import { readFragment } from '#lib/time/media-fragment.ts';
import { haveOutsideCases, outsideJson } from '#tests/support/outside-cases.ts';

interface Parsed {
  readonly t?: readonly {
    readonly unit: string;
    readonly start: string;
    readonly end: string;
    readonly startNormalized?: number | '';
    readonly endNormalized?: number | '';
  }[];
}
interface FragmentCase {
  readonly id: string;
  readonly url: string;
  readonly parsed: { readonly query: Parsed; readonly hash: Parsed };
}

const present = haveOutsideCases('mediafragments');
const cases = present ? outsideJson<readonly FragmentCase[]>('mediafragments/testcases.json') : [];

/** What the reference gives, in our form; SMPTE times come as text and are counted below. */
function expected(parsed: Parsed) {
  const t = parsed.t?.at(-1);
  if (!t || t.unit === 'clock') return null;
  const ms = (seconds: number | '' | undefined) =>
    typeof seconds === 'number' ? Math.round(seconds * 1000) : null;
  if (t.unit === 'npt') return { startMs: ms(t.startNormalized) ?? 0, endMs: ms(t.endNormalized) };
  return { startMs: smpteMs(t.start, t.unit) ?? 0, endMs: smpteMs(t.end, t.unit) };
}

function smpteMs(text: string, unit: string): number | null {
  if (text === '') return null;
  const [h = 0, m = 0, s = 0, frames = 0] = text.split(':').map(Number);
  return (
    (h * 3600 + m * 60 + s) * 1000 + Math.round((Math.floor(frames) * 1000) / (unit.includes('25') ? 25 : 30))
  );
}

describe.skipIf(!present)('cases of the W3C', () => {
  test.each(cases)('$id $url', ({ url, parsed }) => {
    const { hash, search } = new URL(url);
    expect(readFragment(hash)).toEqual(expected(parsed.hash));
    expect(readFragment(search)).toEqual(expected(parsed.query));
  });
});

test('drop-frame time code keeps time: 1:00:00:00 is an hour to within a frame', () => {
  // SMPTE ST 12-1: drop-frame counting is off by less than 2 frames in the hour (from memory).
  const read = readFragment('#t=smpte-30-drop:1:00:00:00');
  expect(Math.abs((read?.startMs ?? 0) - 3_600_000)).toBeLessThan(34);
});
