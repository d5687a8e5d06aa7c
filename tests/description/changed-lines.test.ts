import { describe, expect, test } from 'vitest';
import { changedLines } from '#lib/description/changed-lines.ts';

describe('lines that changed since a text was taken along', () => {
  test('nothing where nothing did', () => {
    expect(changedLines('one\ntwo\n', 'one\ntwo\n')).toEqual([]);
  });

  test('each change stands between its unchanged neighbours', () => {
    const before = 'Chapters\n0:00 Hello\n0:30 Weave\n1:00 Clasp\n\nTools\n- pliers\n- mat\n';
    const now = 'Chapters\n0:00 Hello\n0:34 Weave\n1:00 Clasp\n\nTools\n- pliers\n';
    expect(changedLines(before, now)).toEqual([
      { is: 'same', line: '0:00 Hello' },
      { is: 'gone', line: '0:30 Weave' },
      { is: 'new', line: '0:34 Weave' },
      { is: 'same', line: '1:00 Clasp' },
      { is: 'same', line: '- pliers' },
      { is: 'gone', line: '- mat' },
    ]);
  });
});
