/** Which requests are turned away before any route sees them, by their head alone. */

const MIB = 1024 * 1024;
/** Largest body of an ordinary route. */
const JSON_LIMIT = 4 * MIB;
/** Of routes that take more, by the end of their path: a whole transcript file; 20,000 cues of a draft at once. */
const LARGER_LIMITS: Readonly<Record<string, number>> = {
  'transcript-files': 20 * MIB,
  draft: 16 * MIB,
};

const CHANGES_NOTHING = new Set(['GET', 'HEAD', 'OPTIONS']);

/** The head of a request, as far as it matters here; header names are in small letters. */
export interface RequestHead {
  readonly method: string;
  /** Path without the query. */
  readonly path: string;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
}

export type Refusal =
  | { readonly status: 411; readonly code: 'length-missing' }
  | { readonly status: 413; readonly code: 'body-too-large'; readonly limitBytes: number }
  | { readonly status: 403; readonly code: 'from-another-site' };

/** Most bytes that a request's body may have; null where the route itself counts (recordings). */
export function bodyLimit(path: string): number | null {
  if (path === '/api/uploads' || path.startsWith('/api/uploads/')) return null;
  return LARGER_LIMITS[path.slice(path.lastIndexOf('/') + 1)] ?? JSON_LIMIT;
}

/**
 * Why a request is turned away, or null. A body must say its length before it
 * comes (the HTTP parser holds it to that), and a request that can change
 * something must come from our own pages where the browser says whence it comes.
 * @param ownHosts hosts under which the site is reached, with the port where there is one.
 */
export function refusalOf(head: RequestHead, ownHosts: readonly string[]): Refusal | null {
  if (CHANGES_NOTHING.has(head.method)) return null;
  if (comesFromElsewhere(head.headers, ownHosts)) return { status: 403, code: 'from-another-site' };
  const limitBytes = bodyLimit(head.path);
  if (limitBytes === null) return null;
  if (head.headers['transfer-encoding'] !== undefined) return { status: 411, code: 'length-missing' };
  if (Number(head.headers['content-length'] ?? 0) > limitBytes) {
    return { status: 413, code: 'body-too-large', limitBytes };
  }
  return null;
}

function comesFromElsewhere(headers: RequestHead['headers'], ownHosts: readonly string[]): boolean {
  const origin = headers['origin'];
  if (typeof origin === 'string') return !ownHosts.includes(URL.parse(origin)?.host ?? '');
  const site = headers['sec-fetch-site'];
  return site === 'cross-site' || site === 'same-site';
}
