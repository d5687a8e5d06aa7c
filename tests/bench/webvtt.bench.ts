/**
 * Reading 10,000 cues with ids, settings and tags: ours beside the W3C's own
 * parser and vtt.js, in one run, the median of nine. Prints times and ratios;
 * run it with `node tests/bench/webvtt.bench.ts`.
 */

import { readTranscript } from '#lib/transcript/read-transcript.ts';
import { readSrt } from '#lib/transcript/srt-read.ts';
import { writeSrt } from '#lib/transcript/srt-write.ts';
import { readWebVtt } from '#lib/transcript/webvtt-read.ts';
import { formatWebVttTime } from '#lib/transcript/webvtt-time.ts';
import { readWithVttJs, readWithW3cParser } from '#tests/support/webvtt-readers.ts';

const COUNT = 10_000;
const words =
  'open the next two small rings and pass them through the back pair then close both gently'.split(' ');
const blocks = Array.from({ length: COUNT }, (_, index) => {
  const text = Array.from({ length: 14 }, (_, word) => words[(index * 7 + word) % words.length]).join(' ');
  const times = `${formatWebVttTime(index * 1100)} --> ${formatWebVttTime(index * 1100 + 1000)}`;
  return `cue-${index}\n${times} align:start position:10%,line-left line:85% size:80%\n<v Teacher>${text} <b>now</b> &amp; <i.small>again</i>\n`;
});
const file = ['WEBVTT\n', ...blocks].join('\n');
const bytes = new TextEncoder().encode(file);
const srt = writeSrt(
  readWebVtt(file).cues.map(({ startMs, endMs, text }, index) => ({
    id: `${index}`,
    startMs,
    endMs,
    text,
    settings: '',
  })),
);

const newId = () => 'id';
const readers: readonly (readonly [string, () => number])[] = [
  ['ours, WebVTT', () => readWebVtt(file).cues.length],
  ['W3C webvtt-parser', () => readWithW3cParser(file).cues.length],
  ['vtt.js', () => readWithVttJs(file).length],
  ['ours, bytes to a lesson’s cues', () => cuesIn(readTranscript(bytes, { recordingMs: null, newId }))],
  ['ours, SRT', () => readSrt(srt).cues.length],
];

function cuesIn(read: ReturnType<typeof readTranscript>): number {
  return read.ok && read.value.kind === 'read' ? read.value.cues.length : 0;
}

const medianMs = (run: () => number): number => {
  const times = Array.from({ length: 9 }, () => {
    const before = performance.now();
    const cues = run();
    if (cues !== COUNT) throw new Error(`${cues} cues, not ${COUNT}`);
    return performance.now() - before;
  });
  return times.sort((a, b) => a - b)[4] ?? Number.NaN;
};

console.log(`${COUNT} cues, ${(bytes.length / 1e6).toFixed(2)} MB`);
const measured = readers.map(([name, run]) => [name, medianMs(run)] as const);
const ours = measured[0]?.[1] ?? Number.NaN;
for (const [name, ms] of measured)
  console.log(`${name.padEnd(32)} ${ms.toFixed(1).padStart(8)} ms   ${(ms / ours).toFixed(2)} x ours`);
