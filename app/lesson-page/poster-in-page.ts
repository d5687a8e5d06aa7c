/**
 * Pictures that a page is written with, by their addresses. Server components
 * and what is drawn for the browser are two programs within one process, each
 * with modules of its own; so they meet in the process itself.
 */
/** Each up to 27 kB of text. One that has gone is asked for by its address. */
const MOST_KEPT = 32;

declare global {
  var picturesInPages: Map<string, string> | undefined;
}

/** @param picture the same as a `data:` address (RFC 2397) */
export function keepInPage(address: string, picture: string): void {
  const kept = globalThis.picturesInPages ?? new Map<string, string>();
  globalThis.picturesInPages = kept;
  kept.delete(address);
  kept.set(address, picture);
  const oldest = kept.size > MOST_KEPT ? kept.keys().next().value : undefined;
  if (oldest !== undefined) kept.delete(oldest);
}

/** The picture itself while a page is written; in a browser, and of what is not kept, its address. */
export const writtenInPage = (address: string): string => globalThis.picturesInPages?.get(address) ?? address;
