/** Gives every text of a sheet the face that can print it. */
import type { Content } from 'pdfmake/interfaces';
import type { Signs } from './signs.ts';

export interface FacesFor {
  <T extends Content>(part: T): Content;
  /** Whether anything was left out so far. */
  lost: () => boolean;
}

/** Where parts of a sheet hold further parts. */
const HOLDERS = ['text', 'stack', 'columns', 'ul', 'ol', 'body'];

/** A word that no line may hold: unbroken, it would push a table over the edge of the paper. Signs of two code units are left whole. */
const LONG_WORD = /([^\s\-\uD800-\uDFFF]{25,})/;

/** A text stays one where the plain face prints all of it and every word fits a line; else it is parted by faces, its style kept. */
export function facesFor(signs: Signs): FacesFor {
  let lost = false;
  const setText = (text: string): unknown => {
    const runs = signs.runsOf(text);
    lost ||= signs.lostIn(text).length > 0;
    if (runs.every(({ face }) => face === 'Roboto') && !LONG_WORD.test(text))
      return runs.map((run) => run.text).join('');
    return runs.flatMap((run) =>
      run.text
        .split(LONG_WORD)
        .filter((part) => part !== '')
        .map((part) => ({
          text: part,
          ...(run.face === 'Roboto' ? {} : { font: run.face }),
          ...(LONG_WORD.test(part) ? { wordBreak: 'break-all' } : {}),
        })),
    );
  };
  const setPart = (part: unknown, isText: boolean): unknown => {
    if (typeof part === 'string') {
      const set = setText(part);
      return isText || typeof set === 'string' ? set : { text: set };
    }
    if (Array.isArray(part))
      return part.flatMap((one) => {
        const set = setPart(one, isText);
        return isText && Array.isArray(set) ? set : [set];
      });
    if (part === null || typeof part !== 'object') return part;
    return Object.fromEntries(
      Object.entries(part).map(([key, value]) => [
        key,
        key === 'table'
          ? setPart(value, false)
          : HOLDERS.includes(key)
            ? setPart(value, key === 'text')
            : value,
      ]),
    );
  };
  return Object.assign((part: Content) => setPart(part, false) as Content, { lost: () => lost });
}
