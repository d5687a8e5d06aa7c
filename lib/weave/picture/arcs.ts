/** Rings cut into arcs, each known by a number that it keeps while others are cut. */
import type { Overlap } from './overlaps.ts';
import type { SeenRing } from './seen-ring.ts';

/** Points `from` to `to` of a ring, both included; `to` may run past the last point and round again. */
export interface Arc {
  readonly ring: number;
  readonly from: number;
  readonly to: number;
}

/** All arcs of all rings. The point where two arcs meet belongs to both. */
export class CutRings {
  /** By arc number; null where an arc was cut and is none any more. */
  readonly arcs: (Arc | null)[] = [];
  /** Numbers of each ring's arcs in the order in which they follow each other. */
  private readonly ofRing: number[][] = [];
  /** Per ring and point the arc that begins or runs there, and the one that ends there; mostly the same. */
  private readonly begun: Int32Array[] = [];
  private readonly ended: Int32Array[] = [];
  private readonly rings: readonly SeenRing[];

  constructor(rings: readonly SeenRing[], arcsOf: (ring: number) => readonly Arc[]) {
    this.rings = rings;
    rings.forEach(({ count }, ring) => {
      this.ofRing.push([]);
      this.begun.push(new Int32Array(count));
      this.ended.push(new Int32Array(count));
      for (const arc of arcsOf(ring)) this.add(arc, this.ofRing[ring]?.length ?? 0);
    });
  }

  private countOf(ring: number): number {
    return (this.rings[ring] as SeenRing).count;
  }

  private add(arc: Arc, place: number): number {
    const number = this.arcs.push(arc) - 1;
    (this.ofRing[arc.ring] as number[]).splice(place, 0, number);
    const count = this.countOf(arc.ring);
    const [begun, ended] = [this.begun[arc.ring] as Int32Array, this.ended[arc.ring] as Int32Array];
    for (let point = arc.from; point < arc.to; point++) {
      begun[point % count] = number;
      ended[(point + 1) % count] = number;
    }
    return number;
  }

  /** Cuts an arc in two, a whole ring in four; the numbers of its parts. */
  cut(number: number): readonly number[] {
    const arc = this.arcs[number];
    const round = arc && this.ofRing[arc.ring];
    if (!arc || !round) return [];
    const place = round.indexOf(number);
    round.splice(place, 1);
    this.arcs[number] = null;
    return partsOf(arc, this.countOf(arc.ring)).map((part, at) => this.add(part, place + at));
  }

  /** The arcs of each ring, in the order in which they follow each other round it. */
  ringsOfArcs(): readonly (readonly number[])[] {
    return this.ofRing;
  }

  /** Which arcs cover which in an overlap, as flat (above, below) numbers, each pair once. */
  coversIn({ above, below, runs, isPointAbove }: Overlap): readonly number[] {
    const [pointRing, runRing] = isPointAbove ? [above, below] : [below, above];
    const [begun, ended] = [this.begun[pointRing] as Int32Array, this.ended[pointRing] as Int32Array];
    const [runBegun, runEnded] = [this.begun[runRing] as Int32Array, this.ended[runRing] as Int32Array];
    const count = this.countOf(runRing);
    const found: number[] = [];
    // So few arcs meet in one overlap that looking through them is the quickest.
    const note = (one: number, other: number): void => {
      for (let n = found.length - 2; n >= 0; n -= 2) if (found[n] === one && found[n + 1] === other) return;
      found.push(one, other);
    };
    for (let n = 0; n < runs.length; n += 3) {
      const point = runs[n] as number;
      const last = runs[n + 2] as number;
      const [one, two] = [begun[point] as number, ended[point] as number];
      const noteBoth = (other: number): void => {
        note(one, other);
        if (two !== one) note(two, other);
      };
      let at = runs[n + 1] as number;
      noteBoth(runEnded[at] as number);
      for (;;) {
        const other = runBegun[at] as number;
        noteBoth(other);
        const arc = this.arcs[other] as Arc;
        at += arc.to - (at < arc.from ? at + count : at);
        if (at > last) break;
      }
    }
    if (!isPointAbove)
      for (let n = 0; n < found.length; n += 2)
        [found[n], found[n + 1]] = [found[n + 1] as number, found[n] as number];
    return found;
  }
}

function partsOf(arc: Arc, count: number): readonly Arc[] {
  const length = arc.to - arc.from;
  const middle = arc.from + Math.floor(length / 2);
  if (length < count)
    return [
      { ...arc, to: middle },
      { ...arc, from: middle },
    ];
  const quarter = Math.floor(count / 4);
  return [0, 1, 2, 3].map((n) => ({
    ring: arc.ring,
    from: arc.from + n * quarter,
    to: n === 3 ? arc.from + count : arc.from + (n + 1) * quarter,
  }));
}
