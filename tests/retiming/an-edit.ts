/** Edits of a recording of two minutes and drafts of lessons on it, for property tests. */
import fc from 'fast-check';
import type { Draft } from '#lib/lesson/change.ts';
import { type EditList, listPieces, type Piece } from '#lib/retiming/edit-list.ts';
import { aContent } from '#tests/support/a-content.ts';

export const OLD_MS = 120_000;
export const runs = { numRuns: Number(process.env['RETIMING_RUNS'] ?? 150) };

/** Edits of a recording of two minutes: kept parts with gaps, some put elsewhere, with new sound between. */
export const anEdit = fc
  .record({
    points: fc.uniqueArray(fc.integer({ min: 1, max: OLD_MS / 100 - 1 }), { minLength: 2, maxLength: 12 }),
    inserts: fc.array(fc.integer({ min: 0, max: 9_000 }), { minLength: 7, maxLength: 7 }),
    swap: fc.boolean(),
    speed: fc.constantFrom(1, 1, 1.01, 0.96),
  })
  .map(({ points, inserts, swap, speed }): EditList => {
    const ends = points.toSorted((one, other) => one - other).map((point) => point * 100);
    const olds = [];
    for (let k = 0; k + 1 < ends.length; k += 2)
      olds.push({ startMs: ends[k] ?? 0, endMs: ends[k + 1] ?? 0 });
    if (swap && olds.length > 2) olds.splice(0, 2, ...olds.slice(0, 2).toReversed());
    let at = 0;
    const pieces = olds.map((old, k): Piece => {
      const gap = inserts[k] ?? 0;
      at += gap < 100 ? 0 : gap;
      const startMs = at;
      at += Math.round((old.endMs - old.startMs) / speed);
      return { old, new: { startMs, endMs: at } };
    });
    return { ...listPieces(pieces, OLD_MS, at + (inserts[6] ?? 0)), speed, pitchMoved: speed !== 1 };
  });

export const moment = fc.integer({ min: 0, max: OLD_MS });

export const aDraft = fc
  .record({
    cues: fc.array(fc.tuple(moment, fc.integer({ min: 200, max: 7_000 })), { maxLength: 40 }),
    chapters: fc.uniqueArray(moment, { maxLength: 8 }),
    steps: fc.array(fc.option(moment, { nil: null }), { maxLength: 6 }),
    corrections: fc.array(fc.tuple(moment, fc.integer({ min: 1, max: 9_000 })), { maxLength: 4 }),
  })
  .map(
    ({ cues, chapters, steps, corrections }): Draft => ({
      content: aContent({
        chapters: chapters
          .toSorted((one, other) => one - other)
          .map((startMs, k) => ({ id: `ch-${k}`, kind: 'setup' as const, title: `Chapter ${k}`, startMs })),
        steps: steps.map((atMs, k) => ({ id: `step-${k}`, sentence: `Do ${k}.`, atMs, pictureText: '' })),
        corrections: corrections.map(([startMs, length], k) => ({
          id: `co-${k}`,
          kind: 'said wrongly' as const,
          startMs,
          endMs: startMs + length,
          wrong: `Wrong ${k}`,
          right: 'Right',
          affects: '',
          kitsChange: false,
          of: null,
          effects: [],
          revision: k === 0 ? 1 : null,
        })),
      }),
      cues: cues.map(([startMs, length], k) => ({
        id: `cue-${k}`,
        startMs,
        endMs: startMs + length,
        text: `Words ${k}`,
        settings: '',
      })),
    }),
  );
