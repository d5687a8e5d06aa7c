/**
 * Cuts rings into arcs that can be painted one after another, each after all
 * that it covers, and as few as that needs: first a cut wherever a wire goes
 * from over to under, further cuts where arcs still cover one another in a
 * circle, then arcs joined again wherever no circle comes of it. The point
 * where two arcs meet belongs to both.
 */
import { type Arc, CoverGraph } from './cover-graph.ts';
import type { Overlap } from './overlaps.ts';
import { isTight, type SeenRing } from './seen-ring.ts';

/** All arcs, the furthest first. */
export function paintOrder(rings: readonly SeenRing[], overlaps: readonly Overlap[]): readonly Arc[] {
  const marks = marksOf(rings, overlaps);
  let arcs: readonly Arc[] = rings.flatMap((ring, index) => firstArcs(ring, index, marks[index] as Marks));
  for (;;) {
    const graph = new CoverGraph(arcs, edgesOf(rings, arcs, overlaps));
    const knot = graph.knots().flat();
    const cuttable = knot.filter((index) => isLong(arcs[index] as Arc));
    if (cuttable.length === 0) return graph.joined((arc) => (rings[arc.ring] as SeenRing).count);
    const halved = new Set(longestThird(cuttable, arcs));
    arcs = arcs.flatMap((arc, index) => (halved.has(index) ? halves(arc, rings) : [arc]));
  }
}

const isLong = (arc: Arc): boolean => arc.to - arc.from >= 2;

/** Cutting the longest arcs of a knot loosens it with the fewest cuts. */
function longestThird(knot: readonly number[], arcs: readonly Arc[]): readonly number[] {
  const size = (index: number): number => (arcs[index] as Arc).to - (arcs[index] as Arc).from;
  return knot.toSorted((a, b) => size(b) - size(a) || a - b).slice(0, Math.ceil(knot.length / 3));
}

function halves(arc: Arc, rings: readonly SeenRing[]): readonly Arc[] {
  const length = arc.to - arc.from;
  const { count } = rings[arc.ring] as SeenRing;
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

/** Per point of a ring: bit 1 where it lies over a wire, bit 2 where it lies under one. */
type Marks = Uint8Array;

function marksOf(rings: readonly SeenRing[], overlaps: readonly Overlap[]): readonly Marks[] {
  const marks = rings.map((ring) => new Uint8Array(ring.count));
  for (const { above, below, pairs } of overlaps) {
    const over = marks[above] as Marks;
    const under = marks[below] as Marks;
    for (let n = 0; n < pairs.length; n += 2) {
      const p = pairs[n] as number;
      const q = pairs[n + 1] as number;
      over[p] = (over[p] as number) | 1;
      under[q] = (under[q] as number) | 2;
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

/** Which arc covers which, as flat (above, below) indices. */
function edgesOf(
  rings: readonly SeenRing[],
  arcs: readonly Arc[],
  overlaps: readonly Overlap[],
): readonly number[] {
  // Per point the arc that begins or runs there, and the one that ends there; mostly the same.
  const begun = rings.map((ring) => new Int32Array(ring.count));
  const ended = rings.map((ring) => new Int32Array(ring.count));
  const first = new Int32Array(rings.length);
  const held = new Int32Array(rings.length);
  arcs.forEach((arc, index) => {
    const { count } = rings[arc.ring] as SeenRing;
    if (held[arc.ring] === 0) first[arc.ring] = index;
    held[arc.ring] = index - (first[arc.ring] as number) + 1;
    for (let point = arc.from; point < arc.to; point++)
      (begun[arc.ring] as Int32Array)[point % count] = index;
    for (let point = arc.from + 1; point <= arc.to; point++)
      (ended[arc.ring] as Int32Array)[point % count] = index;
  });
  const edges: number[] = [];
  for (const { above, below, pairs } of overlaps) {
    const wide = held[below] as number;
    const known = new Uint8Array((held[above] as number) * wide);
    const note = (top: number, under: number): void => {
      const at = (top - (first[above] as number)) * wide + under - (first[below] as number);
      if (known[at] === 1) return;
      known[at] = 1;
      edges.push(top, under);
    };
    const [topBegun, topEnded] = [begun[above] as Int32Array, ended[above] as Int32Array];
    const [underBegun, underEnded] = [begun[below] as Int32Array, ended[below] as Int32Array];
    for (let n = 0; n < pairs.length; n += 2) {
      const p = pairs[n] as number;
      const q = pairs[n + 1] as number;
      const top = topBegun[p] as number;
      const under = underBegun[q] as number;
      const top2 = topEnded[p] as number;
      const under2 = underEnded[q] as number;
      note(top, under);
      if (top2 !== top) note(top2, under);
      if (under2 !== under) {
        note(top, under2);
        if (top2 !== top) note(top2, under2);
      }
    }
  }
  return edges;
}
