/** Where to go after signing in: a place on this site that the address named, and nowhere else. */

/**
 * The path, query and fragment of `wanted` where it is a path on this site,
 * else `otherwise`. Whatever a browser could read as another site's address
 * (`//elsewhere`, `/\elsewhere`, tabs and line ends that it would drop) is not.
 */
export function wayBack(wanted: string | undefined, otherwise: string): string {
  if (!wanted?.startsWith('/')) return otherwise;
  const here = 'http://here.invalid';
  if (!URL.canParse(wanted, here)) return otherwise;
  const { origin, pathname, search, hash } = new URL(wanted, here);
  // Read again: a path such as `/.//elsewhere` is one only after its dots are resolved.
  if (origin !== here || pathname.startsWith('//')) return otherwise;
  return `${pathname}${search}${hash}`;
}
