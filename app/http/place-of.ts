/**
 * The network address that a request came from, as the server in front of the
 * program names it last; a browser that sends the header itself only adds to
 * its left. For limits, never for rights.
 */
export const placeOf = (request: Request): string =>
  request.headers.get('x-forwarded-for')?.split(',').at(-1)?.trim() || 'unknown';
