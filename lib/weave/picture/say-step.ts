/** A picture in words, from the very facts that it is drawn from. */
import type { Stretch } from '../runs.ts';
import type { Woven, WovenTurn } from '../walk.ts';

/** What each ring kind is called and its colour, `#rrggbb`. */
export type KindLooks = ReadonlyMap<string, { readonly name: string; readonly colour: string }>;

export interface StepSaid {
  readonly woven: Woven;
  readonly turn: WovenTurn;
  readonly kinds: KindLooks;
}

const bareName = (name: string): string => name.trim().replace(/\s*rings?$/i, '');

function ringsOf(kind: string, count: number, kinds: KindLooks): string {
  const bare = bareName(kinds.get(kind)?.name ?? '');
  const noun = count === 1 ? 'ring' : 'rings';
  return bare === '' ? noun : `${bare} ${noun}`;
}

const listed = (parts: readonly string[]): string =>
  parts.length < 2 ? (parts[0] ?? '') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;

/** Rings by their numbers: `ring 4`, `rings 4 and 5`. */
const numbered = (rings: readonly number[]): string =>
  `${rings.length === 1 ? 'ring' : 'rings'} ${listed(rings.map((ring) => String(ring + 1)))}`;

/** `Opened large ring 6 enters, from the back, rings 4 and 5; carries small ring 7, entered from the front.` */
export function stepWords({ woven, turn, kinds }: StepSaid): string {
  const kindOf = (ring: number): string => woven.rings[ring]?.ringKind ?? '';
  if (turn.opened === null) {
    const said = turn.carried.map((ring) => `${ringsOf(kindOf(ring), 1, kinds)} ${ring + 1}`);
    return said.length === 0 ? 'Nothing is added.' : `Laid out, closed: ${listed(said)}.`;
  }
  const clauses = [`Opened ${ringsOf(kindOf(turn.opened), 1, kinds)} ${turn.opened + 1}`];
  const passes = turn.placement.passes.map(({ from }, at) => ({ from, ring: turn.passed[at] ?? null }));
  const runs: { from: string; rings: number[] }[] = [];
  for (const { from, ring } of passes) {
    if (ring === null) continue;
    const last = runs.at(-1);
    if (last?.from === from) last.rings.push(ring);
    else runs.push({ from, rings: [ring] });
  }
  const entered = runs.map(({ from, rings }) => `from the ${from}, ${numbered(rings)}`);
  if (entered.length > 0) clauses.push(` enters, ${entered.join('; then, ')}`);
  const carried = turn.carried.map((ring) => {
    const from = woven.links.find((link) => link.by === turn.opened && link.through === ring)?.from;
    const side = from ? `, entered from the ${from}` : '';
    return `${ringsOf(kindOf(ring), 1, kinds)} ${ring + 1}${side}`;
  });
  if (carried.length > 0) clauses.push(`${entered.length > 0 ? ';' : ''} carries ${listed(carried)}`);
  const lie = turn.placement.lie === 'as it falls' ? '' : ` Then: ${turn.placement.lie}${lieRings(turn)}.`;
  return `${clauses.join('')}.${lie}`;
}

function lieRings({ laid }: WovenTurn): string {
  const known = laid.filter((ring) => ring !== null);
  return known.length === 0 ? '' : ` (${numbered(known)})`;
}

/** What the finished piece shows: how many rings of which kind. */
export function finishedWords(woven: Woven, kinds: KindLooks): string {
  const counts = new Map<string, number>();
  for (const { ringKind } of woven.rings) counts.set(ringKind, (counts.get(ringKind) ?? 0) + 1);
  const parts = [...counts].map(([kind, count]) => `${count} ${ringsOf(kind, count, kinds)}`);
  return `A piece of ${woven.rings.length} rings, pulled taut: ${listed(parts)}.`;
}

/** How colours and units fall along the piece: `11 repeats as described, then 3 with small blue rings.` */
export function runsWords(stretches: readonly Stretch[], kinds: KindLooks): string {
  const said = stretches.map(({ run, repeats }, at) => {
    const swaps = (run?.swaps ?? []).map(({ by }) => ringsOf(by, 2, kinds));
    const unit = run && run.unit !== '' ? ` of ${run.unit}` : '';
    const how = swaps.length > 0 ? ` with ${listed(swaps)}` : unit === '' ? ' as described' : '';
    return `${repeats}${at === 0 ? (repeats === 1 ? ' repeat' : ' repeats') : ''}${unit}${how}`;
  });
  return said.length === 0 ? '' : `${said.join(', then ')}.`;
}
