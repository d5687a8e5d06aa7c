import fc from 'fast-check';
import { expect, test } from 'vitest';
import { applyChange, checkContent, inverseOf } from '#lib/lesson/change.ts';
import { emptyContent } from '#lib/lesson/content.ts';
import { aChange, aDraft } from './a-draft.ts';

test('the inverse of any change takes it back', () => {
  fc.assert(
    fc.property(aDraft, aChange, (draft, made) => {
      expect(applyChange(applyChange(draft, made), inverseOf(draft, made))).toEqual(draft);
    }),
  );
});

test('the inverse of the inverse makes it again', () => {
  fc.assert(
    fc.property(aDraft, aChange, (draft, made) => {
      const after = applyChange(draft, made);
      const back = inverseOf(draft, made);
      expect(applyChange(applyChange(after, back), inverseOf(after, back))).toEqual(after);
    }),
  );
});

test('a document is checked whole: every fault is told, with its place', () => {
  const wrong = {
    ...emptyContent('Byzantine', 'en', 'euro'),
    title: 7,
    sizes: [{ id: 's', name: 'S', bodyMm: -1 }],
  };
  const checked = checkContent(wrong);
  expect(checked.ok ? [] : checked.fault.map((fault) => fault.where).sort()).toEqual([
    'currency',
    'sizes/0/bodyMm',
    'title',
  ]);
});
