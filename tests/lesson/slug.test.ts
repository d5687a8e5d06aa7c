import { describe, expect, test } from 'vitest';
import { freeSlug, slugOf } from '#lib/lesson/slug.ts';

describe('words of an address', () => {
  test.each([
    ['Two-colour box chain', 'two-colour-box-chain'],
    ['Två färger!', 'tva-farger'],
    ['Ørsted’s große Kette', 'orsteds-grosse-kette'],
    ['  --  18 SWG, 1/4 in --', '18-swg-1-4-in'],
    ['鎖', 'lesson'],
    ['', 'lesson'],
  ])('%j becomes %j', (text, slug) => {
    expect(slugOf(text, 'lesson')).toBe(slug);
  });

  test('end at a whole word, before 60 letters', () => {
    const slug = slugOf('a long title that goes on and on until nobody reads it any more at all', 'lesson');
    expect(slug.length).toBeLessThanOrEqual(60);
    expect(slug).toBe('a-long-title-that-goes-on-and-on-until-nobody-reads-it-any');
    expect(slugOf('x'.repeat(80), 'lesson')).toHaveLength(60);
  });

  test('get the first number that is free', () => {
    expect(freeSlug('box', [])).toBe('box');
    expect(freeSlug('box', ['box', 'box-2', 'box-4', 'boxes'])).toBe('box-3');
  });
});
