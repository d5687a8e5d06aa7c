/**
 * Pictures that a page is written with, by their addresses. Server components
 * and what is drawn for the browser are two programs within one process, each
 * with modules of its own; so they meet in the process itself.
 */
declare global {
  var picturesInPages:
    | (Pick<Map<string, string>, 'get'> & { set(address: string, picture: string): unknown })
    | undefined;
}

/** The picture itself while a page is written; in a browser, and of what is not kept, its address. */
export const writtenInPage = (address: string): string => globalThis.picturesInPages?.get(address) ?? address;
