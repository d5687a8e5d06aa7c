/**
 * How well the words of a stretch of speech belong together: a Dirichlet
 * compound multinomial, under which a word that was said will be said again.
 * In nats; less is better.
 */

/** Weight of a word that was not said yet, against one that was said once. */
const UNSEEN = 0.2;
/** How much a word's clumping changes what it counts. */
const CLUMPING = 0.3;
const ROOT_LETTERS = 5;
/** Sentences that are said within so many of each other are neighbours, for telling how much words hold together. */
const NEIGHBOURS = 4;

/** The words of a text, sentence by sentence, as numbers from 0, so that counting them needs no text. */
export interface Vocabulary {
  readonly units: readonly Int32Array[];
  /** How many different words there are. */
  readonly kinds: number;
}

/**
 * `stems` holds each sentence's stems. Only their first letters are looked
 * at: `weave`, `weaver` and `weaving`, `economy` and `economic` are about one thing.
 */
export function vocabularyOf(stems: readonly (readonly string[])[]): Vocabulary {
  const numbers = new Map<string, number>();
  const units = stems.map((unit) =>
    Int32Array.from(unit, (stem) => {
      const root = stem.slice(0, ROOT_LETTERS);
      const known = numbers.get(root);
      if (known !== undefined) return known;
      numbers.set(root, numbers.size);
      return numbers.size - 1;
    }),
  );
  return { units, kinds: numbers.size };
}

/**
 * How much words hold neighbours together in a text, 0.1 to 2: how much more
 * often a word comes back within four sentences than it would if the sentences
 * were shuffled. In lectures it does three to five times as often, in spoken
 * steps of handiwork one to two times: there how sentences open must decide.
 */
export function holdOf({ units, kinds }: Vocabulary): number {
  const sets = units.map((unit) => new Set(unit));
  const holding = new Int32Array(kinds);
  for (const set of sets) for (const word of set) holding[word] = (holding[word] ?? 0) + 1;
  let pairs = 0;
  let together = 0;
  sets.forEach((set, index) => {
    for (let step = 1; step <= NEIGHBOURS; step++) {
      const other = sets[index + step];
      if (!other) break;
      pairs += 1;
      for (const word of set) if (other.has(word)) together += 1;
    }
  });
  const all = sets.length * (sets.length - 1);
  const shuffled = holding.reduce((sum, count) => sum + (count * (count - 1)) / all, 0) * pairs;
  return shuffled > 0 ? Math.min(2, Math.max(0.1, (together / shuffled - 1) / 2)) : 0.1;
}

/**
 * What the words from each place up to each later one cost together, in nats:
 * `rows[from][to - from - 1]`, where `from` and `to` count the places and the
 * last `to` is the text's end. `places` are indexes of sentences, 0 first.
 */
export function cohesionRows(words: Vocabulary, places: readonly number[]): readonly Float64Array[] {
  const all = words.units.reduce((sum, unit) => sum + unit.length, 0);
  const logSeen = Float64Array.from({ length: all + 1 }, (_, count) => Math.log(count + UNSEEN));
  const logAll = Float64Array.from({ length: all + 1 }, (_, count) => Math.log(count + UNSEEN * words.kinds));
  const weights = clumpingOf(words);
  const counts = new Int32Array(words.kinds);
  // All words in one row, and where the words of each place begin in it: the inner loop runs some millions of times.
  const row = Int32Array.from(words.units.flatMap((unit) => [...unit]));
  const begins = placesInRow(words, places);
  const ends = places.length;
  return places.map((_, from) => {
    counts.fill(0);
    const first = begins[from] ?? 0;
    const costs = new Float64Array(ends - from);
    let nats = 0;
    let at = first;
    for (let to = from + 1; to <= ends; to++) {
      for (const end = begins[to] ?? 0; at < end; at++) {
        const word = row[at] ?? 0;
        const count = counts[word] ?? 0;
        nats += (weights[word] ?? 1) * ((logAll[at - first] ?? 0) - (logSeen[count] ?? 0));
        counts[word] = count + 1;
      }
      costs[to - from - 1] = nats;
    }
    return costs;
  });
}

/** How many words stand before each place, and before the text's end. */
function placesInRow({ units }: Vocabulary, places: readonly number[]): Int32Array {
  const before = new Int32Array(units.length + 1);
  units.forEach((unit, index) => {
    before[index + 1] = (before[index] ?? 0) + unit.length;
  });
  return Int32Array.from([...places, units.length], (place) => before[place] ?? 0);
}

/**
 * What each word counts, 0.2 to 1.5: more where it is said in clumps, less
 * where it is spread evenly over all. The gaps between its places have a
 * variance of about their mean squared if it falls at random.
 */
function clumpingOf({ units, kinds }: Vocabulary): Float64Array {
  const last = new Int32Array(kinds).fill(-1);
  const times = new Int32Array(kinds);
  const squares = new Float64Array(kinds);
  units.forEach((unit, index) => {
    for (const word of unit) {
      times[word] = (times[word] ?? 0) + 1;
      squares[word] = (squares[word] ?? 0) + (index - (last[word] ?? 0)) ** 2;
      last[word] = index;
    }
  });
  return Float64Array.from({ length: kinds }, (_, word) => {
    const gaps = (times[word] ?? 0) + 1;
    if (gaps <= 3) return 1;
    const mean = (units.length + 1) / gaps;
    const meanSquare = ((squares[word] ?? 0) + (units.length - (last[word] ?? 0)) ** 2) / gaps;
    const variance = meanSquare / mean ** 2 - 1;
    return Math.min(1.5, Math.max(0.2, 1 + CLUMPING * Math.log(Math.max(0.2, variance) / 1.5)));
  });
}
