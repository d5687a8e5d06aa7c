/**
 * Where a text may be broken between two words, and how well. A number stays
 * with its unit and with what makes one number of it ("four point five
 * millimetres", "one and a half", "size 3"): broken there, it is misread.
 * Written for English, as the lessons' speech is.
 */

const NUMBER_WORDS = new Set(
  (
    'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen ' +
    'seventeen eighteen nineteen twenty thirty forty fifty sixty seventy eighty ninety hundred thousand ' +
    'half halves quarter quarters third thirds fifth fifths eighth eighths tenth tenths sixteenth sixteenths ' +
    'thirty-second dozen'
  ).split(' '),
);
/** What joins two numbers into one, or into a span or a product. */
const JOINTS = new Set(['point', 'and', 'a', 'by', 'x', '×', 'to', 'or', 'in', '–', '-']);
const UNITS = new Set(
  (
    'mm millimetre millimetres millimeter millimeters cm centimetre centimetres centimeter centimeters ' +
    'm metre metres meter meters inch inches foot feet gauge gauges swg awg g gram grams gramme grammes kg ' +
    'kilo kilos ounce ounces ring rings link links row rows unit units pair pairs piece pieces time times turn ' +
    'turns strand strands step steps bead beads metre-long % percent per-cent degree degrees ° °c °f c second ' +
    'seconds minute minutes hour hours day days week weeks euro euros pound pounds dollar dollars cent cents'
  ).split(' '),
);
/** What a number belongs to that follows it. */
const LABELS = new Set(
  'step size ring chapter part number no nr ratio ar gauge row figure row version page about around'.split(
    ' ',
  ),
);
/** A row of numbers longer than this is a list, and may be broken anywhere. */
const LONGEST_QUANTITY = 10;
/** Words that lead to the next one: a line does not end on them well. */
const LEADING = new Set(
  (
    'a an the of to in on at with from for by into onto through and or but nor my your his her its our their ' +
    'this that these those is are was were be each every no not as than very'
  ).split(' '),
);
/** Words that begin a part of a sentence: a line begins with them well. */
const OPENING = new Set(
  'and but or so then because which who that if when while until before after where with from'.split(' '),
);

const bare = (word: string): string =>
  word.toLowerCase().replace(/^[^\p{L}\p{N}%°×]+|[^\p{L}\p{N}%°×]+$/gu, '');
const isNumber = (word: string): boolean =>
  /^\d[\d.,/:×x½¼¾-]*$|^[½¼¾⅓⅔⅛]$/u.test(word) ||
  NUMBER_WORDS.has(word) ||
  word.split('-').every((part) => NUMBER_WORDS.has(part));
const endsClause = (word: string): boolean => /[,;:.!?…][)\]"'”’]*$/u.test(word);

/** A text's words, parted by white space. */
export const wordsOf = (text: string): readonly string[] => text.split(/\s+/).filter((word) => word !== '');

/** For each place between two words, whether they must stay together; index 0 lies between the first two. */
export function gluedPlaces(words: readonly string[]): readonly boolean[] {
  const bared = words.map(bare);
  const glued = words.slice(1).map(() => false);
  let at = 0;
  while (at < words.length) {
    if (!isNumber(bared[at] ?? '')) {
      at += 1;
      continue;
    }
    const before = bared[at - 1];
    const labelled = before !== undefined && LABELS.has(before) && !endsClause(words[at - 1] ?? '');
    const from = labelled ? at - 1 : at;
    const to = endOfQuantity(words, bared, at);
    glued.fill(true, from, to);
    at = to + 1;
  }
  return glued;
}

/** Index of the last word of what begins with a number: "5 to 6 mm", "three eighths of an inch". */
function endOfQuantity(words: readonly string[], bared: readonly string[], start: number): number {
  let end = start;
  const goesOn = () => !endsClause(words[end] ?? '') && end + 1 < words.length;
  while (goesOn() && end - start < LONGEST_QUANTITY) {
    const next = nextNumber(words, bared, end);
    if (next === null) break;
    end = next;
  }
  // "of an inch" behind a fraction.
  const ofUnit =
    bared[end + 1] === 'of' && /^an?$/.test(bared[end + 2] ?? '') && UNITS.has(bared[end + 3] ?? '');
  if (goesOn() && ofUnit) return end + 3;
  if (goesOn() && UNITS.has(bared[end + 1] ?? '')) end += 1;
  return end;
}

/** The next number that makes one with what ends at `end`, over at most three joints; null where there is none. */
function nextNumber(words: readonly string[], bared: readonly string[], end: number): number | null {
  for (let at = end + 1; at <= end + 4 && at < words.length; at += 1) {
    if (isNumber(bared[at] ?? '')) return at;
    if (!JOINTS.has(bared[at] ?? words[at] ?? '') || endsClause(words[at] ?? '')) return null;
  }
  return null;
}

/** How badly a break before `words[at]` reads: 0 behind a sentence, up to 8 behind an article. Glue is not looked at. */
export function breakCost(words: readonly string[], at: number): number {
  const before = words[at - 1] ?? '';
  if (/[.!?…][)\]"'”’]*$/u.test(before)) return 0;
  if (/[;:–—][)\]"'”’]*$/u.test(before)) return 1;
  if (/,[)\]"'”’]*$/u.test(before)) return 2;
  if (LEADING.has(bare(before))) return 8;
  return OPENING.has(bare(words[at] ?? '')) ? 3 : 5;
}
