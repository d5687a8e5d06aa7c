/**
 * Titles from the words that a chapter says more often than the rest of the
 * lesson does: the names of things in it, as they are spoken.
 */
import type { ChapterKind } from './chapter.ts';
import { namesSomething, stemOf, wordsOf } from './content-words.ts';

/** Words behind which the name of a thing stands. */
const BEFORE_NAMES = new Set(
  `the a an your my his her its our their this that these those each every both some any no another
  of with from for in into on through without next last first final other
  one two three four five six seven eight nine ten twelve fifteen twenty thirty forty fifty sixty hundred`.split(
    /\s+/,
  ),
);
/** Words of talk and of number, that nothing is called after. */
const TALK = new Set(
  `hello hi hey welcome goodbye bye thank thanks yes no sure course everybody everyone anybody someone guys dear dears
  today tonight tomorrow wanna gotta maybe great nice good lovely exactly obviously please sorry minute minutes moment
  hour hours evening time times bit lots stuff way ways question questions look looks see watch show shows tell told says
  speak hear ask want wants need needs likes happen mean means call called start starts begin remember hope enjoy find
  keep leave take takes give come comes make makes become let part number half middle beginning idea
  side sides left right top bottom inside outside week month year place front back piece pieces
  zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen
  nineteen twenty thirty forty fifty sixty seventy eighty ninety hundred thousand point millimetre millimetres centimetre
  centimetres inch inches quarter percent video recording lesson spot life danger behind otherwise underneath beside past
  favourite favourites covers carrying thumbs shape version idea gap care end ends repeat material materials word words term terms size sizes divided resembles finishes
  gives gave holds hangs lies rests stands turns moves works runs sits helps keeps wants pair pairs kettle`.split(
    /\s+/,
  ),
);
/**
 * What a title may end in: pieces, parts of them, materials and tools, as the
 * trade calls them (common practice). A word that is only said often, such as
 * `busy`, would read oddly in a list of chapters.
 */
const THINGS = new Set(
  `anklet band bead bookmark border bracelet brooch chain choker clasp coaster coil colour cord corner cuff disc
  earring ear edge eye flower fold handle hook hoop jewel keyring key knot lace leather link lobster loop mandrel
  motif necklace net nose pattern pendant petal pin plier ribbon ring rope rosette round row rubber seam sheet
  spine spiral stitch strap strip stripe tag tape tassel toggle tray trough twist-tie wire wreath`
    .split(/\s+/)
    .map(stemOf),
);
/** What may stand before a thing in a title; of `a fluffy key` the key is left. */
const SAID_OF_THINGS = new Set(
  'open closed small little large big thick thin fine plain flat round inner outer rubber steel glass split jump scrap'
    .split(' ')
    .map(stemOf),
);
/** Kinds that stand once in most lessons and say enough by themselves. */
const PLAIN_KINDS: ReadonlySet<ChapterKind> = new Set([
  'materials',
  'terms',
  'setup',
  'finishing',
  'closing',
]);
const MOST_WORDS = 3;
const MOST_PHRASES = 2;
/** Words of the first sentences name the subject more often. */
const FIRST_SENTENCES = 3;
const FIRST_COUNTS = 1.5;
/** A second name stands beside the first only if it tells about as much. */
const SECOND_AT_LEAST = 0.45;
/** What is named behind one of these in the first chapter is what the lesson makes. */
const MAKING = new Set('make making made makes weave weaving doing learn show today'.split(' '));
const MAKING_COUNTS = 5;
/** How often a word must end a name, of the times it is said, to be the name of a thing. */
const LEAST_NAMING = 0.34;
const LONGEST_TITLE = 60;

/** Names of things in each chapter, the most telling first, at most two; `chapters` holds their sentences. */
export function characteristicNames(
  chapters: readonly (readonly string[])[],
): readonly (readonly string[])[] {
  const told = chapters.map((sentences) => sentences.map((sentence) => clausesOf(sentence).map(wordsOf)));
  const lesson = tellingOf(told);
  return told.map((chapter, index) => namesOf(chapter, lesson, index === 0));
}

/** A name does not reach over a comma or a full stop. */
const clausesOf = (sentence: string): readonly string[] => sentence.split(/[,.;:!?()–—]+/);

const nameable = (word: string): boolean => namesSomething(word) && !TALK.has(word) && !/\d/.test(word);

interface Telling {
  /** How often each stem is said in the lesson. */
  readonly said: ReadonlyMap<string, number>;
  /** How often each stem ends a name. */
  readonly naming: ReadonlyMap<string, number>;
}

function tellingOf(chapters: readonly (readonly (readonly (readonly string[])[])[])[]): Telling {
  const said = new Map<string, number>();
  const naming = new Map<string, number>();
  for (const words of chapters.flat(2)) {
    for (const word of words) if (nameable(word)) add(said, stemOf(word), 1);
    for (const run of runsOf(words)) add(naming, stemOf(run.at(-1) ?? ''), 1);
  }
  return { said, naming };
}

const add = (counts: Map<string, number>, key: string, more: number): void => {
  counts.set(key, (counts.get(key) ?? 0) + more);
};

/** Runs of words that each name something, behind a word like `the`; three words at most. */
const runsOf = (words: readonly string[]): readonly (readonly string[])[] =>
  words.flatMap((word, at) => {
    const run = BEFORE_NAMES.has(word) ? runFrom(words, at + 1) : [];
    return run.length > 0 ? [run] : [];
  });

function runFrom(words: readonly string[], from: number): readonly string[] {
  let end = from;
  while (end < words.length && end - from < MOST_WORDS && nameable(words[end] ?? '')) end += 1;
  return words.slice(from, end);
}

/** What is made, as the first chapter says it: `making a pair of earrings`, `today we do a box chain`. */
function madeOf(words: readonly string[]): readonly (readonly string[])[] {
  const verb = words.findIndex((word) => MAKING.has(word));
  if (verb < 0) return [];
  const at = words.findIndex((word, index) => index > verb && index < verb + 6 && BEFORE_NAMES.has(word));
  if (at < 0) return [];
  const after = words.indexOf('of', at + 1);
  // In `a pair of earrings` the earrings are made.
  const run = runFrom(words, after > 0 && after <= at + 2 ? after + 1 : at + 1);
  return run.length > 0 ? [run] : [];
}

interface Name {
  readonly words: readonly string[];
  readonly stems: readonly string[];
  times: number;
}

function namesOf(
  sentences: readonly (readonly (readonly string[])[])[],
  lesson: Telling,
  opens: boolean,
): readonly string[] {
  const names = new Map<string, Name>();
  const here = new Map<string, number>();
  const note = (words: readonly string[], times: number) => {
    const stems = words.map(stemOf);
    const known = names.get(stems.join(' '));
    if (known) known.times += times;
    else names.set(stems.join(' '), { words, stems, times });
  };
  const hear = (words: readonly string[], counts: number) => {
    for (const word of words.filter(nameable)) add(here, stemOf(word), counts);
    for (const run of runsOf(words).flatMap(beginningsOf)) note(run, counts);
    for (const run of opens ? madeOf(words) : []) note(run, MAKING_COUNTS);
  };
  sentences.forEach((clauses, index) => {
    for (const words of clauses) hear(words, index < FIRST_SENTENCES ? FIRST_COUNTS : 1);
  });
  const worth = (stem: string): number => {
    const times = here.get(stem) ?? 0;
    const elsewhere = Math.max(0, (lesson.said.get(stem) ?? 0) - times);
    return times * Math.max(0.1, Math.log((times + 0.5) / (elsewhere / 4 + 0.5)));
  };
  // Behind a noun may stand its verb (`the chain turns`): a longer name must be said again, or end in a name that is.
  const isName = ({ stems, times }: Name): boolean => {
    const last = stems.at(-1) ?? '';
    if (!THINGS.has(last)) return false;
    const naming = lesson.naming.get(last) ?? 0;
    if (naming < LEAST_NAMING * (lesson.said.get(last) ?? 0)) return false;
    return stems.length === 1 || times >= 2 || naming >= 2;
  };
  const value = ({ stems, times }: Name): number =>
    (stems.reduce((sum, stem) => sum + worth(stem), 0) / Math.sqrt(stems.length)) * Math.sqrt(times);
  const chosen: Name[] = [];
  const ordered = [...names.values()].filter(isName).sort((a, b) => value(b) - value(a));
  for (const name of ordered) {
    const first = chosen[0];
    if (chosen.length === MOST_PHRASES || (first && value(name) < SECOND_AT_LEAST * value(first))) break;
    if (!chosen.some(({ stems }) => name.stems.some((stem) => stems.includes(stem)))) chosen.push(name);
  }
  return chosen.map(({ words, stems }) => {
    const last = stems.length - 1;
    const from = stems.findLastIndex(
      (stem, at) => at < last && !THINGS.has(stem) && !SAID_OF_THINGS.has(stem),
    );
    return words.slice(from + 1).join(' ');
  });
}

const beginningsOf = (run: readonly string[]): readonly (readonly string[])[] =>
  run.map((_, index) => run.slice(0, index + 1));

/**
 * A title of one line: the kind, and what is named. Whoever reads a list of
 * chapters elsewhere sees no mark for the kind, so it stands in words.
 * @param isOnly whether no other chapter of the lesson is of this kind
 */
export function titleFor(kind: ChapterKind, names: readonly string[], isOnly = true): string {
  const kindWords = kind.charAt(0).toUpperCase() + kind.slice(1);
  const [first, second] = names;
  if (first === undefined || kind === 'closing' || (isOnly && PLAIN_KINDS.has(kind))) return kindWords;
  const both = second === undefined ? first : `${first} and ${second}`;
  const title = `${kindWords}: ${both}`;
  return title.length <= LONGEST_TITLE ? title : `${kindWords}: ${first}`.slice(0, LONGEST_TITLE);
}
