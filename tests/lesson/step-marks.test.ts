/**
 * Every step picture read by its marks alone, as a pupil reads it with the
 * words covered: which rings are entered and from which side (a dot: the
 * back, a cross: the front), held against the sequence itself.
 */
import { expect, test } from 'vitest';
import { keptShape } from '#app/pictures/kept-shapes.ts';
import { emptyContent } from '#lib/lesson/content.ts';
import { drawLesson, pictureTexts } from '#lib/lesson/lesson-pictures.ts';
import { findSettledWeave } from '#lib/weave/space/known-shape.ts';
import { walkPiece } from '#lib/weave/walk.ts';
import { WEAVES } from '#lib/weave/weave-library.ts';
import { aRingKind } from '#tests/support/a-making.ts';

const leastOf = (id: string): number | undefined =>
  findSettledWeave(id.replace(/-two-sizes$/, ''))?.leastAspectRatio;

/** Aspect ratio over the smallest: tight rosettes lie in a fold that shows not every side from anywhere, and then a mark is left out. */
const WIDER: Readonly<Record<string, number>> = { 'rosettes-of-3': 1.3 };

/** Ring number and side of every mark: the foot of an arrow, then its numbers. */
function marksIn(svg: string): readonly string[] {
  const feet =
    /r="3\.4"[^>]*\/>(<circle[^>]*r="1\.2"|<path)[^>]*\/><rect[^>]*\/><text[^>]*font-size="7\.6"[^>]*>([^<]*)</g;
  return [...svg.matchAll(feet)].flatMap(([, mark = '', numbers = '']) =>
    numbers.split('+').map((number) => `${number} ${mark.startsWith('<circle') ? 'back' : 'front'}`),
  );
}

test.each(WEAVES.flatMap(({ id }) => (leastOf(id) === undefined ? [] : [id])))(
  '%s: marks say what the sequence says',
  (id) => {
    const weave = WEAVES.find((each) => each.id === id);
    const inner = Math.round((WIDER[id] ?? 1.12) * (leastOf(id) ?? 0) * 1600) / 1000;
    const { start = [], repeat = [], finishing = [] } = weave?.piece ?? {};
    const lesson = {
      ...emptyContent('A lesson', 'en', 'EUR'),
      start,
      repeat,
      finishing,
      ringKinds: (weave?.roles ?? []).map((role) =>
        aRingKind({
          id: role.id,
          name: role.name,
          innerDiameter: { stated: `${inner} mm`, mm: inner },
          wire: { stated: '1.6 mm', mm: 1.6 },
        }),
      ),
    };
    expect(keptShape(lesson).ok).toBe(true);
    const woven = walkPiece(lesson, 2);
    for (const of of pictureTexts(lesson).keys()) {
      const svg = drawLesson(lesson, keptShape, { of, roll: 0, side: 'front' })?.svg ?? '';
      const turn = woven.turns.findIndex(({ placement }) => placement.id === of);
      const told = woven.links
        .filter((link) => link.turn === turn && link.from !== null)
        .map(({ through, from }) => `${through + 1} ${from}`);
      // A step of two moments may show an opening in both.
      expect([of, ...new Set(marksIn(svg).toSorted())]).toEqual([of, ...told.toSorted()]);
    }
  },
);
