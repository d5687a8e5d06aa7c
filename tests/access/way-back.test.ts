import { describe, expect, test } from 'vitest';
import { wayBack } from '#lib/access/way-back.ts';

describe('the way back after signing in', () => {
  test.each(['/bench', '/bench/rowan/lessons/1/transcript?at=62000#cue-3', '/invitation/a_b-C'])(
    'is a place on this site: %s',
    (path) => {
      expect(wayBack(path, '/bench')).toBe(path);
    },
  );

  // As browsers read addresses: WHATWG URL Standard, special schemes, where a
  // backslash is a slash and tabs and line ends are dropped.
  test.each([
    undefined,
    '',
    'bench',
    'https://elsewhere.example/',
    '//elsewhere.example',
    '/\\elsewhere.example',
    '\\\\elsewhere.example',
    '/\t/elsewhere.example',
    '/\n/elsewhere.example',
    '/.//elsewhere.example',
    '/a/..//elsewhere.example',
    'javascript:alert(1)',
    'data:text/html,x',
  ])('never leaves it: %j', (wanted) => {
    expect(wayBack(wanted, '/bench')).toBe('/bench');
  });
});
