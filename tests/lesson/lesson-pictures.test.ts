import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { keptShape } from '#app/pictures/kept-shapes.ts';
import { emptyContent } from '#lib/lesson/content.ts';
import { hasTooManyRings } from '#lib/lesson/fits-a-picture.ts';
import { foretell, foretoldOf } from '#lib/lesson/foretell.ts';
import {
  drawLesson,
  mayBePictured,
  pictureTexts,
  sceneOfLesson,
  shapeOfLesson,
} from '#lib/lesson/lesson-pictures.ts';
import { type Pictured, shapeKey } from '#lib/lesson/pictured.ts';
import { proveLesson } from '#lib/lesson/prove-lesson.ts';
import { sectionsOf } from '#lib/lesson/sections.ts';
import { drawWhole } from '#lib/lesson/whole-picture.ts';
import { tonesOf } from '#lib/weave/picture/look.ts';
import { bestLook, viewOf } from '#lib/weave/picture/picture-views.ts';
import { dot, turnAboutX } from '#lib/weave/space/vector.ts';
import { findWeave } from '#lib/weave/weave-library.ts';
import { aPlacement, aRingKind } from '#tests/support/a-making.ts';

/** A lesson that makes a stored weave in rings of 6.4 mm and 1.6 mm. */
function lessonOf(id: string, innerMm = 6.4) {
  const weave = findWeave(id);
  if (!weave) throw new Error(id);
  const { start, repeat, finishing } = weave.piece;
  const ringKinds = weave.roles.map((role) =>
    aRingKind({
      id: role.id,
      name: role.name,
      innerDiameter: { stated: `${innerMm} mm`, mm: innerMm },
      wire: { stated: '1.6 mm', mm: 1.6 },
    }),
  );
  return { ...emptyContent('A lesson', 'en', 'EUR'), start, repeat, finishing, ringKinds };
}

const front = { roll: 0, side: 'front' as const };

test('every placement of a known weave has a picture whose description is its text alternative', () => {
  const lesson = lessonOf('byzantine');
  const texts = pictureTexts(lesson);
  for (const { id } of [...lesson.start, ...lesson.repeat, ...lesson.finishing]) {
    const picture = drawLesson(lesson, keptShape, { of: id, ...front });
    expect(picture?.text).toBe(texts.get(id));
    expect(picture?.svg).toContain('<title>This step</title>');
  }
  expect(drawLesson(lesson, keptShape, { of: 'piece', ...front })?.svg).toContain('<svg');
  expect(drawLesson(lesson, keptShape, { of: 'nothing', ...front })).toBeNull();
});

test('the range of one repeat lies between pushed together and taut, in mm', () => {
  const shape = shapeOfLesson(lessonOf('byzantine'));
  if (!shape.ok) throw new Error(shape.fault.code);
  const { tautMm = 0, pushedMm = 0 } = foretoldOf(shape.value).oneRepeat ?? {};
  // 1.153 wire diameters a ring at aspect ratio 4 (an independent study of the same model).
  expect(Math.abs(tautMm / (6 * 1.153 * 1.6) - 1)).toBeLessThan(0.005);
  expect(pushedMm).toBeLessThan(tautMm);
});

test('rings that are too tight are told with both numbers, and steps become schemes', () => {
  const lesson = lessonOf('half-persian-3-in-1', 5.6);
  const shape = shapeOfLesson(lesson);
  expect(shape).toMatchObject({ ok: false, fault: { code: 'too-tight', has: expect.closeTo(3.5, 9) } });
  expect(drawLesson(lesson, keptShape, { of: 'piece', ...front })).toBeNull();
  expect(drawLesson(lesson, keptShape, { of: 'repeat-1', ...front })?.svg).toContain(
    '<title>Scheme of this step</title>',
  );
});

test('links that no known weave has: the scheme shows numbers, rows and sides', () => {
  const lesson = lessonOf('shaggy-loops');
  const shape = shapeOfLesson(lesson);
  expect(shape).toMatchObject({ ok: false, fault: { code: 'no-known-shape' } });
  const scheme = drawLesson(lesson, keptShape, { of: 'repeat-1', ...front });
  expect(scheme?.text).toBe(
    'Opened base ring 2 enters, from the back, ring 1; carries loop rings 3 and 4, entered from the front.',
  );
  expect(scheme?.svg.match(/<circle[^>]*r="18"/g)).toHaveLength(4);
});

/** Each ring through all before it, from the front: a flower, with nothing that is repeated. */
const flowerOf = (petals: number): Pictured => ({
  ...lessonOf('chain-1-1', 9.6),
  repeat: [],
  finishing: [],
  start: Array.from({ length: petals }, (_, n) =>
    aPlacement({
      id: `petal-${n + 1}`,
      opened: 'ring',
      row: 'A',
      passes: Array.from({ length: n }, (__, at) => ({
        from: 'front' as const,
        ring: { row: 'A', nth: n - at, from: 'newest' as const },
      })),
    }),
  ),
});

test('a closed group of rings without a repeat is drawn where it is a known rosette, and foretold without a length', () => {
  const flower = flowerOf(5);
  const shape = shapeOfLesson(flower);
  expect(shape).toMatchObject({ ok: true, value: { known: { weave: { id: 'rosette-5' } } } });
  expect(proveLesson(flower, shape)).toMatchObject({ state: 'agrees', repeats: 0, rings: 5, links: 10 });
  expect(foretell(flower)).toMatchObject({ ok: true, value: { weave: 'rosette-5', oneRepeat: null } });
  expect(drawLesson(flower, keptShape, { of: 'piece', ...front })?.svg).toContain('<svg');
  expect(drawLesson(flower, keptShape, { of: 'petal-5', ...front })?.svg).toContain(
    '<title>This step</title>',
  );
  expect(drawWhole(flower, keptShape, { repeats: 24, isMirrored: false })).toBeNull();
});

test('a closed group that is no known rosette is told so, and its steps are schemes', () => {
  const flower = flowerOf(6);
  const shape = shapeOfLesson(flower);
  expect(shape).toMatchObject({ ok: false, fault: { code: 'no-known-shape' } });
  expect(foretell(flower)).toMatchObject({ ok: false, fault: { code: 'no-known-shape' } });
  expect(proveLesson(flower, shape)).toBeNull();
  expect(drawLesson(flower, keptShape, { of: 'petal-6', ...front })?.svg).toContain(
    '<title>Scheme of this step</title>',
  );
});

test('passes without named rings have neither picture nor text', () => {
  const lesson = lessonOf('chain-2-2');
  const repeat = lesson.repeat.map((placement) => ({
    ...placement,
    passes: placement.passes.map(({ from }) => ({ from })),
  }));
  const unnamed = { ...lesson, repeat };
  expect(pictureTexts(unnamed).size).toBe(0);
  const shape = shapeOfLesson(unnamed);
  expect(shape).toMatchObject({ ok: false, fault: { code: 'rings-not-named' } });
  expect(drawLesson(unnamed, keptShape, { of: 'repeat-1', ...front })).toBeNull();
});

test('words do not change the shape that is kept, sizes do', () => {
  const lesson = lessonOf('byzantine');
  const [first, ...others] = lesson.repeat;
  if (!first) throw new Error('no placement');
  expect(shapeKey({ ...lesson, repeat: [{ ...first, sentence: 'Said otherwise.' }, ...others] })).toBe(
    shapeKey(lesson),
  );
  expect(shapeKey(lessonOf('byzantine', 6.5))).not.toBe(shapeKey(lesson));
});

test.each(['chain-1-1', 'chain-2-2', 'chain-3-3'])(
  '%s is seen from where no ring of any repeat shows its edge alone',
  (id) => {
    const shape = shapeOfLesson(lessonOf(id));
    if (!shape.ok) throw new Error(shape.fault.code);
    const { cell } = shape.value;
    const { toward } = viewOf(bestLook(shape.value), false);
    const open = Array.from({ length: 12 }, (_, repeat) =>
      cell.rings.map(({ normal }) => Math.abs(dot(turnAboutX(normal, repeat * cell.twist), toward))),
    ).flat();
    expect(Math.min(...open)).toBeGreaterThan(0.2);
  },
);

test('the other leaning is the picture of the mirrored piece', () => {
  const lesson = lessonOf('jens-pind-3', 4.6);
  const left = { ...lesson, leaning: 'left' as const };
  const of = { of: 'piece', ...front };
  const mine = drawLesson(lesson, keptShape, of);
  const others = drawLesson(left, keptShape, of);
  expect(others?.svg).not.toBe(mine?.svg);
  expect(others?.text).toBe(mine?.text);
});

describe('the whole length', () => {
  const blue = aRingKind({ id: 'blue', name: 'deep blue', colourCode: '#2b4fb0' });
  const coloured = (innerMm = 6.4) => {
    const lesson = lessonOf('half-persian-3-in-1', innerMm);
    const swaps = [{ ringKind: lesson.ringKinds[0]?.id ?? '', by: 'blue' }];
    return {
      ...lesson,
      ringKinds: [
        ...lesson.ringKinds,
        { ...blue, innerDiameter: { stated: '6.4 mm', mm: 6.4 }, wire: { stated: '1.6 mm', mm: 1.6 } },
      ],
      runs: [
        { id: 'before', unit: '', repeats: null, swaps: [] },
        { id: 'motif', unit: '', repeats: 3, swaps },
        { id: 'after', unit: '', repeats: null, swaps: [] },
      ],
    };
  };
  const whole = (lesson: ReturnType<typeof coloured>, repeats: number) =>
    drawWhole(lesson, keptShape, { repeats, isMirrored: false });

  test('colours stand where the runs put them, in the picture and in its words', () => {
    const picture = whole(coloured(), 23);
    expect(picture?.text).toBe(
      'A piece of 50 rings, pulled taut: 44 rings and 6 deep blue rings. 10 repeats as described, then 3 with deep blue rings, then 10 as described.',
    );
    const svg = picture?.svg ?? '';
    const shade = tonesOf('#2b4fb0').shade;
    const groups = [...svg.matchAll(/<g id="(s\d+)".*?<\/g><\/g>/gs)].map(
      ([text, id]) => [id, text.includes(shade)] as const,
    );
    const places = [...svg.matchAll(/<use href="#(s\d+)"/g)].map(([, id]) => id);
    const isBlue = places.map((id) => groups.some(([group, has]) => group === id && has));
    expect(isBlue.indexOf(true)).toBeGreaterThan(0);
    expect(isBlue.lastIndexOf(true)).toBeLessThan(places.length - 1);
    // The middle, and nowhere else: one stretch of it without a gap.
    expect(isBlue.slice(isBlue.indexOf(true), isBlue.lastIndexOf(true) + 1)).not.toContain(false);
    expect(Math.abs(isBlue.indexOf(true) - (places.length - 1 - isBlue.lastIndexOf(true)))).toBeLessThan(2);
  });

  test('a piece four times as long makes a file hardly larger, and lines that hold all of it', () => {
    const [short, long] = [whole(coloured(), 40), whole(coloured(), 160)];
    expect((long?.svg.length ?? 0) / (short?.svg.length ?? 1)).toBeLessThan(1.5);
    const uses = long?.svg.match(/<use /g)?.length ?? 0;
    expect(uses).toBeGreaterThan(3 * (short?.svg.match(/<use /g)?.length ?? 0));
    expect(long?.svg).not.toMatch(/NaN|Infinity/);
  });

  test('so does a chain whose twist never comes round: three times as many rings, and under 60 kB', () => {
    const chain = (repeats: number) => {
      const lesson = lessonOf('jens-pind-3', 5.6);
      return drawWhole(lesson, keptShape, { repeats, isMirrored: false })?.svg ?? '';
    };
    const [short, long] = [chain(200), chain(600)];
    expect(long.length / short.length).toBeLessThan(1.4);
    expect(gzipSync(long).length).toBeLessThan(60_000);
  });

  test('units written out each for itself are one piece where they are the same weave', () => {
    const lesson = coloured();
    const motif = lesson.repeat.map((placement) => ({
      ...placement,
      id: `motif-${placement.id}`,
      unit: 'motif',
      opened: 'blue',
      carries: placement.carries.map((each) => ({ ...each, ringKind: 'blue' })),
    }));
    const units = {
      ...lesson,
      repeat: [...lesson.repeat, ...motif],
      runs: [
        { id: 'before', unit: '', repeats: null, swaps: [] },
        { id: 'motif', unit: 'motif', repeats: 3, swaps: [] },
        { id: 'after', unit: '', repeats: null, swaps: [] },
      ],
    };
    // The same rings in the same places as where blue rings stand in: only the words differ.
    const rings = (svg = ''): string => svg.slice(svg.indexOf('<defs>'));
    expect(rings(whole(units, 13)?.svg)).toBe(rings(whole(coloured(), 13)?.svg));
    expect(whole(units, 13)?.text).toContain('then 3 of motif, then 5 as described');
    expect(sectionsOf(units, 13)).toHaveLength(1);
    expect(hasTooManyRings(units, 13)).toBe(false);
    expect(hasTooManyRings(units, 100_000)).toBe(true);
    expect(whole(units, 100_000)).toBeNull();
  });

  test('no picture where no shape is known', () => {
    expect(whole({ ...coloured(5), runs: [] }, 23)).toBeNull();
  });
});

test('whether there will be a picture is told without working out the shape', () => {
  expect(mayBePictured(lessonOf('byzantine'))).toBe(true);
  expect(mayBePictured(lessonOf('half-persian-3-in-1', 5.6))).toBe(false);
  expect(mayBePictured(lessonOf('shaggy-loops'))).toBe(false);
});

test('what is turned by hand shows the rings, roles and numbers of the still picture', () => {
  const lesson = lessonOf('byzantine');
  const scene = sceneOfLesson(lesson, keptShape, { of: 'repeat-1', ...front });
  expect(scene?.text).toBe(drawLesson(lesson, keptShape, { of: 'repeat-1', ...front })?.text);
  expect(scene?.rings.map(({ role, label }) => `${role} ${label}`.trim())).toEqual([
    'entered 1',
    'entered 2',
    'new 3',
    'carried 4',
    'carried 5',
  ]);
  expect(scene?.arrows).toHaveLength(4);
  expect(sceneOfLesson(lesson, keptShape, { of: 'piece', ...front })?.rings.length).toBeGreaterThan(20);
  expect(sceneOfLesson(lesson, keptShape, { of: 'nothing', ...front })).toBeNull();
});

test('until the first fold rings hang straight; the fold itself shows before and after', () => {
  const lesson = lessonOf('byzantine');
  const widthOf = (id: string): number =>
    Number(/ width="([\d.]+)"/.exec(drawLesson(lesson, keptShape, { of: id, ...front })?.svg ?? '')?.[1]);
  // Carried rings still lie beyond the ring that carries them; folded back they lie over the pair before.
  // A ring seen from its face is 72 units wide, the margins 28: pair, ring and pair in a row take more than two rings.
  expect(widthOf('repeat-1')).toBeGreaterThan(28 + 2.2 * 72);
  const fold = drawLesson(lesson, keptShape, { of: 'repeat-2', ...front });
  const [before = '', after = ''] = fold?.svg.split('<g transform="translate(') ?? [];
  // One movement through the pair that is there, one through the pair that is carried.
  expect(before.match(/<circle/g)?.length).toBeGreaterThanOrEqual(3);
  expect(before).toContain('>1+2</text>');
  expect(before).toContain('>4+5</text>');
  expect(after).toContain('>6</text>');
  // Arrows show the way in, so they stand in the first half alone.
  expect(after).not.toContain('<circle');
});

test('a fold is shown only from the placement on that tells it, however many came before', () => {
  const lesson = lessonOf('box-chain', 7.2);
  const halves = (id: string): readonly string[] =>
    (drawLesson(lesson, keptShape, { of: id, ...front })?.svg ?? '').split('<g transform="translate(');
  // Rings 8 and 9 are carried by ring 7, and folded back once ring 10 has gone through them too.
  const [entering = '', carrying = ''] = halves('repeat-1');
  expect(entering).toContain('>4+5</text>');
  expect(entering).not.toContain('>8</text>');
  expect(carrying).toContain('>8+9</text>');
  const [before = '', after = ''] = halves('repeat-2');
  expect(before).toContain('>8+9</text>');
  expect(after).toContain('>8</text>');
  expect(after).not.toContain('>8+9</text>');
  expect(halves('finishing-1')).toHaveLength(1);
  // By hand it is turned as it hangs.
  const scene = sceneOfLesson(lesson, keptShape, { of: 'repeat-1', ...front });
  expect(scene?.rings.map(({ label }) => label)).toEqual(['4', '5', '7', '8', '9']);
});
