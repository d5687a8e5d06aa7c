/**
 * Finds a wrong value in a text and puts the right one in its place. Values are
 * compared as they are read aloud: `four small rings`, `4 small rings` and
 * `Four small ring` are the same; signs between words do not count.
 */
import { readNumber, tokensOf } from '#lib/glossary/spoken-number.ts';

/** A word, or a number of any length, and where it stands. */
interface Unit {
  readonly key: string;
  readonly start: number;
  readonly end: number;
}

export interface ValueRule {
  readonly wrong: readonly Unit[];
  readonly right: string;
  /** False where only the word that differs is looked for, without any that stands beside it. */
  readonly isSure: boolean;
}

const NOTHING: Unit = { key: '', start: 0, end: 0 };
const SIGNS = new Set(['.', ',', '!', '?', ';', ':', '“', '”']);
/** Words that say nothing about what stands beside them. */
const HOLLOW = new Set(
  'a an the of is are was were i you we it and or to in on with at for this that these those'.split(' '),
);

export function unitsOf(text: string): readonly Unit[] {
  const tokens = tokensOf(text);
  const units: Unit[] = [];
  for (let at = 0; at < tokens.length; ) {
    const token = tokens[at];
    if (!token) break;
    const number = readNumber(tokens, at);
    const last = tokens[(number?.to ?? at + 1) - 1] ?? token;
    const key = number ? `#${number.value}` : singular(token.word);
    if (!SIGNS.has(token.word)) units.push({ key, start: token.start, end: last.end });
    at = number?.to ?? at + 1;
  }
  return units;
}

const singular = (word: string): string =>
  word.length > 3 && word.endsWith('s') && !word.endsWith('ss') ? word.slice(0, -1) : word;

/** The number that a unit is, or null. */
export const numberOf = ({ key }: Unit): number | null => (key.startsWith('#') ? Number(key.slice(1)) : null);

/** What to look for, the longest first; none where both values are alike or one is empty. */
export function valueRules(wrongText: string, rightText: string): readonly ValueRule[] {
  const wrong = unitsOf(wrongText);
  const right = unitsOf(rightText);
  if (wrong.length === 0 || right.length === 0) return [];
  const { before, after } = sharedEnds(wrong, right);
  const part = (start: number, wrongEnd: number, rightEnd: number, isSure: boolean): ValueRule => ({
    wrong: wrong.slice(start, wrongEnd),
    right: rightText.slice(right[start]?.start ?? 0, right[rightEnd - 1]?.end ?? 0),
    isSure,
  });
  // A number alone could be any other.
  const isSure = wrong.length > 1 || numberOf(wrong[0] ?? NOTHING) === null;
  const whole: ValueRule = { wrong, right: trimmed(rightText), isSure };
  const [wrongEnd, rightEnd] = [wrong.length - after, right.length - after];
  // Words were only put in, or taken out: without what stands beside them there is nothing to look for.
  if (wrongEnd <= before || rightEnd <= before)
    return before + after === wrong.length && before + after === right.length ? [] : [whole];
  const says = (unit: Unit | undefined): boolean => unit !== undefined && !HOLLOW.has(unit.key);
  return [
    whole,
    ...(after > 1 ? [part(before, wrong.length, right.length, true)] : []),
    ...(says(wrong[wrongEnd]) && after > 0 ? [part(before, wrongEnd + 1, rightEnd + 1, true)] : []),
    ...(before > 0 && says(wrong[before - 1]) ? [part(before - 1, wrongEnd, rightEnd, true)] : []),
    ...(before + after > 0 ? [part(before, wrongEnd, rightEnd, false)] : []),
  ];
}

/** How many units both begin and end with. */
function sharedEnds(wrong: readonly Unit[], right: readonly Unit[]) {
  const most = Math.min(wrong.length, right.length);
  let before = 0;
  while (before < most && wrong[before]?.key === right[before]?.key) before += 1;
  let after = 0;
  while (after < most - before && wrong.at(-1 - after)?.key === right.at(-1 - after)?.key) after += 1;
  return { before, after };
}

/** Without quotation marks around it and a full stop behind it; an inch mark stays. */
function trimmed(text: string): string {
  const bare = text.trim();
  const inner = /^["“'‘].*["”'’]\.?$/su.test(bare) ? bare.replace(/^.|["”'’]\.?$/gu, '') : bare;
  return inner.trim().replace(/\.$/, '');
}

/** The text with every wrong value replaced; the same text where it holds none. */
export function replaceValue(text: string, rules: readonly ValueRule[]): string {
  const small = text.toLowerCase();
  // Thousands of cues are looked through while she types: most lack the word at a glance.
  if (!rules.some(({ wrong }) => small.includes(longestWord(wrong)))) return text;
  const units = unitsOf(text);
  let [written, upTo] = ['', 0];
  for (let at = 0; at < units.length; ) {
    const rule = rules.find((one) => stands(units, at, one.wrong) && !isRight(units, at, one));
    const first = units[at];
    const last = rule && units[at + rule.wrong.length - 1];
    if (!rule || !first || !last) {
      at += 1;
      continue;
    }
    written += text.slice(upTo, first.start) + asBegun(text.slice(first.start), rule.right);
    upTo = last.end;
    at += rule.wrong.length;
  }
  return written + text.slice(upTo);
}

/** A number may be written in many ways, and so may an apostrophe: they are no help. */
const longestWord = (units: readonly Unit[]): string =>
  units
    .filter((unit) => numberOf(unit) === null && !unit.key.includes("'"))
    .reduce((longest, { key }) => (key.length > longest.length ? key : longest), '');

const stands = (units: readonly Unit[], at: number, sought: readonly Unit[]): boolean =>
  sought.every(({ key }, k) => units[at + k]?.key === key);

/** Whether the right value stands there already, with the wrong one as a part of it: `18` in `18 SWG`. */
function isRight(units: readonly Unit[], at: number, { wrong, right }: ValueRule): boolean {
  const sought = unitsOf(right);
  return sought.some((_, k) => stands(sought, k, wrong) && at >= k && stands(units, at - k, sought));
}

/** With a capital where the place has one. */
const asBegun = (there: string, right: string): string =>
  /^\p{Lu}/u.test(there) ? right.charAt(0).toUpperCase() + right.slice(1) : right;
