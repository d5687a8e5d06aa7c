import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { SETTINGS } from '#lib/config/environment.ts';

const root = join(import.meta.dirname, '..', '..');

describe('.env.example', async () => {
  const lines = (await readFile(join(root, '.env.example'), 'utf8')).split('\n');
  const named = lines.flatMap((line) => /^#?([A-Z_]+)=/.exec(line)?.[1] ?? []);

  it('lists every setting once, and none that there is not', () => {
    expect(named.toSorted()).toEqual(SETTINGS.toSorted());
  });

  it('sets nothing by itself', () => {
    expect(lines.filter((line) => line !== '' && !line.startsWith('#'))).toEqual([]);
  });
});
