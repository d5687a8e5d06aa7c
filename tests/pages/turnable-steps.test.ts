/** A step offers to be turned where it is seen in space, and nowhere else. */
import { expect, test } from 'vitest';
import { keptShape, keptTurnable } from '#app/pictures/kept-shapes.ts';
import { pictureTexts, sceneOfLesson } from '#lib/lesson/lesson-pictures.ts';
import { readDemo } from '../../prisma/demo/read-demo.ts';

const asked = (of: string) => ({ of, roll: 0, side: 'front' }) as const;

test("the demo's woven steps can be turned; the rings of its clasp, of which only a scheme is known, can not", () => {
  const demo = readDemo().first;
  const turnable = keptTurnable(demo);
  const pictured = [...pictureTexts(demo).keys()];
  expect(demo.repeat.every(({ id }) => !pictured.includes(id) || turnable.has(id))).toBe(true);
  const flat = pictured.filter((id) => !turnable.has(id));
  expect(flat).toContain('clasp-ring');
  for (const id of flat) expect(sceneOfLesson(demo, keptShape, asked(id))).toBeNull();
  for (const id of turnable) expect(sceneOfLesson(demo, keptShape, asked(id))).not.toBeNull();
});

test('rings too tight for their weave have no shape, and nothing that could be turned', () => {
  const demo = readDemo().first;
  const tight = demo.ringKinds.map((kind) => ({ ...kind, measuredInnerMm: 2 }));
  expect([...keptTurnable({ ...demo, ringKinds: tight })]).toEqual([]);
});
