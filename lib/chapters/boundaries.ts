/**
 * Where a transcript falls into parts. Of all ways to part it into so many
 * pieces, the one is taken that is likeliest: the words of each piece belong
 * together (a Dirichlet compound multinomial: a word that was said will be
 * said again), its first sentence sounds like a beginning, and no piece is
 * much shorter than the others. One run of dynamic programming gives the
 * answer for every number of pieces (after Utiyama & Isahara 2001, and
 * Eisenstein & Barzilay 2008).
 */
import { cohesionRows, holdOf, type Vocabulary, vocabularyOf } from './cohesion.ts';
import { contentStems, wordsOf } from './content-words.ts';
import { type Habits, NO_HABITS, openingNats, type Said } from './openers.ts';

/** A sentence, or a cue where sentences are not known, in order of time. */
export interface Unit {
  readonly text: string;
  readonly startMs: number;
  readonly endMs: number;
}

export interface BoundaryOptions {
  readonly habits?: Habits;
  /** Indexes of units that begin a piece whatever the words say: what the teacher has set. */
  readonly fixed?: readonly number[];
  /** Indexes of units that begin no piece: what the teacher has refused. */
  readonly barred?: readonly number[];
  /** Pieces are no shorter, ms, except between two that are fixed; 0 where not given. */
  readonly shortestMs?: number;
  /** What each unit says for being of one kind or another, nats: pieces of one kind are preferred. */
  readonly kinds?: readonly (readonly number[])[];
  /** The most pieces that are asked for; 60 where not given. */
  readonly most?: number;
}

export interface Boundaries {
  /** How many pieces the text itself suggests. */
  readonly suggested: number;
  /** Fewest and most pieces that can be had. */
  readonly fewest: number;
  readonly most: number;
  /** Indexes of the first unit of each piece, the first one included; `count` between `fewest` and `most`. */
  readonly startsFor: (count: number) => readonly number[];
}

/** How strongly pieces of like length are preferred: a gamma distribution's shape, less one. */
const EVENNESS = 3;
/** Added to each length, so that the shortest pieces are unlikely and not impossible, ms. */
const LENGTH_GRACE_MS = 1_000;
/** What one more piece must earn, in nats a square root of a minute. A lecture of an hour falls into about seven. */
const PRICE = 4.5;
/** The same where kinds are heard, since each piece then earns more. */
const PRICE_WITH_KINDS = 6;
/** Easy speech. */
const WORDS_A_MINUTE = 150;
/** However a text reads, no more than 3 and this many a square root of a minute are suggested. */
const MOST_SUGGESTED = 3;
/** How much what is said for a kind counts. */
const KIND_WEIGHT = 0.8;
/** More places than this are thinned out first: the best opening of each few neighbours stays. */
const MOST_PLACES = 700;
const MOST_PIECES = 60;

export function findBoundaries(units: readonly Unit[], options: BoundaryOptions = {}): Boundaries {
  if (units.length === 0) return { suggested: 0, fewest: 0, most: 0, startsFor: () => [] };
  const words = units.map((unit) => wordsOf(unit.text));
  const known = new Map<string, string | null>();
  const vocabulary = vocabularyOf(words.map((unit) => contentStems(unit, known)));
  const said: readonly Said[] = units.map((unit, index) => ({ ...unit, words: words[index] ?? [] }));
  const opening = openingNats(said, options.habits ?? NO_HABITS);
  const fixed = new Set((options.fixed ?? []).filter((at) => at > 0 && at < units.length));
  const barred = new Set((options.barred ?? []).filter((at) => !fixed.has(at)));
  const places = thinnedPlaces(opening, fixed, barred);
  const hold = holdOf(vocabulary);
  const costs = pieceCosts(vocabulary, units, places, fixed, hold, options.shortestMs ?? 0);
  if (options.kinds) preferOneKind(costs, options.kinds, places);
  const asked = Math.min(Math.max(options.most ?? MOST_PIECES, fixed.size + 1), places.length);
  const { best, back } = partings(costs, places, opening, asked);
  const fewest = fixed.size + 1;
  let most = fewest;
  while (most < asked && Number.isFinite(best[most])) most += 1;
  // Speech alone: hands that work in silence ask for no more chapters.
  const minutes = words.reduce((sum, unit) => sum + unit.length, 0) / WORDS_A_MINUTE;
  const wholeMs = lastEnd(units) - firstStart(units);
  const price = (options.kinds ? PRICE_WITH_KINDS : PRICE) * hold * Math.sqrt(Math.max(minutes, 0.1));
  return {
    suggested: suggestedCount(best, fewest, most, price, options.habits?.usualMs ?? null, minutes, wholeMs),
    fewest,
    most,
    startsFor: (count) => startsOf(back, places, Math.min(most, Math.max(fewest, Math.round(count)))),
  };
}

const firstStart = (units: readonly Unit[]): number => units[0]?.startMs ?? 0;
const lastEnd = (units: readonly Unit[]): number => units.at(-1)?.endMs ?? 0;

/** Indexes where a piece may begin, the first unit first. */
function thinnedPlaces(
  opening: readonly number[],
  fixed: ReadonlySet<number>,
  barred: ReadonlySet<number>,
): readonly number[] {
  const group = Math.ceil(opening.length / MOST_PLACES);
  const places: number[] = [0];
  for (let from = 1; from < opening.length; from += group) {
    const until = Math.min(from + group, opening.length);
    let kept: number | null = null;
    for (let at = from; at < until; at++) {
      if (fixed.has(at)) places.push(at);
      else if (!barred.has(at) && (kept === null || (opening[at] ?? 0) > (opening[kept] ?? 0))) kept = at;
    }
    if (kept !== null) places.push(kept);
  }
  return places.sort((a, b) => a - b);
}

/**
 * Cost of the piece from one place to another, in nats, as `cohesionRows`
 * has them. A piece that would hold a place that must begin one costs without end.
 */
function pieceCosts(
  words: Vocabulary,
  units: readonly Unit[],
  places: readonly number[],
  fixed: ReadonlySet<number>,
  hold: number,
  shortestMs: number,
): readonly Float64Array[] {
  const startsMs = Float64Array.from(
    [...places, units.length],
    (place) => units[place]?.startMs ?? lastEnd(units),
  );
  const startMsAt = (place: number) => startsMs[place] ?? 0;
  const rows = cohesionRows(words, places);
  rows.forEach((row, from) => {
    const startMs = startMsAt(from);
    const isSet = (place: number) => place === 0 || place === places.length || fixed.has(places[place] ?? 0);
    let broken = false;
    for (let step = 0; step < row.length; step++) {
      const to = from + step + 1;
      const lengthMs = Math.max(0, startMsAt(to) - startMs);
      const cost = hold * (row[step] ?? 0) - EVENNESS * Math.log(lengthMs + LENGTH_GRACE_MS);
      const tooShort = lengthMs < shortestMs && !(isSet(from) && isSet(to));
      row[step] = broken || tooShort ? Number.POSITIVE_INFINITY : cost;
      broken ||= fixed.has(places[to] ?? units.length);
    }
  });
  return rows;
}

/** Takes from each piece's cost what its units say together for the one kind that fits them best. */
function preferOneKind(
  costs: readonly Float64Array[],
  kinds: readonly (readonly number[])[],
  places: readonly number[],
): void {
  const classes = kinds[0]?.length ?? 0;
  // Sums over all units before each place, so that a piece's sum is a difference.
  const before = Array.from({ length: classes }, () => new Float64Array(kinds.length + 1));
  kinds.forEach((unit, index) => {
    before.forEach((sums, kind) => {
      sums[index + 1] = (sums[index] ?? 0) + (unit[kind] ?? 0);
    });
  });
  const ends = [...places, kinds.length];
  costs.forEach((row, from) => {
    const start = places[from] ?? 0;
    for (let step = 0; step < row.length; step++) {
      const end = ends[from + step + 1] ?? 0;
      let most = 0;
      for (const sums of before) most = Math.max(most, (sums[end] ?? 0) - (sums[start] ?? 0));
      row[step] = (row[step] ?? 0) - KIND_WEIGHT * most;
    }
  });
}

/** `best[count - 1]`: the least cost of so many pieces; `back[count - 1][to]`: where the last of them begins. */
function partings(
  costs: readonly Float64Array[],
  places: readonly number[],
  opening: readonly number[],
  most: number,
): { readonly best: readonly number[]; readonly back: readonly Int32Array[] } {
  const ends = places.length;
  const best: number[] = [];
  const back: Int32Array[] = [];
  let former = new Float64Array(ends + 1).fill(Number.POSITIVE_INFINITY);
  former[0] = 0;
  for (let count = 1; count <= most; count++) {
    const least = new Float64Array(ends + 1).fill(Number.POSITIVE_INFINITY);
    const begins = new Int32Array(ends + 1);
    for (let from = count - 1; from < ends; from++) {
      const before = (former[from] ?? 0) - (opening[places[from] ?? 0] ?? 0);
      const row = costs[from];
      if (!row || before === Number.POSITIVE_INFINITY) continue;
      for (let to = from + 1; to <= ends; to++) {
        const cost = before + (row[to - from - 1] ?? 0);
        if (cost < (least[to] ?? 0)) {
          least[to] = cost;
          begins[to] = from;
        }
      }
    }
    best.push(least[ends] ?? Number.POSITIVE_INFINITY);
    back.push(begins);
    former = least;
  }
  return { best, back };
}

function startsOf(back: readonly Int32Array[], places: readonly number[], count: number): readonly number[] {
  const starts: number[] = [];
  let to = places.length;
  for (let pieces = count; pieces > 0; pieces--) {
    to = back[pieces - 1]?.[to] ?? 0;
    starts.push(places[to] ?? 0);
  }
  return starts.reverse();
}

/**
 * The number of pieces whose likelihood less its price is best. A workshop
 * with a usual length of chapter is met half-way.
 */
function suggestedCount(
  best: readonly number[],
  fewest: number,
  most: number,
  price: number,
  usualMs: number | null,
  minutes: number,
  wholeMs: number,
): number {
  let suggested = fewest;
  const worth = (count: number) => {
    // The even length that pieces are held against depends on their number; it is taken out of the sums above.
    const even = count * EVENNESS * Math.log(wholeMs / count + LENGTH_GRACE_MS);
    return -((best[count - 1] ?? Number.POSITIVE_INFINITY) + even) - price * count;
  };
  const atMost = Math.min(most, Math.max(fewest, Math.round(3 + MOST_SUGGESTED * Math.sqrt(minutes))));
  for (let count = fewest; count <= atMost; count++) if (worth(count) > worth(suggested)) suggested = count;
  if (usualMs === null) return suggested;
  const usual = wholeMs / usualMs;
  return Math.min(most, Math.max(fewest, Math.round(Math.sqrt(suggested * Math.max(1, usual)))));
}
