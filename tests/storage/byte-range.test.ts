/** Ranges as RFC 9110 section 14 gives them; its own examples (14.1.2) for a file of 10,000 bytes. */
import { describe, expect, it } from 'vitest';
import { alreadyHas, readByteRange } from '#lib/storage/byte-range.ts';

const ETAG = '"abc"';

describe('the examples of RFC 9110, 14.1.2, for 10,000 bytes', () => {
  it.each([
    ['the first 500 bytes', 'bytes=0-499', 0, 500],
    ['the second 500 bytes', 'bytes=500-999', 500, 1000],
    ['the final 500 bytes as a suffix', 'bytes=-500', 9500, 10_000],
    ['the final 500 bytes with an open end', 'bytes=9500-', 9500, 10_000],
    ['the first byte', 'bytes=0-0', 0, 1],
  ])('%s: %s', (_what, header, start, end) => {
    expect(readByteRange(header, 10_000, ETAG)).toEqual({ kind: 'part', start, end });
  });
  it.each(['bytes= 0-999, 4500-5499, -1000', 'bytes=0-0,-1', 'bytes=500-600,601-999'])(
    'several spans are answered with the whole: %s',
    (header) => {
      expect(readByteRange(header, 10_000, ETAG)).toEqual({ kind: 'whole' });
    },
  );
});

describe('ends', () => {
  it('an end beyond the file is cut to the file', () => {
    expect(readByteRange('bytes=5-999', 10, ETAG)).toEqual({ kind: 'part', start: 5, end: 10 });
  });
  it('a suffix longer than the file is the whole file, as a part', () => {
    expect(readByteRange('bytes=-999', 10, ETAG)).toEqual({ kind: 'part', start: 0, end: 10 });
  });
  it.each(['bytes=10-', 'bytes=10-20', 'bytes=-0'])('%s of ten bytes is unsatisfiable', (header) => {
    expect(readByteRange(header, 10, ETAG)).toEqual({ kind: 'unsatisfiable' });
  });
  it('no byte of an empty file can be had', () => {
    expect(readByteRange('bytes=0-', 0, ETAG)).toEqual({ kind: 'unsatisfiable' });
    expect(readByteRange('bytes=-5', 0, ETAG)).toEqual({ kind: 'unsatisfiable' });
  });
});

describe('what is not a range we know gives the whole file', () => {
  it.each(['items=0-5', 'bytes', 'bytes=', 'bytes=-', 'bytes=a-b', 'bytes=5-2', 'bytes=0x1-2', '0-5'])(
    '%s',
    (header) => {
      expect(readByteRange(header, 10, ETAG)).toEqual({ kind: 'whole' });
    },
  );
  it('and so does no header', () => {
    expect(readByteRange(null, 10, ETAG)).toEqual({ kind: 'whole' });
  });
});

describe('If-Range (RFC 9110, 13.1.5)', () => {
  it('lets the range count only for the very same strong tag', () => {
    expect(readByteRange('bytes=0-4', 10, ETAG, '"abc"').kind).toBe('part');
    expect(readByteRange('bytes=0-4', 10, ETAG, '"abd"').kind).toBe('whole');
    expect(readByteRange('bytes=0-4', 10, ETAG, 'W/"abc"').kind).toBe('whole');
    expect(readByteRange('bytes=0-4', 10, ETAG, 'Wed, 21 Oct 2015 07:28:00 GMT').kind).toBe('whole');
  });
});

describe('If-None-Match compares weakly (RFC 9110, 13.1.2)', () => {
  it.each([
    ['"abc"', true],
    ['W/"abc"', true],
    ['"x", "abc"', true],
    ['*', true],
    ['"x"', false],
    [null, false],
  ])('%s', (header, has) => {
    expect(alreadyHas(header, ETAG)).toBe(has);
  });
});
