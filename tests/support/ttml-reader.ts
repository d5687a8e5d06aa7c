/** A reader of TTML that others wrote (npm imsc), to check what we write. */
import { createRequire } from 'node:module';

interface Isd {
  readonly contents?: readonly Isd[];
  readonly kind?: string;
  readonly text?: string;
}
interface Documents {
  fromXML(xml: string, errors: object): { getMediaTimeEvents(): readonly number[] };
}
interface Isds {
  generateISD(document: object, seconds: number): Isd;
}

const require = createRequire(import.meta.url);
// Its main file also loads what draws in a browser.
const { fromXML } = require('imsc/src/main/js/doc.js') as Documents;
const { generateISD } = require('imsc/src/main/js/isd.js') as Isds;

/** What is shown from each moment on, ms; and what the reader finds wrong. */
export function readWithImsc(xml: string) {
  const errors: string[] = [];
  const note = (message: string) => {
    errors.push(message);
    return false;
  };
  const document = fromXML(xml, { warn: note, error: note, fatal: note });
  const moments = document.getMediaTimeEvents().map((seconds) => ({
    atMs: Math.round(seconds * 1000),
    text: shownIn(generateISD(document, seconds)),
  }));
  return { moments, errors };
}

function shownIn(isd: Isd): string {
  if (isd.kind === 'br') return '\n';
  const inside = (isd.contents ?? []).map(shownIn).join('');
  return (isd.text ?? '') + inside + (isd.kind === 'p' ? '\n' : '');
}
