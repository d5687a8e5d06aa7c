/** The demo lesson says one thing everywhere: sound, transcript, times, sequence, kit. */
import { execFile } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { promisify } from 'node:util';
import { describe, expect, test } from 'vitest';
import { kitFor } from '#lib/kit/kit-list.ts';
import { cautionWords, offeredCautions } from '#lib/lesson/cautions.ts';
import { applyChange, checkContent, type Draft } from '#lib/lesson/change.ts';
import { changesBetween } from '#lib/lesson/changes-between.ts';
import { emptyContent } from '#lib/lesson/content.ts';
import { missingFrom } from '#lib/lesson/missing.ts';
import { pageSteps } from '#lib/lesson/page-steps.ts';
import { sizesOf } from '#lib/rings/ring.ts';
import { readTranscript } from '#lib/transcript/read-transcript.ts';
import { checkPiece } from '#lib/weave/check-piece.ts';
import { walkPiece } from '#lib/weave/walk.ts';
import { readDemo } from '../../prisma/demo/read-demo.ts';
import { readNarration } from '../../prisma/demo/voice.ts';
import { readWithW3cParser } from '../support/webvtt-readers.ts';

const demo = readDemo();
const corrected = demo.corrected(demo.first);
const { pieces } = readNarration(new URL('../../prisma/demo/narration.json', import.meta.url));
const moments: Record<string, [number, number]> = JSON.parse(
  readFileSync(new URL('../../prisma/demo/moments.json', import.meta.url), 'utf8'),
);
let ids = 0;
const read = readTranscript(demo.transcript, { recordingMs: null, newId: () => `c${ids++}` });
if (!read.ok || read.value.kind !== 'read') throw new Error('the transcript cannot be read');
const { cues, losses } = read.value;
const DURATION_MS = 224_000;

const kit = (content: typeof demo.first, bodyMm: number) => {
  const result = kitFor(content, bodyMm);
  if (!result.ok) throw new Error(result.fault.code);
  return result.value;
};
const netOf = (content: typeof demo.first, bodyMm: number, kind: string) =>
  kit(content, bodyMm).rings.find((ring) => ring.ringKind.id === kind)?.net;

describe('the demo lesson', () => {
  test('is content that may be saved, before and after its correction', () => {
    expect(checkContent(demo.first)).toMatchObject({ ok: true });
    expect(checkContent(corrected)).toMatchObject({ ok: true });
  });

  test('tells which rings are passed, and can be made as it is told', () => {
    for (const content of [demo.first, corrected])
      expect(checkPiece(content)).toEqual({ faults: [], untold: 0 });
    // 23 pairs and 22 pairs of each other kind: 4 links between neighbouring pairs, and the clasp ring's two.
    expect(walkPiece(demo.first, 22).links.length).toBe(4 * (23 + 2 * 22 - 1) + 2);
  });

  test('leaves nothing that a pupil would have to ask, and carries every caution that fits', () => {
    for (const content of [demo.first, corrected]) {
      const { blocks, warns } = missingFrom({
        content,
        cues,
        recording: { durationMs: DURATION_MS, hasAudio: true },
      });
      expect([...blocks, ...warns]).toEqual([]);
      expect(offeredCautions(content)).toEqual([]);
      for (const caution of content.cautions) expect(cautionWords(caution).text).not.toBe('');
    }
  });

  test('counts what its teacher says: 22 repeats, 44 blue and 90 large copper rings for medium', () => {
    expect(kit(demo.first, 160).repeats).toBe(22);
    expect(netOf(demo.first, 160, 'large-blue')).toBe(44);
    expect(netOf(demo.first, 160, 'large-copper')).toBe(90);
    expect(moments).toHaveProperty('medium-count');
  });

  test('is wrong by one small ring at first, and right after the correction', () => {
    expect(netOf(demo.first, 160, 'small-copper')).toBe(1);
    expect(netOf(corrected, 160, 'small-copper')).toBe(2);
  });

  test('has the aspect ratio that its teacher names, 3.6', () => {
    const large = demo.first.ringKinds[0];
    if (!large) throw new Error('no ring kind');
    expect(Number(sizesOf(large).aspectRatio.toFixed(1))).toBe(3.6);
  });

  test('becomes itself again by the changes that made it', () => {
    const draft: Draft = { content: emptyContent('', 'en', 'EUR'), cues: [] };
    const made = changesBetween(draft.content, demo.first).reduce(applyChange, draft);
    expect(made.content).toEqual(demo.first);
    expect(changesBetween(made.content, corrected).reduce(applyChange, made).content).toEqual(corrected);
  });
});

describe('its transcript', () => {
  test('is read whole by us and without fault by the W3C reader', () => {
    expect(losses.filter((loss) => loss.code !== 'cue-name')).toEqual([]);
    const outside = readWithW3cParser(new TextDecoder().decode(demo.transcript));
    expect(outside.errors).toEqual([]);
    expect(outside.cues).toHaveLength(pieces.length);
  });

  test('mishears trade words, and only there differs from what was said', () => {
    const misheard = pieces.filter((piece) => piece.heard !== undefined);
    expect(misheard.length).toBeGreaterThanOrEqual(8);
    expect(cues.map((cue) => cue.text)).toEqual(pieces.map((piece) => piece.heard ?? piece.text));
    expect(demo.said).toEqual(pieces.map((piece) => piece.text));
  });

  test('has a chapter edge only where somebody begins to speak', () => {
    const starts = new Set([0, ...cues.map((cue) => cue.startMs)]);
    for (const chapter of demo.first.chapters) expect(starts).toContain(chapter.startMs);
  });

  test('speaks of each step at its moment or just before', () => {
    for (const step of pageSteps(demo.first)) {
      const cue = cues.findLast((one) => one.startMs <= (step.atMs ?? -1));
      expect(step.atMs ?? Number.NaN).toBeLessThan((cue?.endMs ?? 0) + 1_000);
    }
  });
});

describe('its recording', () => {
  test('sounds in every cue and is silent between them', async () => {
    // ffmpeg's own silence detector, a reader of the sound that is not ours.
    const { stderr } = await promisify(execFile)('ffmpeg', [
      ...['-nostdin', '-hide_banner', '-i', demo.recordingPath, '-vn'],
      ...['-af', 'silencedetect=noise=-38dB:d=0.25', '-f', 'null', '-'],
    ]);
    const silences = [...stderr.matchAll(/silence_start: ([\d.]+)[\s\S]*?silence_end: ([\d.]+)/g)].map(
      ([, start, end]) => [Number(start) * 1000, Number(end) * 1000] as const,
    );
    const gaps = cues.slice(1).map((cue, index) => [cues[index]?.endMs ?? 0, cue.startMs] as const);
    for (const [from, to] of gaps) {
      const middle = (from + to) / 2;
      expect(silences.some(([start, end]) => start <= middle && middle <= end)).toBe(true);
    }
    for (const cue of cues) {
      const within = silences.filter(([start, end]) => start > cue.startMs + 150 && end < cue.endMs - 150);
      const silent = within.reduce((sum, [start, end]) => sum + end - start, 0);
      expect(silent).toBeLessThan((cue.endMs - cue.startMs) / 2);
    }
  });
});
