/** What is foretold of a piece is read from a table; held here against the solver, at places between those of the table. */
import { describe, expect, test } from 'vitest';
import { countsWords } from '#app/words/shape-words.ts';
import { type Content, emptyContent } from '#lib/lesson/content.ts';
import { foretell, foretoldOf } from '#lib/lesson/foretell.ts';
import { countsForetold } from '#lib/lesson/foretold-counts.ts';
import { shapeOfLesson } from '#lib/lesson/lesson-pictures.ts';
import { pitchIn } from '#lib/weave/space/known-shape.ts';
import { SETTLED_SHAPES } from '#lib/weave/space/settled-shapes.ts';
import { shapeOfWeave } from '#lib/weave/space/shape-of-weave.ts';
import { findWeaveInSpace } from '#lib/weave/space/weave-in-space.ts';
import { findWeave } from '#lib/weave/weave-library.ts';
import { aRingKind, aSample, someRules } from '#tests/support/a-making.ts';

/** By how much of the pitch what is read may be off. */
const READ_WITHIN = 0.003;

const CHAINS = SETTLED_SHAPES.filter(({ id }) => findWeaveInSpace(id)?.kind === 'chain');

test.each(CHAINS.map((weave) => [weave.id, weave] as const))(
  '%s: half way between stored shapes',
  (id, weave) => {
    const between = weave.shapes.slice(1).map(({ aspectRatio }, at) => ({
      aspectRatio: (aspectRatio + (weave.shapes[at]?.aspectRatio ?? aspectRatio)) / 2,
    }));
    let notRead = 0;
    // A quarter of the gaps on every run, all with WEAVE_ALL.
    const some = process.env['WEAVE_ALL'] ? between : between.filter((_, at) => at % 4 === 2);
    for (const { aspectRatio } of some) {
      const shape = shapeOfWeave(id, [{ inner: aspectRatio, wire: 1 }]);
      if (!shape.ok) throw new Error(`${id} at ${aspectRatio}: ${shape.fault.code}`);
      const read = pitchIn(weave, aspectRatio)?.taut;
      if (read === undefined) notRead += 1;
      else
        expect(Math.abs(read / shape.value.cell.pitch - 1), `${id} at ${aspectRatio}`).toBeLessThan(
          READ_WITHIN,
        );
    }
    // Box chain has one place where another fold becomes possible.
    expect(notRead).toBeLessThanOrEqual(1);
  },
);

function lessonOf(id: string, inner: number, wire: number): Content {
  const weave = findWeave(id);
  if (!weave) throw new Error(id);
  const ringKinds = weave.roles.map((role) =>
    aRingKind({
      id: role.id,
      innerDiameter: { stated: `${inner} mm`, mm: inner },
      wire: { stated: `${wire} mm`, mm: wire },
    }),
  );
  return { ...emptyContent('A lesson', 'en', 'EUR'), ...weave.piece, weave: weave.name, ringKinds };
}

const SIZES = {
  sizes: [{ id: 'm', name: 'medium', bodyMm: 165 }],
  kitRules: someRules({ easeMm: 15 }),
  sample: null,
};

describe('a lesson', () => {
  test.each([
    ['byzantine', 4.4, 1.2],
    ['european-4-in-1-three-rows', 5.1, 1.3],
    ['jens-pind-3', 3.6, 1.2],
  ])('%s is foretold without a shape as it is from its shape', (id, inner, wire) => {
    const lesson = lessonOf(id, inner, wire);
    const shape = shapeOfLesson(lesson);
    if (!shape.ok) throw new Error(shape.fault.code);
    const told = foretell(lesson);
    expect(told).toEqual({ ok: true, value: foretoldOf(shape.value) });
    expect(
      told.ok && Math.abs((told.value.oneRepeat?.tautMm ?? 0) / shape.value.cell.pitch - 1),
    ).toBeLessThan(READ_WITHIN);
  });

  test('each size as a range of repeats and rings until a sample takes its place', () => {
    const lesson = {
      ...lessonOf('half-persian-3-in-1', 5, 1.2),
      ...SIZES,
    };
    const told = foretell(lesson);
    if (!told.ok || !told.value.oneRepeat) throw new Error('not foretold');
    const { tautMm, pushedMm } = told.value.oneRepeat;
    const [size] = countsForetold(lesson, told.value.oneRepeat);
    // 165 + 15 mm; two rings a repeat.
    expect(size?.repeats).toEqual([Math.ceil(180 / tautMm), Math.ceil(180 / pushedMm)]);
    expect(size?.rings).toEqual(size?.repeats.map((repeats) => 2 * repeats));
    const words = (perRepeatMm: number | null) =>
      countsWords({ ...lesson, sample: perRepeatMm === null ? null : aSample({ perRepeatMm }) }, told.value);
    expect(words(null)).toContain(`medium (165 mm) ${size?.repeats.join(' to ')} repeats`);
    expect(words((tautMm + pushedMm) / 2)).toMatch(/lies within; all counts come from it\.$/);
    expect(words(tautMm * 1.1)).toContain('more than these rings reach');
    expect(words(pushedMm * 0.9)).toContain('less than these rings take');
  });

  test('rings that are too tight are told with both numbers', () => {
    const told = foretell(lessonOf('byzantine', 3, 1));
    expect(told).toMatchObject({ ok: false, fault: { code: 'too-tight', has: 3 } });
    expect(!told.ok && told.fault.code === 'too-tight' && told.fault.needs).toBeCloseTo(3.266, 2);
  });

  test('wider than any stored shape: worked out, and the fit is still told', () => {
    const told = foretell(lessonOf('half-persian-3-in-1', 9, 1));
    expect(told).toMatchObject({ ok: true, value: { fit: { has: 9 } } });
    const shape = shapeOfWeave('half-persian-3-in-1', [{ inner: 9, wire: 1 }]);
    expect(told.ok && shape.ok && (told.value.oneRepeat?.tautMm ?? 0)).toBeCloseTo(
      shape.ok ? shape.value.cell.pitch : 0,
      6,
    );
  });
});
