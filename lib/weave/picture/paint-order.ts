/**
 * Cuts rings into arcs that can be painted one after another, each after all
 * that it covers, and as few as that needs: first a cut wherever a wire goes
 * from over to under, further cuts where arcs still cover one another in a
 * circle; then neighbours on a ring are painted as one wherever both may be
 * painted at the same time.
 */
import { type Arc, CutRings } from './arcs.ts';
import { JoinedArcs } from './joined-arcs.ts';
import type { Overlap } from './overlaps.ts';
import { isTight, type SeenRing } from './seen-ring.ts';
import { strongGroups } from './strong-groups.ts';

/** All arcs, the furthest first. */
export function paintOrder(rings: readonly SeenRing[], overlaps: readonly Overlap[]): readonly Arc[] {
  const marks = marksOf(rings, overlaps);
  const cut = new CutRings(rings, (ring) => firstArcs(rings[ring] as SeenRing, ring, marks[ring] as Marks));
  const covers = overlaps.map((overlap) => cut.coversIn(overlap));
  let open: ReadonlySet<number> = new Set(cut.arcs.keys());
  for (;;) {
    const gone = new Set<number>();
    const left = new Set<number>();
    for (const knot of knotsAmong(open, covers)) {
      const longest = longestThird(knot, cut.arcs);
      if (longest.length === 0) continue;
      for (const number of knot) left.add(number);
      for (const number of longest) {
        gone.add(number);
        left.delete(number);
        for (const part of cut.cut(number)) left.add(part);
      }
    }
    if (gone.size === 0) break;
    overlaps.forEach((overlap, at) => {
      if (covers[at]?.some((number) => gone.has(number))) covers[at] = cut.coversIn(overlap);
    });
    // Cutting ties no knot, so that only what was in one can still be.
    open = left;
  }
  const numbers = [...cut.arcs.keys()].filter((number) => cut.arcs[number]);
  const joined = new JoinedArcs(cut.arcs, strongGroups(numbers, leadsOf(covers, null)), covers);
  for (const round of cut.ringsOfArcs()) joined.joinRound(round);
  return joined.inTurn();
}

type Covers = readonly (readonly number[])[];

/** What each arc covers; among those given, null for all. */
function leadsOf(covers: Covers, open: ReadonlySet<number> | null): ReadonlyMap<number, readonly number[]> {
  const leads = new Map<number, number[]>();
  for (const pairs of covers)
    for (let n = 0; n < pairs.length; n += 2) {
      const [top, under] = [pairs[n] as number, pairs[n + 1] as number];
      if (open && !(open.has(top) && open.has(under))) continue;
      const known = leads.get(top);
      if (known) known.push(under);
      else leads.set(top, [under]);
    }
  return leads;
}

/** Arcs that cover one another in a circle, or themselves. */
function knotsAmong(open: ReadonlySet<number>, covers: Covers): readonly (readonly number[])[] {
  const leads = leadsOf(covers, open);
  return strongGroups(leads.keys(), leads).filter(
    (group) => group.length > 1 || leads.get(group[0] as number)?.includes(group[0] as number),
  );
}

/** Cutting the longest arcs of a knot loosens it with the fewest cuts; arcs of one step are left whole. */
function longestThird(knot: readonly number[], arcs: readonly (Arc | null)[]): readonly number[] {
  const size = (number: number): number => {
    const arc = arcs[number];
    return arc ? arc.to - arc.from : 0;
  };
  const long = knot.filter((number) => size(number) >= 2);
  return long.sort((a, b) => size(b) - size(a) || a - b).slice(0, Math.ceil(long.length / 3));
}

/** Per point of a ring: bit 1 where it lies over a wire, bit 2 where it lies under one. */
type Marks = Uint8Array;

function marksOf(rings: readonly SeenRing[], overlaps: readonly Overlap[]): readonly Marks[] {
  const marks = rings.map((ring) => new Uint8Array(ring.count));
  for (const { above, below, runs, isPointAbove } of overlaps) {
    const point = marks[isPointAbove ? above : below] as Marks;
    const run = marks[isPointAbove ? below : above] as Marks;
    const [ofPoint, ofRun] = isPointAbove ? [1, 2] : [2, 1];
    for (let n = 0; n < runs.length; n += 3) {
      const p = runs[n] as number;
      point[p] = (point[p] as number) | ofPoint;
      for (let q = runs[n + 1] as number; q <= (runs[n + 2] as number); q++)
        run[q] = (run[q] as number) | ofRun;
    }
  }
  return marks;
}

/** Cuts between a stretch over and a stretch under, at the straightest point of the gap. */
function firstArcs(ring: SeenRing, index: number, marks: Marks): readonly Arc[] {
  const { count } = ring;
  const cuts: number[] = [];
  const marked = [...marks.keys()].filter((point) => marks[point] !== 0);
  marked.forEach((point, n) => {
    const next = marked[(n + 1) % marked.length] as number;
    const end = next > point ? next : next + count;
    const [here, there] = [marks[point] as number, marks[next] as number];
    if (here === there && (here !== 3 || end - point === 1)) return;
    cuts.push(straightest(ring, point, end) % count);
  });
  const places = [...new Set(cuts)].sort((a, b) => a - b);
  if (places.length < 2) return [{ ring: index, from: 0, to: count }];
  return places.map((from, n) => ({
    ring: index,
    from,
    to: n + 1 < places.length ? (places[n + 1] as number) : (places[0] as number) + count,
  }));
}

function straightest(ring: SeenRing, from: number, to: number): number {
  let best = from;
  let score = -1;
  for (let point = from; point <= to; point++) {
    const inTheClear = point > from && point < to ? 1 : 0.05;
    const straight = isTight(ring, point) ? 0.02 : 1;
    const central = 1 - Math.abs(2 * point - from - to) / (to - from + 1) / 2;
    if (inTheClear * straight * central > score) {
      score = inTheClear * straight * central;
      best = point;
    }
  }
  return best;
}
