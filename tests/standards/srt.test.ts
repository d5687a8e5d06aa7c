/**
 * SRT against files of other projects. SRT has no standard: where another
 * reader's policy differs from ours, the case is named here with our reason,
 * and what we did must be told to the teacher.
 */
import { describe, expect, test } from 'vitest';
import { decodeAs, decodeBytes } from '#lib/transcript/encoding.ts';
import { readTranscript } from '#lib/transcript/read-transcript.ts';
import { readSrt } from '#lib/transcript/srt-read.ts';
import { haveOutsideCases, outsideBytes, outsideFiles, outsideJson } from '#tests/support/outside-cases.ts';

interface SrtCase {
  readonly file: string;
  readonly expected:
    | readonly { readonly start: number; readonly end: number; readonly text: string }[]
    | null;
}

/** Cases that another reader decides otherwise, with the loss by which we tell it. */
const DECIDED_OTHERWISE: Readonly<Record<string, string>> = {
  // androidx drops a cue whose number is missing; we take it and say so.
  'media3-typical_missing_sequence.srt': 'number-missing',
};

const textOf = (file: string): string => {
  const bytes = outsideBytes(`srt/${file}`);
  const decoded = decodeBytes(bytes);
  return decoded.kind === 'text' ? decoded.text : decodeAs(bytes, decoded.candidates[0]?.encoding ?? 'utf-8');
};

const present = haveOutsideCases('srt');
const files = present ? outsideFiles('srt').filter((name) => name.endsWith('.srt')) : [];
const cases = present
  ? outsideJson<SrtCase[]>('srt/manifest.json').filter(
      ({ file, expected }) => expected && files.includes(file),
    )
  : [];

describe.skipIf(!present)('SRT files of other projects', () => {
  test.each(cases.filter(({ file }) => !(file in DECIDED_OTHERWISE)))('$file: cues, times, text', (one) => {
    const { cues } = readSrt(textOf(one.file));
    const got = cues.map(({ startMs, endMs, text }) => ({ start: startMs / 1000, end: endMs / 1000, text }));
    expect(got).toEqual(one.expected);
  });

  test.each(cases.filter(({ file }) => file in DECIDED_OTHERWISE))(
    '$file: decided otherwise, and told',
    ({ file }) => {
      const { losses } = readSrt(textOf(file));
      expect(losses.map((loss) => loss.code)).toContain(DECIDED_OTHERWISE[file]);
    },
  );

  test('the share of cases that agree', () => {
    const agreeing = cases.filter(({ file }) => !(file in DECIDED_OTHERWISE)).length;
    console.log(`SRT: ${agreeing} of ${cases.length} cases as their readers have them`);
    expect(agreeing / cases.length).toBeGreaterThanOrEqual(0.85);
  });

  test.each(files)('%s is read, asked about or refused, and never throws', (file) => {
    const read = readTranscript(outsideBytes(`srt/${file}`), { recordingMs: null, newId: () => 'id' });
    expect(read.ok ? read.value.kind : read.fault.code).toMatch(/^(read|which-encoding|transcript-.*)$/);
  });

  test('an encoding that only a reader can tell is asked about, the likeliest first', () => {
    const read = readTranscript(outsideBytes('srt/cdown-gb2312.srt'), {
      recordingMs: null,
      newId: () => 'id',
    });
    if (!read.ok || read.value.kind !== 'which-encoding') throw new Error('not asked');
    expect(read.value.candidates[0]).toMatchObject({ encoding: 'gb18030' });
    expect(read.value.candidates[0]?.sample).toContain('宇宙守护神');
  });
});
