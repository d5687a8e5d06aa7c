import { describe, expect, test } from 'vitest';
import { isOwnRequest } from '#lib/access/same-origin.ts';

const SITE = 'https://rings.example';

const asked = (method: string, headers: Record<string, string>): boolean =>
  isOwnRequest(new Request(`${SITE}/api/x`, { method, headers: new Headers(headers) }), SITE);

describe('a request that changes something', () => {
  test.each([
    ['a page of the site, in today’s browsers', { 'sec-fetch-site': 'same-origin', origin: SITE }],
    ['a page of the site, in older ones', { origin: SITE }],
    [
      'a page reached under another name of this server',
      { origin: 'http://localhost:3000', host: 'localhost:3000' },
    ],
    ['a program that is no browser', {}],
  ])('is taken from %s', (_, headers) => {
    expect(asked('POST', headers)).toBe(true);
  });

  test.each([
    ['another site', { 'sec-fetch-site': 'cross-site', origin: 'https://elsewhere.example' }],
    ['another site, in older browsers', { origin: 'https://elsewhere.example', host: 'rings.example' }],
    ['a neighbouring subdomain', { 'sec-fetch-site': 'same-site', origin: 'https://other.rings.example' }],
    ['a sandboxed frame', { origin: 'null', host: 'rings.example' }],
    [
      'the same host by plain http, port left out',
      { origin: 'http://rings.example:8080', host: 'rings.example' },
    ],
  ])('is refused from %s', (_, headers) => {
    expect(asked('POST', headers)).toBe(false);
    expect(asked('DELETE', headers)).toBe(false);
  });
});

test('what changes nothing is not asked whence it comes', () => {
  expect(asked('GET', { 'sec-fetch-site': 'cross-site' })).toBe(true);
});
