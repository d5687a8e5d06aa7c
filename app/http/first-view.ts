/**
 * Lets a public page be painted from its first bytes alone. Next puts every
 * script of a page before its text, and its style sheets into files that have
 * to be fetched before anything is shown; on a slow telephone those take the
 * line from the picture that is seen first. Here styles go into the page, and
 * scripts behind its text. What the page says, and in which order styles
 * apply, stays as it was.
 */
import { readFileSync } from 'node:fs';
import type { OutgoingHttpHeader, ServerResponse } from 'node:http';
import { join } from 'node:path';

/** Public pages, for pupils; members come back to theirs with everything at hand. */
export const isPublicPage = (path: string): boolean => /^\/(workshop|preview)\//.test(path);

const SHEET =
  /<link rel="stylesheet" href="(\/_next\/static\/[\w/.-]+\.css)"([^>]*data-precedence="next"[^>]*)>/g;
const EARLY = /<link rel="preload"[^>]* as="(?:script|style)"[^>]*>/g;
const SCRIPT = /<script src="\/_next\/[^"]+" async=""[^>]*><\/script>/g;

/**
 * The page with its styles inside and its scripts at its end; one that Next
 * wrote otherwise than expected comes back as it was.
 * @param styleOf the text of a style sheet; null for one that is not known
 */
export function paintedFirst(page: string, styleOf: (address: string) => string | null): string {
  const headEnd = page.indexOf('</head>');
  const bodyEnd = page.lastIndexOf('</body>');
  if (headEnd < 0 || bodyEnd < headEnd) return page;
  const scripts: string[] = [];
  const head = page
    .slice(0, headEnd)
    .replace(EARLY, '')
    .replace(SCRIPT, (script) => {
      scripts.push(script);
      return '';
    })
    .replace(SHEET, (sheet, address: string, rest: string) => {
      const style = styleOf(address);
      // The link stays for React, which would fetch it again and wait; for print alone, it holds nothing up.
      return style === null
        ? sheet
        : `<style>${style}</style><link rel="stylesheet" href="${address}" media="print"${rest}>`;
    });
  return `${head}${page.slice(headEnd, bodyEnd)}${scripts.join('')}${page.slice(bodyEnd)}`;
}

/** Reads style sheets of a build, each once: their names change with what is in them. */
export function stylesOfBuild(folder: string): (address: string) => string | null {
  const known = new Map<string, string | null>();
  return (address) => {
    const read = known.get(address);
    if (read !== undefined) return read;
    const style = styleAt(folder, address);
    known.set(address, style);
    return style;
  };
}

function styleAt(folder: string, address: string): string | null {
  try {
    const text = readFileSync(join(folder, address.slice('/_next/'.length)), 'utf8');
    // Addresses in it start from where the sheet lies.
    const style = text.replace(/url\(\.\.\/media\//g, 'url(/_next/static/media/');
    return style.includes('</') || style.includes('url(..') ? null : style;
  } catch {
    return null;
  }
}

/**
 * Holds back what is written of a page until it is whole, and sends it so that it is painted first.
 * @param toldStatus what the page says of its status once it is written; null where all is well
 */
export function sendPaintedFirst(
  response: ServerResponse,
  styleOf: (address: string) => string | null,
  toldStatus: () => number | null,
): void {
  const { write, end, flushHeaders } = response;
  const parts: Buffer[] = [];
  const isPage = (): boolean =>
    !response.headersSent && String(response.getHeader('content-type') ?? '').startsWith('text/html');
  const take = (chunk: unknown): void => {
    if (typeof chunk === 'string' || chunk instanceof Uint8Array) parts.push(Buffer.from(chunk));
  };
  response.flushHeaders = () => {
    if (!isPage()) flushHeaders.call(response);
  };
  response.write = ((chunk: unknown, ...rest: unknown[]) => {
    if (!isPage()) return Reflect.apply(write, response, [chunk, ...rest]);
    take(chunk);
    callLast(rest);
    return true;
  }) as typeof write;
  response.end = ((chunk: unknown, ...rest: unknown[]) => {
    if (!isPage()) return Reflect.apply(end, response, [chunk, ...rest]);
    take(chunk);
    const page = Buffer.concat(parts).toString();
    const body = Buffer.from(paintedFirst(page, styleOf));
    response.statusCode = toldStatus() ?? response.statusCode;
    if (page !== '') response.setHeader('content-length', body.length);
    const link = lateLinks(response.getHeader('link'));
    if (link === null) response.removeHeader('link');
    else response.setHeader('link', link);
    return Reflect.apply(end, response, [page === '' ? undefined : body, ...rest]);
  }) as typeof end;
}

const callLast = (given: readonly unknown[]): void => {
  const done = given.at(-1);
  if (typeof done === 'function') done();
};

/** What an answer's head asks for early, without sheets that stand in the page. */
function lateLinks(link: OutgoingHttpHeader | undefined): string | null {
  const kept = String(link ?? '')
    .split(/,\s*(?=<)/)
    .filter((one) => one !== '' && !one.includes('as="style"') && !one.includes('rel=preconnect'));
  return kept.length === 0 ? null : kept.join(', ');
}
