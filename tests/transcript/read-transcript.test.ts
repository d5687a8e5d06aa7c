import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cue } from '#lib/transcript/cue.ts';
import { loss } from '#lib/transcript/loss.ts';
import { readTranscript } from '#lib/transcript/read-transcript.ts';
import { haveOutsideCases, outsideJson } from '#tests/support/outside-cases.ts';

let made = 0;
const newId = () => `id-${made++}`;
const bytesOf = (text: string) => new TextEncoder().encode(text);
const read = (text: string, recordingMs: number | null = null) => {
  const got = readTranscript(bytesOf(text), { recordingMs, newId });
  if (!got.ok || got.value.kind !== 'read') throw new Error(`not read: ${JSON.stringify(got)}`);
  return got.value;
};
const timed = (text: string, recordingMs: number | null = null) =>
  read(text, recordingMs).cues.map((one) => [one.startMs, one.endMs, one.text]);
const lossesOf = (text: string) => read(text).losses.map((one) => [one.line, one.code]);

describe('stamped text', () => {
  test.each([
    ['[1:02] Open it.', 62_000],
    ['(1:02) Open it.', 62_000],
    ['0:01:02 Open it.', 62_000],
    ['01:02.345 - Open it.', 62_345],
    ['1:02 – Open it.', 62_000],
    ['[01:02,5]: Open it.', 62_500],
    ['1:01:02\nOpen it.', 3_662_000],
  ])('%j begins there', (text, startMs) => {
    expect(read(text).cues).toMatchObject([{ startMs, text: 'Open it.' }]);
  });

  test('a paragraph runs until the next time, the last one until the recording ends', () => {
    expect(timed('[0:00] Two sizes\nof rings.\n\nCopper first.\n\n[0:10] Open it.', 25_000)).toEqual([
      [0, 10_000, 'Two sizes\nof rings.\nCopper first.'],
      [10_000, 25_000, 'Open it.'],
    ]);
  });

  test('without a recording the last one lasts as long as it takes to read', () => {
    expect(timed(`[0:00] ${'word '.repeat(30).trim()}`)).toEqual([[0, 9_934, 'word '.repeat(30).trim()]]);
  });

  test('text before the first time is listed, not dropped in silence', () => {
    expect(read('Bracelet lesson\nrough notes\n\n[0:05] Open it.').losses).toEqual([
      { code: 'text-before-first-time', line: 1, text: 'Bracelet lesson\nrough notes' },
    ]);
  });

  test('a number in brackets, a ratio or a wrong minute is no time', () => {
    expect(timed('[0:00] Look:\n[12] is the note\n1:75 is no time\n3:1ratio neither')).toHaveLength(1);
  });
});

describe('WebVTT in a lesson', () => {
  test('formatting goes, words stay, each with its line', () => {
    const file =
      'WEBVTT\n\nNOTE made by hand\n\n00:00.000 --> 00:02.000 line:0 region:low\n<i>Open</i> it &amp; wait\n';
    expect(timed(file)).toEqual([[0, 2_000, 'Open it & wait']]);
    expect(read(file).cues[0]?.settings).toBe('line:0');
    expect(lossesOf(file)).toEqual([
      [3, 'note'],
      [5, 'formatting'],
      [5, 'setting'],
    ]);
  });

  test('one voice is left out, several are written where they change', () => {
    const cueOf = (at: number, text: string) => `00:0${at}.000 --> 00:0${at + 1}.000\n${text}\n\n`;
    const one = `WEBVTT\n\n${cueOf(0, '<v Mara>Open it.')}${cueOf(1, '<v Mara>Close it.')}`;
    expect(timed(one).map(([, , text]) => text)).toEqual(['Open it.', 'Close it.']);
    expect(lossesOf(one).map(([, code]) => code)).toEqual(['voice', 'voice']);
    const two = `${one}${cueOf(2, '<v Ilo>Why?')}${cueOf(3, '<v Ilo>I see.')}`;
    expect(timed(two).map(([, , text]) => text)).toEqual([
      'Mara: Open it.',
      'Close it.',
      'Ilo: Why?',
      'I see.',
    ]);
  });

  test('a cue that ends before it starts keeps its words and gets time to be read', () => {
    const file = 'WEBVTT\n\n00:05.000 --> 00:04.000\nOpen it.\n\n00:05.400 --> 00:08.000\nClose it.\n';
    expect(timed(file)[0]).toEqual([5_000, 5_400, 'Open it.']);
    expect(lossesOf(file)).toEqual([[3, 'end-before-start']]);
  });

  test('a cue too long is parted, none of its words are lost', () => {
    const words = 'open and close '.repeat(800).trim();
    const parts = read(`WEBVTT\n\n00:00.000 --> 00:40.000\n${words}\n`).cues;
    expect(parts.length).toBe(3);
    expect(parts.map((one) => one.text).join(' ')).toBe(words);
    expect(parts[0]?.endMs).toBe(parts[1]?.startMs);
    expect(parts.at(-1)?.endMs).toBe(40_000);
  });
});

describe('encodings', () => {
  const srt = (text: string) => `1\n00:00:01,000 --> 00:00:02,000\n${text}\n`;

  test('UTF-16 and UTF-32 by their marks', () => {
    const wide = (text: string, size: 2 | 4) => {
      const view = new DataView(new ArrayBuffer((text.length + 1) * size));
      [...`\uFEFF${text}`].forEach((character, index) => {
        const code = character.codePointAt(0) ?? 0;
        if (size === 2) view.setUint16(index * 2, code, true);
        else view.setUint32(index * 4, code, true);
      });
      return new Uint8Array(view.buffer);
    };
    for (const size of [2, 4] as const) {
      const got = readTranscript(wide(srt('Öffne ihn'), size), { recordingMs: null, newId });
      expect(got).toMatchObject({ ok: true, value: { cues: [{ text: 'Öffne ihn' }] } });
    }
  });

  test('bytes that are not UTF-8 are asked about, and read as chosen', () => {
    const bytes = Uint8Array.from(srt('\u00d6ffne den Ring f\u00fcr sie'), (character) =>
      character.charCodeAt(0),
    );
    const asked = readTranscript(bytes, { recordingMs: null, newId });
    if (!asked.ok || asked.value.kind !== 'which-encoding') throw new Error('not asked');
    const western = asked.value.candidates.find((one) => one.encoding === 'windows-1252');
    expect(western?.sample).toBe('Öffne den Ring für sie');
    const got = readTranscript(bytes, { recordingMs: null, newId, encoding: 'windows-1252' });
    expect(got).toMatchObject({ ok: true, value: { cues: [{ text: 'Öffne den Ring für sie' }] } });
  });

  test('UTF-16 without a mark is asked about, though it is valid UTF-8 byte by byte', () => {
    const wide = Uint8Array.from(Array.from(bytesOf(srt('Open it'))).flatMap((byte) => [byte, 0]));
    expect(readTranscript(wide, { recordingMs: null, newId })).toMatchObject({
      value: { kind: 'which-encoding', candidates: [{ encoding: 'utf-16le', sample: 'Open it' }, {}] },
    });
  });
});

describe('what is no transcript', () => {
  test.each([
    ['', 'transcript-empty'],
    ['%PDF-1.7 rest', 'transcript-not-text'],
    ['{\\rtf1 words}', 'transcript-not-text'],
    ['<!doctype html><p>Hello', 'transcript-not-text'],
    ['12 34 --- 56', 'transcript-without-times'],
    ['{"a": "words"}', 'transcript-without-times'],
    ['WEBVTT\n\n', 'transcript-without-cues'],
  ])('%j: %s', (text, code) => {
    expect(readTranscript(bytesOf(text), { recordingMs: null, newId })).toMatchObject({
      ok: false,
      fault: { code },
    });
  });
});

describe('whatever the bytes', () => {
  const sound = (bytes: Uint8Array) => {
    const got = readTranscript(bytes, { recordingMs: null, newId });
    if (!got.ok || got.value.kind !== 'read') return;
    for (const one of got.value.cues) cue.parse(one);
    for (const one of got.value.losses) loss.parse(one);
    const starts = got.value.cues.map((one) => one.startMs);
    expect(starts).toEqual(starts.toSorted((a, b) => a - b));
  };

  test('no bytes throw, and every cue that comes of them is sound', () => {
    fc.assert(fc.property(fc.uint8Array({ maxLength: 400 }), sound));
  });

  test('nor does text made of the formats’ own signs', () => {
    const piece = fc.oneof(
      fc.constantFrom(
        'WEBVTT',
        '\n',
        '\r\n',
        '\r',
        '\n\n',
        '-->',
        '00:00:01.000',
        '00:02,5',
        '99999999:00:00.000',
      ),
      fc.constantFrom(
        '1',
        '[1:02]',
        '(0:05)',
        ' ',
        'STYLE',
        'REGION',
        'NOTE',
        '<v A>',
        '<',
        '&',
        'line:-1',
        '\0',
      ),
      fc.constantFrom('<ruby>a<rt>b', '</b>', '{\\an8}', '-0:00:01,000', 'x'.repeat(6_000)),
      fc.string({ maxLength: 12 }),
    );
    const start = fc.constantFrom('', 'WEBVTT\n\n', '1\n00:00:01,000 --> 00:00:00,500\n', '[0:01] ');
    fc.assert(
      fc.property(start, fc.array(piece, { maxLength: 40 }), (head, pieces) =>
        sound(bytesOf(head + pieces.join(''))),
      ),
      { numRuns: 500 },
    );
  });

  test.skipIf(!haveOutsideCases('adversarial'))(
    'nor do payloads made to break pages; their words arrive as words',
    () => {
      const payloads = ['h5sc.json', 'dompurify.json'].flatMap((file) =>
        textsIn(outsideJson<unknown>(`adversarial/${file}`)),
      );
      expect(payloads.length).toBeGreaterThan(300);
      for (const payload of payloads) {
        sound(bytesOf(`WEBVTT\n\n00:00.000 --> 00:01.000\n${payload}\n`));
        sound(bytesOf(`1\n00:00:00,000 --> 00:00:01,000\n${payload}\n`));
        sound(bytesOf(`[0:01] ${payload}`));
      }
    },
  );
});

/** Every text inside a piece of JSON. */
function textsIn(json: unknown): readonly string[] {
  if (typeof json === 'string') return [json];
  return typeof json === 'object' && json !== null ? Object.values(json).flatMap(textsIn) : [];
}
