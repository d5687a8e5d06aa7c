/** Which ring kinds of a lesson are meant by the words that are said of rings: `large copper ones`. */
import { metalNameOf } from '#lib/rings/metals.ts';
import type { RingKind } from '#lib/rings/ring-kind.ts';

const words = (text: string): readonly string[] => text.split(' ');

const COLOURS = words(
  'red blue green yellow orange purple violet pink turquoise teal black white grey gray golden rose brown lilac navy',
);
const METALS = words(
  'copper brass bronze silver sterling steel stainless aluminium aluminum titanium niobium gold rubber silicone',
);
/** Sizes by name; both words of a pair are taken for the same. */
const SIZES: ReadonlyMap<string, string> = new Map([
  ['large', 'large'],
  ['larger', 'large'],
  ['big', 'large'],
  ['bigger', 'large'],
  ['small', 'small'],
  ['smaller', 'small'],
  ['little', 'small'],
  ['tiny', 'small'],
  ['medium', 'medium'],
  ['thick', 'thick'],
  ['thin', 'thin'],
]);

/** A word as it is compared: `big` is `large`, `aluminum` is `aluminium`. */
const plain = (word: string): string =>
  SIZES.get(word) ?? (word === 'aluminum' ? 'aluminium' : word === 'gray' ? 'grey' : word);

const DESCRIBES = new Set([...COLOURS, ...METALS, ...SIZES.keys()]);

/** Whether a word tells rings apart by colour, metal or size; also words of the lesson's own names. */
export const describesRings = (word: string, kinds: readonly RingKind[]): boolean =>
  DESCRIBES.has(word) || kinds.some((kind) => ownWords(kind).has(word));

const NO_NAME = new Set(['ring', 'rings', 'jump', 'the', 'of', 'and', 'in', 'a']);

const ownWords = (kind: RingKind): ReadonlySet<string> =>
  new Set(
    `${kind.name} ${kind.colour} ${metalNameOf(kind)}`
      .toLowerCase()
      .split(/[^\p{L}]+/u)
      .filter((word) => word.length > 1 && !NO_NAME.has(word))
      .map(plain),
  );

/**
 * Ids of the kinds that all the describing words fit; several where they do
 * not tell enough. Without such words every kind may be meant.
 */
export function kindsMeant(said: readonly string[], kinds: readonly RingKind[]): readonly string[] {
  const telling = said.filter((word) => describesRings(word, kinds)).map(plain);
  if (telling.length === 0) return kinds.map(({ id }) => id);
  return kinds.filter((kind) => telling.every((word) => ownWords(kind).has(word))).map(({ id }) => id);
}

/** Colours and metals named that no ring kind of the lesson has. */
export function strangeWords(said: readonly string[], kinds: readonly RingKind[]): readonly string[] {
  const own = new Set(kinds.flatMap((kind) => [...ownWords(kind)]));
  return said.filter((word) => (COLOURS.includes(word) || METALS.includes(word)) && !own.has(plain(word)));
}
