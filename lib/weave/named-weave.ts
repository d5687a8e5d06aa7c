/** Which stored weaves a name means: as the trade writes it, its hyphens and capitals aside. */
import { WEAVES } from './weave-library.ts';

const plain = (name: string): string =>
  ` ${name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, ' ')
    .trim()} `;

/** Names of each weave, and the part before the comma that its variants share. */
const NAMES = WEAVES.flatMap(({ id, name, otherNames }) =>
  [name, name.split(',')[0] ?? '', ...otherNames.split(',')]
    .map(plain)
    .filter((each) => each.trim() !== '')
    .map((each) => ({ id, name: each })),
);

/** Ids of the weaves with the longest name that stands in the text; none where no name does. */
export function weavesNamed(text: string): readonly string[] {
  const told = plain(text);
  const found = NAMES.filter(({ name }) => told.includes(name));
  const longest = Math.max(0, ...found.map(({ name }) => name.length));
  return [...new Set(found.filter(({ name }) => name.length === longest).map(({ id }) => id))];
}
