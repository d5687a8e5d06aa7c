/**
 * Every reader takes any input: files that are whole, bent in random places
 * and cut, and strings of nothing but signs that mean something. Nothing
 * throws, and what comes out holds to the rules. A small number of cases runs
 * always; `FUZZ_CASES=100000` runs as many for each reader.
 */
import { describe, expect, test } from 'vitest';
import { chapter } from '#lib/chapters/chapter.ts';
import { readChapters } from '#lib/chapters/chapters-read.ts';
import { readFragment } from '#lib/time/media-fragment.ts';
import { CAPTION_PROFILES } from '#lib/transcript/caption-profile.ts';
import { cue } from '#lib/transcript/cue.ts';
import { readCueText } from '#lib/transcript/cue-text.ts';
import { fitCaptions } from '#lib/transcript/fit-captions.ts';
import { readTranscript } from '#lib/transcript/read-transcript.ts';

const CASES = Number(process.env['FUZZ_CASES'] ?? 150);

const SEEDS = {
  webvtt:
    'WEBVTT head\nX: y\n\nSTYLE\n::cue { color: red }\n\nREGION\nid:a width:40% lines:3 scroll:up\n\nNOTE aside\n\nname\n00:01.000 --> 00:04.000 region:a line:85%,end position:10% size:80% align:start\n<v.loud Mara>Open <b>two</b> &amp; <ruby>輪<rt>ring</rt></ruby> <00:02.000>now</v>\n\n00:00:05.000 --> 00:00:04.000\nback\n',
  srt: '1\n00:00:01,000 --> 00:00:02,500 X1:10 X2:20\n<i>Open</i> {\\an8}the ring &amp; wait\n\n3\n00:00: 02, 5 --> 0:0:3,25\nClose\n\nstray words\n\n4\n-00:00:05,000 --> 00:00:06,000\nnever\n',
  ttml: '<?xml version="1.0" encoding="UTF-8"?><tt xmlns="http://www.w3.org/ns/ttml" xmlns:ttp="http://www.w3.org/ns/ttml#parameter" xmlns:tts="http://www.w3.org/ns/ttml#styling" ttp:frameRate="24" ttp:tickRate="10"><head><layout><region xml:id="r"/></layout></head><body timeContainer="par"><div begin="1s" region="r"><p begin="00:00:01:12" dur="5s" tts:color="red">Open <span begin="10t">two<br/>rings</span> &lt; <set tts:display="none" begin="2s"/></p><p timeContainer="seq"><span dur="1s">a</span><span dur="24f">b</span></p></div></body></tt>',
  'stamped text': 'before\n[0:00] Open\nit (not) -\n\n0:01:02.5 - close\n(1:10) and again\n[1:05] back\n',
  script:
    'Open two small rings. Pass them through, "slowly". 18 gauge!\n\nThen close both: one, two; four point five mm…\n',
  'chapter lines':
    'Our lesson\n- 0:00 Hello\n1. [1:02:03] Clasp\n0:30 - 1:00 Setup\nCloser (1:40)\n2:00\nTitle below\n',
  'JSON chapters':
    '{"version":"1.2.0","title":"All","chapters":[{"startTime":0,"title":"A","img":"x"},{"startTime":12.5,"endTime":"13","toc":false},{"startTime":-3}]}',
  ffmetadata:
    ';FFMETADATA1\ntitle=a\\=b\n#c\n[CHAPTER]\nTIMEBASE=1/1000\nSTART=0\nEND=10\ntitle=x\\\ny\\\\\n[STREAM]\nq=1\n[CHAPTER]\nSTART=5\n',
} as const;

const SIGNS = [
  ...'<>&;:.,-\\/[](){}=#%"\'\n\r\t \0\uFEFF\u2028\uD800é輪0159',
  ...[
    '-->',
    '\n\n',
    '&#',
    '</',
    '<!--',
    ']]>',
    '<![CDATA[',
    '<?',
    '00:00:01.000',
    '0:59',
    '99999999999',
    'WEBVTT',
    'NOTE',
  ],
  ...[
    '[CHAPTER]\n',
    'title=',
    '<p begin="1s">',
    '</span>',
    '<br/>',
    'timeContainer="seq"',
    '{"',
    '":',
    '1e9',
  ],
];

/** A stream of numbers from 0 to below 1 that is the same in every run (mulberry32, public domain). */
function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

function bent(seed: string, random: () => number): string {
  if (random() < 0.1) {
    return Array.from(
      { length: 1 + Math.floor(random() * 40) },
      () => SIGNS[Math.floor(random() * SIGNS.length)],
    ).join('');
  }
  let text = seed;
  for (let times = 1 + Math.floor(random() * 5); times > 0; times -= 1) {
    const at = Math.floor(random() * (text.length + 1));
    const length = Math.floor(random() ** 3 * 40);
    const piece =
      random() < 0.6
        ? (SIGNS[Math.floor(random() * SIGNS.length)] ?? '')
        : text.slice(Math.floor(random() * text.length)).slice(0, 60);
    text = text.slice(0, at) + (random() < 0.25 ? '' : piece) + text.slice(at + length);
  }
  return text;
}

let made = 0;
const newId = () => `id-${made++}`;
const encode = new TextEncoder();

function check(text: string): void {
  const read = readTranscript(encode.encode(text), {
    recordingMs: 60_000,
    pauses: [{ startMs: 5, endMs: 90 }],
    newId,
  });
  if (read.ok && read.value.kind === 'read')
    for (const one of read.value.cues)
      if (!cue.safeParse(one).success) throw new Error(`no cue: ${JSON.stringify(one)}`);
  const { chapters } = readChapters(text, newId);
  for (const one of chapters)
    if (!chapter.safeParse(one).success) throw new Error(`no chapter: ${JSON.stringify(one)}`);
  readCueText(text);
  readFragment(text);
}

describe('any input', () => {
  test.each(Object.entries(SEEDS))(
    'bent %s',
    (name, seed) => {
      expect(() => check(seed)).not.toThrow();
      const random = randomFrom(name.length * 7_919);
      for (let index = 0; index < CASES; index += 1) {
        const text = bent(seed, random);
        try {
          check(text);
        } catch (error) {
          throw new Error(`case ${index}: ${JSON.stringify(text)}`, { cause: error });
        }
      }
    },
    3_600_000,
  );

  test('bytes that are no text', () => {
    const random = randomFrom(11);
    for (let index = 0; index < CASES; index += 1) {
      const bytes = Uint8Array.from({ length: Math.floor(random() * 200) }, () => Math.floor(random() * 256));
      expect(readTranscript(bytes, { recordingMs: null, newId }).ok).toBeTypeOf('boolean');
    }
  }, 3_600_000);

  // Each would take minutes where a reader's time grew with the square of the length.
  const many = 20_000;
  test.each([
    ['nested elements', `<tt><body>${'<div begin="1s">'.repeat(many)}<p>words`],
    [
      'changes of one element',
      `<tt><body><p>words${'<set begin="1s" dur="1s" display="none"/>'.repeat(many)}</p></body></tt>`,
    ],
    ['open brackets', `<tt>${'<'.repeat(many)}`],
    ['attributes', `<tt ${'a="b" '.repeat(many)}${'c'.repeat(many)}`],
    ['words in one paragraph', `<tt><body><p>${'<span begin="1.5s">w </span>'.repeat(many)}</p></body></tt>`],
    ['spaces before an arrow', `${' '.repeat(many)}-->${' '.repeat(many)}00:00`],
    ['cue tags', `WEBVTT\n\n00:00.000 --> 00:09.000\n${'<b><v a>&amp;'.repeat(many)}`],
    ['backslashes', `;FFMETADATA1\ntitle=${'\\'.repeat(many)}\n[CHAPTER]\nSTART=1\n`],
    ['dashes before a time', `${'- '.repeat(many)}0:00 a\n${'0:00 '.repeat(many)}`],
    ['numbers', `0:00 ${'18 '.repeat(many)}`],
    ['one sentence without an end', 'and so on '.repeat(many)],
  ])(
    'many %s',
    (_, text) => {
      check(text);
      const read = readTranscript(encode.encode(text), { recordingMs: 60_000, newId });
      if (read.ok && read.value.kind === 'read') fitCaptions(read.value.cues, CAPTION_PROFILES.lesson, newId);
    },
    30_000,
  );
});
