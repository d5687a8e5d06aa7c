/** Arcs and which of them cover which. */
/** Points `from` to `to` of a ring, both included; `to` may run past the last point and round again. */
export interface Arc {
  readonly ring: number;
  readonly from: number;
  readonly to: number;
}

export class CoverGraph {
  private readonly arcs: readonly Arc[];
  /** Arcs that each arc covers. */
  private readonly covers: readonly Set<number>[];
  private readonly groups: readonly (readonly number[])[];

  constructor(arcs: readonly Arc[], edges: readonly number[]) {
    this.arcs = arcs;
    this.covers = arcs.map(() => new Set());
    for (let n = 0; n < edges.length; n += 2) this.covers[edges[n] as number]?.add(edges[n + 1] as number);
    this.groups = strongGroups(this.covers);
  }

  /** Arcs that cover one another in a circle, or themselves. */
  knots(): readonly (readonly number[])[] {
    return this.groups.filter(
      (group) => group.length > 1 || this.covers[group[0] as number]?.has(group[0] as number),
    );
  }

  /** The arcs in painting order, neighbours on a ring joined where that ties no knot. */
  joined(countOf: (arc: Arc) => number): readonly Arc[] {
    const arcs: (Arc | null)[] = [...this.arcs];
    const covers = this.covers.map((each) => new Set(each));
    const coveredBy = covers.map(() => new Set<number>());
    covers.forEach((each, top) => {
      for (const under of each) coveredBy[under]?.add(top);
    });
    const leads = (from: number, to: number): boolean => {
      const seen = new Set<number>([from]);
      const open = [from];
      for (let node = open.pop(); node !== undefined; node = open.pop())
        for (const next of covers[node] ?? []) {
          if (next === to) return true;
          if (!seen.has(next)) {
            seen.add(next);
            open.push(next);
          }
        }
      return false;
    };
    const join = (into: number, gone: number, joinedArc: Arc): void => {
      for (const under of covers[gone] ?? []) {
        covers[into]?.add(under);
        coveredBy[under]?.delete(gone);
        coveredBy[under]?.add(into);
      }
      for (const top of coveredBy[gone] ?? []) {
        coveredBy[into]?.add(top);
        covers[top]?.delete(gone);
        covers[top]?.add(into);
      }
      covers[gone]?.clear();
      coveredBy[gone]?.clear();
      arcs[into] = joinedArc;
      arcs[gone] = null;
    };
    for (let index = 0; index < arcs.length; index++) {
      for (;;) {
        const arc = arcs[index];
        if (!arc) break;
        const count = countOf(arc);
        const next = arcs.findIndex(
          (other, at) => at !== index && other?.ring === arc.ring && other.from % count === arc.to % count,
        );
        const after = arcs[next];
        if (!after || leads(index, next) || leads(next, index)) break;
        join(index, next, { ...arc, to: arc.to + (after.to - after.from) });
      }
    }
    const order = strongGroups(covers).flat();
    return order.flatMap((index) => arcs[index] ?? []);
  }
}

/** Tarjan's strongly connected components; a component comes after all those that it leads to. */
function strongGroups(leads: readonly ReadonlySet<number>[]): readonly (readonly number[])[] {
  const found = new Int32Array(leads.length).fill(-1);
  const low = new Int32Array(leads.length);
  const isOpen = new Uint8Array(leads.length);
  const open: number[] = [];
  const groups: number[][] = [];
  let clock = 0;
  const visit = (node: number): void => {
    found[node] = clock;
    low[node] = clock;
    clock += 1;
    open.push(node);
    isOpen[node] = 1;
    for (const next of leads[node] ?? []) {
      if (found[next] === -1) visit(next);
      if (isOpen[next] === 1) low[node] = Math.min(low[node] as number, low[next] as number);
    }
    if (low[node] !== found[node]) return;
    const group = open.splice(open.lastIndexOf(node));
    for (const member of group) isOpen[member] = 0;
    groups.push(group);
  };
  leads.forEach((_, node) => {
    if (found[node] === -1) visit(node);
  });
  return groups;
}
