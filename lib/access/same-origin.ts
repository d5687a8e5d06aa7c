/**
 * Whether a request that changes something was sent by our own pages. The
 * session cookie alone does not tell: a browser may send it along with what
 * another site's page asks for.
 */

const SAFE_METHODS: ReadonlySet<string> = new Set(['GET', 'HEAD', 'OPTIONS']);

/**
 * True for methods that change nothing, for requests that a browser says come
 * from the same origin, and for programs that are no browser (they send
 * neither header, and nobody can make them carry somebody else's cookie).
 * `address` is the site's own, for the case of a proxy that rewrites Host.
 * After the Fetch Metadata specification (W3C) and RFC 6454, section 7.
 */
export function isOwnRequest(request: Request, address: string): boolean {
  if (SAFE_METHODS.has(request.method)) return true;
  const site = request.headers.get('sec-fetch-site');
  if (site !== null) return site === 'same-origin' || site === 'none';
  const origin = request.headers.get('origin');
  if (origin === null) return true;
  return origin === new URL(address).origin || hostOf(origin) === request.headers.get('host');
}

const hostOf = (origin: string): string | null => (URL.canParse(origin) ? new URL(origin).host : null);
