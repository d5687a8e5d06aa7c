/**
 * Arcs in the order in which they are painted, each after all that it covers;
 * neighbours on a ring as one stroke wherever that ties no knot. The order is
 * kept up to date while arcs are joined, so that only what stands between two
 * arcs has to be looked at (after Pearce and Kelly, 2006, from memory).
 */
import type { Arc } from './arcs.ts';

export class JoinedArcs {
  private readonly arcs: (Arc | null)[];
  /** Arcs that each arc covers, and those that cover it; what was joined since is found by `now`. */
  private readonly covers: number[][];
  private readonly coveredBy: number[][];
  /** When each arc is painted; smaller is earlier. */
  private readonly turn: Int32Array;
  /** The arc that an arc was joined into; itself where it was not. */
  private readonly into: Int32Array;
  /** Arcs looked at in the latest search bear its number. */
  private readonly lookedAt: Int32Array;
  private search = 0;

  /**
   * @param arcs by number; null where there is none
   * @param groups all numbers, what is painted earlier first; a group of several ties a knot that stays
   * @param covers per overlap flat (above, below) numbers
   */
  constructor(
    arcs: readonly (Arc | null)[],
    groups: readonly (readonly number[])[],
    covers: readonly (readonly number[])[],
  ) {
    this.arcs = [...arcs];
    this.covers = arcs.map(() => []);
    this.coveredBy = arcs.map(() => []);
    this.turn = new Int32Array(arcs.length);
    this.into = Int32Array.from(arcs, (_, number) => number);
    this.lookedAt = new Int32Array(arcs.length);
    const groupOf = new Int32Array(arcs.length);
    let turn = 0;
    groups.forEach((group, at) => {
      for (const number of group) {
        groupOf[number] = at;
        this.turn[number] = turn++;
      }
    });
    for (const pairs of covers)
      for (let n = 0; n < pairs.length; n += 2) {
        const [top, under] = [pairs[n] as number, pairs[n + 1] as number];
        if (groupOf[top] === groupOf[under]) continue;
        this.covers[top]?.push(under);
        this.coveredBy[under]?.push(top);
      }
  }

  /** Joins each arc of a ring with those that follow it, as far as that goes. */
  joinRound(numbers: readonly number[]): void {
    const round = [...numbers];
    for (let at = 0; at < round.length; at++)
      while (round.length > 1 && this.join(round[at] as number, round[(at + 1) % round.length] as number)) {
        const gone = (at + 1) % round.length;
        round.splice(gone, 1);
        if (gone < at) at -= 1;
      }
  }

  /** The strokes, the furthest first. */
  inTurn(): readonly Arc[] {
    const numbers = [...this.arcs.keys()].filter((number) => this.arcs[number]);
    numbers.sort((a, b) => this.turnOf(a) - this.turnOf(b));
    return numbers.map((number) => this.arcs[number] as Arc);
  }

  private turnOf(number: number): number {
    return this.turn[number] as number;
  }

  private now(number: number): number {
    let at = number;
    while (this.into[at] !== at) at = this.into[at] as number;
    if (at !== number) this.into[number] = at;
    return at;
  }

  /** Joins two arcs into the first unless one must be painted before the other; whether it did. */
  private join(first: number, second: number): boolean {
    const [early, late] = this.turnOf(first) < this.turnOf(second) ? [first, second] : [second, first];
    const before = this.reached(late, this.covers, (turn) => turn >= this.turnOf(early));
    if (before.includes(early)) return false;
    const after = this.reached(early, this.coveredBy, (turn) => turn < this.turnOf(late));
    const inOrder = (numbers: number[]): number[] => numbers.sort((a, b) => this.turnOf(a) - this.turnOf(b));
    const [earlier, later] = [inOrder(before), inOrder(after)];
    const turns = [...earlier, ...later, early, late]
      .map((number) => this.turnOf(number))
      .sort((a, b) => a - b);
    [...earlier, first, ...later].forEach((number, at) => {
      this.turn[number] = turns[at] as number;
    });
    const [arc, next] = [this.arcs[first] as Arc, this.arcs[second] as Arc];
    this.arcs[first] = { ...arc, to: arc.to + (next.to - next.from) };
    this.arcs[second] = null;
    this.into[second] = first;
    this.covers[first]?.push(...(this.covers[second] as number[]));
    this.coveredBy[first]?.push(...(this.coveredBy[second] as number[]));
    return true;
  }

  /** All that can be reached from an arc over arcs whose turn is within bounds. */
  private reached(
    from: number,
    leads: readonly (readonly number[])[],
    isWithin: (turn: number) => boolean,
  ): number[] {
    this.search += 1;
    this.lookedAt[from] = this.search;
    const found: number[] = [];
    const open = [from];
    for (let number = open.pop(); number !== undefined; number = open.pop())
      for (const each of leads[number] ?? []) {
        const next = this.now(each);
        if (this.lookedAt[next] === this.search || !isWithin(this.turnOf(next))) continue;
        this.lookedAt[next] = this.search;
        found.push(next);
        open.push(next);
      }
    return found;
  }
}
