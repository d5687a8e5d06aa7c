/** What every answer tells the browser to forbid. */
import { createHash } from 'node:crypto';
import { EMBED_STYLE } from '#app/lesson-page/embed-page.ts';

/**
 * The policy for one answer. Scripts run from this site's files, or where they
 * carry the answer's own nonce; style attributes are allowed, since the screens
 * place things with them. Nothing is fetched from anywhere else.
 * Source: W3C Content Security Policy Level 3.
 */
export const contentSecurityPolicy = (nonce: string): string =>
  [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}'`,
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "media-src 'self' blob:",
    "connect-src 'self'",
    "worker-src 'self' blob:",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'self'",
  ].join('; ');

/** Whether a path is that of a lesson's player for other sites: the one thing here that may stand in their frames. */
export const isEmbedPath = (path: string): boolean =>
  /^\/workshop\/[a-z0-9-]+\/lesson\/[a-z0-9-]+\/embed$/.test(path);

const styleHash = createHash('sha256').update(EMBED_STYLE).digest('base64');

/** The policy of that player: no script at all, its one style, media and pictures of ours, any site round it. */
export const EMBED_POLICY = [
  "default-src 'none'",
  "img-src 'self' data:",
  "media-src 'self'",
  `style-src 'sha256-${styleHash}'`,
  "base-uri 'none'",
  "form-action 'none'",
  'frame-ancestors *',
].join('; ');

/**
 * What is added below a secret address: that nobody keeps it, lists it, or is
 * told where a reader came from. Routes may set a cache time; `no-store` is
 * theirs to repeat.
 */
const SECRET: Readonly<Record<string, string>> = {
  'referrer-policy': 'no-referrer',
  'x-robots-tag': 'noindex, nofollow, noarchive',
  'cache-control': 'no-store',
};

export const headersBelow = (path: string): Readonly<Record<string, string>> =>
  path.startsWith('/preview/') ? SECRET : {};

/**
 * The fixed headers that go with it.
 * @param address under which people reach the site; where it is https, browsers are told to stay with https.
 */
export const securityHeaders = (address: string): Readonly<Record<string, string>> => ({
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'strict-origin-when-cross-origin',
  'x-frame-options': 'SAMEORIGIN',
  'cross-origin-opener-policy': 'same-origin',
  'permissions-policy': 'camera=(), microphone=(), geolocation=(), payment=(), usb=(), browsing-topics=()',
  ...(address.startsWith('https://') ? { 'strict-transport-security': 'max-age=31536000' } : {}),
});
