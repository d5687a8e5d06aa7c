/**
 * Whether reading, writing, spreading and breaking take time in proportion to
 * the length: each at three lengths, ten times as long as the one before.
 * Prints how many times as long each took (10 is linear), and our time beside
 * that of the fastest conforming reader of WebVTT in the same run. The best of
 * three runs counts. Run it with
 * `node tests/bench/transcript-length.bench.ts [cues]`; 100000 is the full length.
 */
import { readChapters } from '#lib/chapters/chapters-read.ts';
import { CAPTION_PROFILES } from '#lib/transcript/caption-profile.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { cuesOfScript } from '#lib/transcript/cues-of-script.ts';
import { cuesOfStampedText } from '#lib/transcript/cues-of-stamped-text.ts';
import { cuesOfTtml } from '#lib/transcript/cues-of-ttml.ts';
import { fitCaptions } from '#lib/transcript/fit-captions.ts';
import { spreadAgain } from '#lib/transcript/spread-script.ts';
import { readSrt } from '#lib/transcript/srt-read.ts';
import { writeSrt } from '#lib/transcript/srt-write.ts';
import { writeStampedText } from '#lib/transcript/stamped-text-write.ts';
import { writeTtml } from '#lib/transcript/ttml-write.ts';
import { readWebVtt } from '#lib/transcript/webvtt-read.ts';
import { writeWebVtt } from '#lib/transcript/webvtt-write.ts';
import { readWithVttJs, readWithW3cParser } from '#tests/support/webvtt-readers.ts';

const most = Number(process.argv[2] ?? 10_000);
const SIZES = [most / 100, most / 10, most];
const RUNS = 3;
const words =
  'open the next two small rings and pass them through the back pair then close both gently at 18 gauge'.split(
    ' ',
  );

const cuesOf = (count: number): readonly Cue[] =>
  Array.from({ length: count }, (_, at) => ({
    id: `c${at}`,
    startMs: at * 3_000,
    endMs: at * 3_000 + 2_900,
    text: `${Array.from({ length: 12 }, (__, word) => words[(at * 5 + word) % words.length]).join(' ')}.`,
    settings: at % 3 === 0 ? 'align:start line:85%' : '',
  }));

type Task = (count: number) => () => number;
const reading =
  (write: (cues: readonly Cue[]) => string, read: (text: string) => number): Task =>
  (count) => {
    const text = write(cuesOf(count));
    return () => read(text);
  };
let made = 0;
const newId = () => `n${made++}`;

const tasks: Readonly<Record<string, Task>> = {
  'read WebVTT': reading(writeWebVtt, (text) => readWebVtt(text).cues.length),
  'read SRT': reading(writeSrt, (text) => readSrt(text).cues.length),
  'read TTML': reading(
    (cues) => writeTtml(cues, 'en'),
    (text) => cuesOfTtml(text, null).found.length,
  ),
  'read stamped text': reading(writeStampedText, (text) => cuesOfStampedText(text, null).found.length),
  'read and spread a script': reading(
    (cues) => cues.map(({ text }) => text).join('\n\n'),
    (text) => cuesOfScript(text, []).length,
  ),
  'read chapter lines': reading(writeStampedText, (text) => readChapters(text, newId).chapters.length),
  'write WebVTT': (count) => {
    const cues = cuesOf(count);
    return () => writeWebVtt(cues).length;
  },
  'spread again': (count) => {
    const cues = cuesOf(count).map((cue): Cue => ({ ...cue, timing: 'approximate' }));
    return () => spreadAgain(cues, [{ startMs: 0, endMs: count * 2_500 }]).put.length;
  },
  'break captions anew': (count) => {
    const cues = cuesOf(count);
    return () => fitCaptions(cues, CAPTION_PROFILES.school, newId).put.length;
  },
};

const bestMs = (run: () => number): number =>
  Math.min(
    ...Array.from({ length: RUNS }, () => {
      const before = performance.now();
      if (run() === 0) throw new Error('nothing came out');
      return performance.now() - before;
    }),
  );

const column = (value: string) => value.padStart(12);
console.log(
  `${'cues'.padEnd(28)}${SIZES.map((size) => column(size.toLocaleString('en'))).join('')}   times as long for ten times as many`,
);
for (const [name, task] of Object.entries(tasks)) {
  const times = SIZES.map((size) => bestMs(task(size)));
  const ratios = times.slice(1).map((ms, at) => (ms / (times[at] ?? Number.NaN)).toFixed(1));
  console.log(
    `${name.padEnd(28)}${times.map((ms) => column(`${ms.toFixed(1)} ms`)).join('')}   ${ratios.join(', ')}`,
  );
}
const file = writeWebVtt(cuesOf(10_000));
const ours = bestMs(() => readWebVtt(file).cues.length);
for (const [name, run] of [
  ['W3C webvtt-parser', () => readWithW3cParser(file).cues.length],
  ['vtt.js', () => readWithVttJs(file).length],
] as const)
  console.log(`10,000 cues of WebVTT, ${name}: ${(bestMs(run) / ours).toFixed(1)} times as long as ours`);
