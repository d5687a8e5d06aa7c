/**
 * Lengths of chains that geometry gives: rings, or stacks of rings side by
 * side, each linked with the next alone, nothing folded. Rigid round rings,
 * pulled straight; whatever else is woven has to be measured.
 */
import { sizesOf } from '#lib/rings/ring.ts';
import type { RingKind } from '#lib/rings/ring-kind.ts';
import type { Piece } from '#lib/weave/placement.ts';
import { neighboursOf, walkPiece } from '#lib/weave/walk.ts';
import { toMm, toTicks } from './ticks.ts';

/** So many rings of one kind side by side. */
export interface Stack {
  readonly innerMm: number;
  readonly wireMm: number;
  readonly count: number;
}

/**
 * Centre to centre of two linked stacks that are pulled apart, mm; null where
 * no formula is known. Single rings stand at right angles and the wire of one
 * lies in the middle of the other: (ID + ID')/2, exactly, whatever their
 * wires. Equal rings in stacks lie off the middle by half the width of the
 * stack: ID - (h^2 + h'^2) x WD^2/(ID - WD), h = (count - 1)/2. Against the
 * least distance found numerically, pairs are within 0.2 % from aspect ratio
 * 3, threes within 3 % at 3.5 and 0.5 % from 5.
 */
export function stackPitchMm(a: Stack, b: Stack): number | null {
  if (a.count === 1 && b.count === 1) return (a.innerMm + b.innerMm) / 2;
  if (a.innerMm !== b.innerMm || a.wireMm !== b.wireMm || a.innerMm <= a.wireMm) return null;
  const { innerMm, wireMm } = a;
  const off = ((a.count - 1) / 2) ** 2 + ((b.count - 1) / 2) ** 2;
  const pitch = innerMm - (off * wireMm ** 2) / (innerMm - wireMm);
  return pitch > 0 ? pitch : null;
}

/** Length of a chain of stacks from end to end, mm: 1-1 of n equal rings is n x ID + 2 x WD. Null where a pitch is not known. */
export function chainLengthMm(stacks: readonly Stack[]): number | null {
  const first = stacks[0];
  const last = stacks.at(-1);
  if (!first || !last) return null;
  let length = first.innerMm / 2 + first.wireMm + last.innerMm / 2 + last.wireMm;
  for (const [index, stack] of stacks.slice(1).entries()) {
    const before = stacks[index];
    const pitch = before ? stackPitchMm(before, stack) : null;
    if (pitch === null) return null;
    length += pitch;
  }
  return length;
}

export interface ClosedForm {
  readonly perRepeatMm: number;
  readonly endsMm: number;
  /** Whether the formula is exact for rigid rings; else it is close (see `stackPitchMm`). */
  readonly isExact: boolean;
  /** Rings side by side in each stack of the repeat, in order: 1-1 is [1, 1], 2-2 is [2]. */
  readonly stacks: readonly number[];
}

/** Repeats that are walked to see how a piece grows. */
const WALKED = 3;

/**
 * The closed form of a piece, found from its link graph; null where it has
 * none: a pass does not name its ring, something is folded or parted, rings
 * hang on more than the next stack, or a stack holds rings of different kinds
 * or rows.
 */
export function closedFormOf(piece: Piece, ringKinds: readonly RingKind[]): ClosedForm | null {
  const plain = { ...piece, runs: [] };
  const short = stacksOf(plain, ringKinds, WALKED);
  const long = stacksOf(plain, ringKinds, WALKED + 1);
  const shortMm = short && chainLengthMm(short);
  const longMm = long && chainLengthMm(long);
  if (!short || !long || shortMm === null || longMm === null) return null;
  const perRepeat = toTicks(longMm) - toTicks(shortMm);
  const ends = toTicks(shortMm) - WALKED * perRepeat;
  if (perRepeat <= 0 || ends < 0) return null;
  return {
    perRepeatMm: toMm(perRepeat),
    endsMm: toMm(ends),
    isExact: long.every(({ count }) => count === 1),
    stacks: long.slice(short.length * 2 - long.length, short.length).map(({ count }) => count),
  };
}

/** The stacks of a chain from one end to the other; null where the piece is no chain of stacks. */
function stacksOf(piece: Piece, ringKinds: readonly RingKind[], repeats: number): readonly Stack[] | null {
  const woven = walkPiece(piece, repeats);
  if (!woven.isNamed || woven.turns.some(({ placement }) => placement.lie !== 'as it falls')) return null;
  const neighbours = neighboursOf(woven);
  // Rings of a stack are linked with the same rings and with none of their own.
  const members = new Map<string, number[]>();
  neighbours.forEach((linked, ring) => {
    const key = [...new Set(linked)].sort((a, b) => a - b).join(' ');
    members.set(key, [...(members.get(key) ?? []), ring]);
  });
  const stackOf = new Map(
    [...members.values()].flatMap((rings, stack) => rings.map((ring) => [ring, stack] as const)),
  );
  const rings = [...members.values()];
  const next = rings.map(([first = 0]) => [
    ...new Set((neighbours[first] ?? []).flatMap((ring) => stackOf.get(ring) ?? [])),
  ]);
  const order = pathOf(next);
  const kinds = new Map(ringKinds.map((kind) => [kind.id, kind]));
  const stacks = (order ?? []).map((stack): Stack | null => {
    const held = (rings[stack] ?? []).flatMap((ring) => woven.rings[ring] ?? []);
    const kind = kinds.get(held[0]?.ringKind ?? '');
    // Edge rings of a strip hang on the same rings too, but lie in rows of their own.
    const isStack = held.every(({ ringKind, row }) => ringKind === held[0]?.ringKind && row === held[0].row);
    if (!kind || !isStack) return null;
    const { innerMm, wireMm } = sizesOf(kind);
    return { innerMm, wireMm, count: held.length };
  });
  return stacks.length > 0 && stacks.every((stack) => stack !== null) ? stacks : null;
}

/** The nodes of a graph in order if it is one path from end to end, else null. */
function pathOf(next: readonly (readonly number[])[]): readonly number[] | null {
  const start = next.findIndex((linked) => linked.length === 1);
  if (start < 0) return null;
  const order = [start];
  for (let before = -1, at = start; ; ) {
    const on = (next[at] ?? []).filter((node) => node !== before);
    const [only] = on;
    if (on.length > 1) return null;
    if (only === undefined) return order.length === next.length ? order : null;
    before = at;
    at = only;
    order.push(at);
    if (order.length > next.length) return null;
  }
}
