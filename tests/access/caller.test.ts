import { expect, test } from 'vitest';
import { ROLES, roleSuffices } from '#lib/access/caller.ts';

test('each role may do what the smaller ones may, and no more', () => {
  const table = ROLES.map((has) => ROLES.map((needed) => roleSuffices(has, needed)));
  expect(table).toEqual([
    [true, false, false],
    [true, true, false],
    [true, true, true],
  ]);
});
