/** Rings that are passed, as words: how many, which ones, and from which side. */
import type { Placement, RingRef } from '#lib/weave/placement.ts';
import { countWord } from './count-word.ts';

type Passes = Placement['passes'];

const ORDINALS = ['newest', 'second newest', 'third newest', 'fourth newest', 'fifth newest', 'sixth newest'];
const FIRSTS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth'];

/** `second newest`, `first`; figures beyond the sixth. */
export function placeWord({ nth, from }: Pick<RingRef, 'nth' | 'from'>): string {
  const words = from === 'newest' ? ORDINALS : FIRSTS;
  return words[nth - 1] ?? `${nth}th ${from}`;
}

/** ` of row A`, ` of the folded row`; empty where the piece has but one row. */
export const rowWord = (row: string): string =>
  row === '' ? '' : row.length === 1 ? ` of row ${row}` : ` of the ${row} row`;

/**
 * `through two rings from the front and one from the back`; where the rings
 * are named, `through the last two rings of row A from the back`. Empty where
 * nothing is passed.
 */
export function passesWords(passes: Passes): string {
  if (passes.length === 0) return '';
  const groups = groupsOf(passes);
  const named = groups.map((group) => namedWords(group));
  if (named.every((words) => words !== null)) return `through ${named.join(' and ')}`;
  const front = passes.filter((pass) => pass.from === 'front').length;
  const back = passes.length - front;
  const rings = `${countWord(passes.length)} ${passes.length === 1 ? 'ring' : 'rings'}`;
  if (back === 0) return `through ${rings} from the front`;
  if (front === 0) return `through ${rings} from the back`;
  return `through ${rings}, ${countWord(front)} from the front and ${countWord(back)} from the back`;
}

/** Passes that follow one another from one side through one row. */
function groupsOf(passes: Passes): readonly Passes[] {
  const groups: Passes[number][][] = [];
  for (const pass of passes) {
    const group = groups.at(-1);
    const last = group?.at(-1);
    if (group && last && last.from === pass.from && last.ring?.row === pass.ring?.row) group.push(pass);
    else groups.push([pass]);
  }
  return groups;
}

function namedWords(group: Passes): string | null {
  const rings = group.flatMap(({ ring }) => (ring ? [ring] : []));
  const [first] = rings;
  if (!first || rings.length < group.length) return null;
  const side = `${rowWord(first.row)} from the ${group[0]?.from}`;
  if (rings.length === 1) return `the ${placeWord(first)} ring${side}`;
  const nths = rings.map(({ nth }) => nth).toSorted((a, b) => a - b);
  const isRun = nths.every((nth, index) => nth === (nths[0] ?? 0) + index);
  const sameEnd = rings.every(({ from }) => from === first.from);
  if (isRun && sameEnd && nths[0] === 1)
    return `the ${first.from === 'newest' ? 'last' : 'first'} ${countWord(rings.length)} rings${side}`;
  if (isRun && sameEnd && first.from === 'newest' && nths[0] === 2)
    return `the ${countWord(rings.length)} rings before the newest one${side}`;
  const places = rings.map(placeWord);
  return `the ${places.slice(0, -1).join(', ')} and ${places.at(-1)} rings${side}`;
}
