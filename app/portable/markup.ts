/** HTML as text for files that stand alone: whatever is put in is escaped, unless it is markup already. */
import { escapeUTF8 } from 'entities';

export class Markup {
  readonly text: string;
  constructor(text: string) {
    this.text = text;
  }
}

type Put = string | number | Markup | readonly Markup[] | null;

/** Characters that HTML cannot hold (Living Standard, 13.1.4): controls other than white space. */
const NOT_HTML = /[^\P{Cc}\t\n\r]/gu;

const textOf = (put: Put): string => {
  if (put === null) return '';
  if (put instanceof Markup) return put.text;
  if (typeof put === 'object') return put.map(({ text }) => text).join('');
  return escapeUTF8(String(put).toWellFormed().replaceAll(NOT_HTML, '\uFFFD'));
};

/** Markup from a template. Values of attributes must stand in double quotes. */
export const html = (strings: TemplateStringsArray, ...puts: readonly Put[]): Markup =>
  new Markup(
    strings.map((part, index) => (index === 0 ? part : textOf(puts[index - 1] ?? null) + part)).join(''),
  );

/** Markup of every thing of a list. */
export const each = <T>(things: readonly T[], make: (thing: T, index: number) => Markup): Markup =>
  new Markup(things.map((thing, index) => make(thing, index).text).join(''));

/** Markup where something holds. */
export const when = (holds: boolean, make: () => Markup): Markup => (holds ? make() : new Markup(''));

/** What is said of the parts, without the empty ones. */
export const joined = (parts: readonly string[], by = ', '): string =>
  parts.filter((part) => part.trim() !== '').join(by);
