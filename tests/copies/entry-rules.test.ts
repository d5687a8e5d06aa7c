/** The directory of an archive, as anybody may have written it. */
import { describe, expect, test } from 'vitest';
import { type ClaimedEntry, entriesFault } from '#lib/copies/entry-rules.ts';

describe('the directory of an archive', () => {
  const entry: ClaimedEntry = {
    name: 'a/b.txt',
    isLocked: false,
    method: 0,
    mode: 0o100644,
    packedBytes: 10,
    bytes: 10,
    at: 0,
    headBytes: 37,
  };

  test.each<readonly [string, readonly ClaimedEntry[], string | undefined]>([
    ['plain', [entry, { ...entry, name: 'a/c.txt', at: 47 }], undefined],
    ['files that share bytes', [entry, { ...entry, name: 'a/c.txt', at: 46 }], 'files-overlap'],
    ['locked', [{ ...entry, isLocked: true }], 'is-locked'],
    ['packed in a way that is not taken', [{ ...entry, method: 14 }], 'packed-otherwise'],
    ['a pipe', [{ ...entry, mode: 0o010644 }], 'is-a-link'],
    ['a name with a control', [{ ...entry, name: 'a\u0007b' }], 'name-not-plain'],
    ['a name with a step back inside', [{ ...entry, name: 'a/./b' }], 'name-not-plain'],
    ['a name as Windows writes it', [{ ...entry, name: 'a\\b' }], 'name-not-plain'],
    ['tight, but small', [{ ...entry, method: 8, packedBytes: 10, bytes: 900_000 }], undefined],
    ['tight and large', [{ ...entry, method: 8, packedBytes: 10_000, bytes: 9_000_000 }], 'blown-up'],
  ])('%s', (_name, entries, code) => expect(entriesFault(entries)?.code).toBe(code));
});
