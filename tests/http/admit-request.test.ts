import { describe, expect, it, test } from 'vitest';
import { refusalOf } from '#app/http/admit-request.ts';

const MIB = 1024 * 1024;
const own = ['127.0.0.1:3000'];
const post = (path: string, headers: Record<string, string>) =>
  refusalOf({ method: 'POST', path, headers }, own);

describe('a request that changes something', () => {
  test.each([
    ['an ordinary body', '/api/workshops/w/lessons', 4 * MIB, null],
    ['one byte too many', '/api/workshops/w/lessons', 4 * MIB + 1, 413],
    ['a transcript file', '/api/workshops/w/lessons/l/transcript-files', 20 * MIB, null],
    ['a transcript file that is too large', '/api/workshops/w/lessons/l/transcript-files', 20 * MIB + 1, 413],
    ['a draft of many cues', '/api/workshops/w/lessons/l/draft', 16 * MIB, null],
    ['a recording, whose route counts itself', '/api/uploads/abc', 40 * 1024 * MIB, null],
  ])('%s', (_, path, length, status) => {
    expect(post(path, { 'content-length': String(length) })?.status ?? null).toBe(status);
  });

  it('must say its length, since only that is held to', () => {
    expect(post('/api/auth/sign-in', { 'transfer-encoding': 'chunked' })).toEqual({
      status: 411,
      code: 'length-missing',
    });
    expect(post('/api/uploads/abc', { 'transfer-encoding': 'chunked' })).toBeNull();
  });

  test.each([
    ['from our own page', { origin: 'http://127.0.0.1:3000' }, null],
    ['from another site', { origin: 'https://elsewhere.example' }, 403],
    ['from another port of the same machine', { origin: 'http://127.0.0.1:3001' }, 403],
    ['from a page that hides its origin', { origin: 'null' }, 403],
    ['from another site by the fetch metadata', { 'sec-fetch-site': 'cross-site' }, 403],
    ['from our own page by the fetch metadata', { 'sec-fetch-site': 'same-origin' }, null],
    ['from a program that is no browser', {}, null],
  ])('%s', (_, headers, status) => {
    expect(post('/api/auth/sign-out', headers as Record<string, string>)?.status ?? null).toBe(status);
  });
});

it('lets everybody read', () => {
  const headers = { origin: 'https://elsewhere.example', 'sec-fetch-site': 'cross-site' };
  expect(refusalOf({ method: 'GET', path: '/', headers }, own)).toBeNull();
});
