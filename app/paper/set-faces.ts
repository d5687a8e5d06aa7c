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

/** A text stays one where the plain face prints all of it; else it is parted by faces, its style kept. */
export function facesFor(signs: Signs): FacesFor {
  let lost = false;
  const setText = (text: string): unknown => {
    const runs = signs.runsOf(text);
    lost ||= signs.lostIn(text).length > 0;
    return runs.every(({ face }) => face === 'Roboto')
      ? runs.map((run) => run.text).join('')
      : runs.map((run) => (run.face === 'Roboto' ? { text: run.text } : { text: run.text, font: run.face }));
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
