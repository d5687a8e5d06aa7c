/** What we write is what we, and others, read back. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Cue } from '#lib/transcript/cue.ts';
import { readTranscript } from '#lib/transcript/read-transcript.ts';
import { writeSrt } from '#lib/transcript/srt-write.ts';
import { writeStampedText } from '#lib/transcript/stamped-text-write.ts';
import { writeWebVtt } from '#lib/transcript/webvtt-write.ts';
import { readWithW3cParser } from '#tests/support/webvtt-readers.ts';
import { anyCues, spoken } from './a-transcript.ts';

let made = 0;
const readBack = (file: string) => {
  const read = readTranscript(new TextEncoder().encode(file), {
    recordingMs: null,
    newId: () => `id-${made++}`,
  });
  if (!read.ok || read.value.kind !== 'read') throw new Error(`not read: ${JSON.stringify(read)}`);
  return read.value;
};

describe('WebVTT', () => {
  test('comes back as it was, with nothing lost', () => {
    fc.assert(
      fc.property(anyCues, (cues) => {
        const back = readBack(writeWebVtt(cues));
        expect(spoken(back.cues)).toEqual(spoken(cues));
        expect(back.losses).toEqual([]);
      }),
    );
  });

  test('the W3C’s parser finds no error in it and reads the same cues', () => {
    fc.assert(
      fc.property(anyCues, (cues) => {
        const read = readWithW3cParser(writeWebVtt(cues));
        expect(read.errors).toEqual([]);
        expect(read.cues.map((cue) => Math.round(cue.startTime * 1000))).toEqual(
          cues.map((cue) => cue.startMs),
        );
      }),
    );
  });

  test('the same cues in another order give the same file', () => {
    fc.assert(
      fc.property(anyCues, (cues) => {
        expect(writeWebVtt(cues.toReversed())).toBe(writeWebVtt(cues));
      }),
    );
  });
});

describe('SRT', () => {
  test('comes back as it was but for settings, which it cannot hold', () => {
    fc.assert(
      fc.property(anyCues, (cues) => {
        const bare = cues.map((cue) => ({ ...cue, settings: '' }));
        expect(spoken(readBack(writeSrt(cues)).cues)).toEqual(spoken(bare));
      }),
    );
  });
});

describe('stamped text', () => {
  test('says each cue at its second', () => {
    const cues: Cue[] = [
      { id: 'a', startMs: 0, endMs: 4_000, text: 'Two rings,\nboth open.', settings: '' },
      { id: 'b', startMs: 3_661_500, endMs: 3_664_000, text: 'Close them.', settings: '' },
    ];
    const file = writeStampedText(cues);
    expect(file).toBe('[0:00] Two rings, both open.\n[1:01:01] Close them.\n');
    expect(readBack(file).cues.map((cue) => cue.startMs)).toEqual([0, 3_661_000]);
  });
});
