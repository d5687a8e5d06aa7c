/** Tarjan's strongly connected components; a component comes after all those that it leads to. */
export function strongGroups(
  nodes: Iterable<number>,
  leads: ReadonlyMap<number, readonly number[]>,
): readonly (readonly number[])[] {
  const found = new Map<number, number>();
  const low = new Map<number, number>();
  const isOpen = new Set<number>();
  const open: number[] = [];
  const groups: number[][] = [];
  const visit = (node: number): number => {
    const number = found.size;
    found.set(node, number);
    let lowest = number;
    open.push(node);
    isOpen.add(node);
    for (const next of leads.get(node) ?? []) {
      if (!found.has(next)) lowest = Math.min(lowest, visit(next));
      else if (isOpen.has(next)) lowest = Math.min(lowest, low.get(next) ?? (found.get(next) as number));
    }
    low.set(node, lowest);
    if (lowest < number) return lowest;
    const group = open.splice(open.lastIndexOf(node));
    for (const member of group) isOpen.delete(member);
    groups.push(group);
    return lowest;
  };
  for (const node of nodes) if (!found.has(node)) visit(node);
  return groups;
}
