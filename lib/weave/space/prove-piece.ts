/**
 * A ring sequence held against the shape of its weave: whether its links are
 * those of the shape, no more and no fewer, in its ends too; whether every
 * side agrees; whether wires clear each other, so that at every crossing, from
 * wherever it is seen, one wire lies over the other by its whole thickness.
 */
import type { Piece, Side } from '../placement.ts';
import { type Woven, walkPiece } from '../walk.ts';
import { circleDistance } from './circle-distance.ts';
import { linkSign } from './linking.ts';
import { differencesOf, type NearMatch, nearMatch, type UntoldLink } from './near-match.ts';
import { keyOfRing, MIDDLE, type PieceCell, type PieceLink, repeatOfRing, WALKED } from './piece-cell.ts';
import { type PieceShape, placePiece, sidesOfPiece } from './piece-in-space.ts';
import { leastDistance, type RoundRing } from './round-ring.ts';
import type { RingMeasure } from './shape-of-weave.ts';
import { WEAVES_IN_SPACE } from './weave-in-space.ts';

/** A ring as a placement names it: the `nth` newest of its row when the placement is made. */
export interface NamedRing {
  readonly row: string;
  readonly nth: number;
}

export type Contradiction = { readonly placementId: string } & (
  | {
      /** With the passes before it, the shape asks for the other side. */
      readonly code: 'side-otherwise';
      /** Counted from 1; null where a carried ring is meant. */
      readonly pass: number | null;
      readonly told: Side;
    }
  /** The shape does not link these two. */
  | { readonly code: 'link-too-many'; readonly pass: number | null }
  /** The shape links what is opened (or carried) with one ring more; null where that one comes in with it. */
  | { readonly code: 'link-too-few'; readonly of: 'opened' | 'carried'; readonly ring: NamedRing | null }
  | { readonly code: 'fold-missing' }
  | { readonly code: 'fold-too-many' }
  /** A ring of the weave's size that finds no place in the endless weave. */
  | { readonly code: 'no-place' }
);

export type Proof =
  | {
      readonly state: 'agrees';
      /** Id in WEAVES_IN_SPACE. */
      readonly weave: string;
      /** 0 for a closed group of rings, which has none. */
      readonly repeats: number;
      readonly rings: number;
      readonly links: number;
      readonly sides: number;
      /** How near the middles of two wires come, where both together are 1 thick. */
      readonly nearest: number;
    }
  | {
      readonly state: 'differs';
      readonly weave: string;
      /** Whether the lesson says that it is this weave; else it is only the nearest that is known. */
      readonly isNamed: boolean;
      /** In the order of making, the first where it starts. */
      readonly contradictions: readonly Contradiction[];
    };

/** Repeats of the piece that is held against the shape: enough that its ends do not touch. */
const REPEATS_PROVED = 4;
/** A nearest weave that nobody named is worth mentioning up to so many differences. */
const nearUnnamed = ({ links }: PieceCell): number => (links.length < 6 ? 1 : 2);

/** The repeat against a weave: what differs, by placement; null where more than a slip does. */
export function proveRepeat(
  piece: Piece,
  cell: PieceCell,
  named: readonly string[],
): Extract<Proof, { state: 'differs' }> | null {
  let best: { readonly weave: string; readonly near: NearMatch } | null = null;
  for (const weave of WEAVES_IN_SPACE) {
    if (weave.kind !== 'chain' || (named.length > 0 && !named.includes(weave.id))) continue;
    const near = nearMatch(cell, weave);
    if (near && (!best || differencesOf(near) < differencesOf(best.near))) best = { weave: weave.id, near };
  }
  if (!best || (named.length === 0 && differencesOf(best.near) > nearUnnamed(cell))) return null;
  const contradictions = inOrder(piece, contradictionsOf(piece, cell, best.near));
  return contradictions.length === 0
    ? null
    : { state: 'differs', weave: best.weave, isNamed: named.length > 0, contradictions };
}

/** The whole piece, ends included, against the shape that its repeat was matched with. */
export function provePlaced(piece: Piece, shape: PieceShape, sizes: ReadonlyMap<string, RingMeasure>): Proof {
  const alone = { ...piece, runs: [] };
  const { woven, rings } = placePiece(alone, shape, REPEATS_PROVED, sizes);
  const placementOf = (turn: number): string => woven.turns[turn]?.placement.id ?? '';
  const found: Contradiction[] = [];
  const toldPairs = new Map(woven.links.map((link) => [pairOf(link.by, link.through), link] as const));
  for (const { index, ringKind, turn } of woven.rings)
    if (!rings[index] && shape.pieceCell.rings.some((ring) => ring.ringKind === ringKind))
      found.push({ placementId: placementOf(turn), code: 'no-place' });
  let nearest = Number.POSITIVE_INFINITY;
  rings.forEach((a, i) => {
    rings.forEach((b, j) => {
      if (j <= i || !a || !b || !mayMeet(a, b)) return;
      nearest = Math.min(nearest, circleDistance(a, b) / leastDistance(a, b));
      const told = toldPairs.get(pairOf(i, j));
      const isLinked = linkSign(a, b) !== 0;
      if (isLinked === (told !== undefined)) return;
      if (told)
        found.push({
          placementId: placementOf(told.turn),
          code: 'link-too-many',
          pass: passOf(woven, told.turn, told.through),
        });
      else found.push(tooFew(woven, j, i));
    });
  });
  const sides = sidesOfPiece(woven, shape);
  for (const link of sides.wrong)
    found.push({
      placementId: placementOf(link.turn),
      code: 'side-otherwise',
      pass: passOf(woven, link.turn, link.through),
      told: link.from ?? 'front',
    });
  const contradictions = inOrder(piece, found);
  return contradictions.length > 0
    ? { state: 'differs', weave: shape.known.weave.id, isNamed: true, contradictions }
    : {
        state: 'agrees',
        weave: shape.known.weave.id,
        repeats: shape.pieceCell.isUnit ? 0 : REPEATS_PROVED,
        rings: rings.filter(Boolean).length,
        links: woven.links.length,
        sides: sides.told,
        nearest,
      };
}

const pairOf = (a: number, b: number): string => (a < b ? `${a} ${b}` : `${b} ${a}`);

function mayMeet(a: RoundRing, b: RoundRing): boolean {
  const reach = a.radius + b.radius + a.wire + b.wire;
  return Math.hypot(...a.centre.map((at, axis) => at - (b.centre[axis] ?? 0))) < reach;
}

function passOf(woven: Woven, turn: number, through: number): number | null {
  const pass = woven.turns[turn]?.passed.indexOf(through) ?? -1;
  return pass < 0 ? null : pass + 1;
}

/** A link that the shape has and nobody told, at the placement of the later ring. */
function tooFew(woven: Woven, later: number, earlier: number): Contradiction {
  const turn = woven.rings[later]?.turn ?? -1;
  const other = woven.rings[earlier];
  const before = woven.rings.filter(({ row, turn: at }) => row === other?.row && at < turn).length;
  return {
    placementId: woven.turns[turn]?.placement.id ?? '',
    code: 'link-too-few',
    of: woven.rings[later]?.made === 'opened' ? 'opened' : 'carried',
    ring: other && other.turn < turn ? { row: other.row, nth: before - other.at } : null,
  };
}

function contradictionsOf(piece: Piece, cell: PieceCell, near: NearMatch): readonly Contradiction[] {
  const woven = walkPiece({ ...piece, runs: [], endsAfter: null }, WALKED);
  const placementOf = (ring: number): string => cell.rings[ring]?.key.split('/')[0] ?? '';
  const ringAt = (place: number, repeat: number): number =>
    woven.rings.findIndex(
      ({ index }) =>
        keyOfRing(woven, index) === cell.rings[place]?.key && repeatOfRing(woven, index) === repeat,
    );
  const few = ({ a, b, repeats }: UntoldLink): Contradiction =>
    tooFew(woven, ringAt(a, MIDDLE), ringAt(b, MIDDLE + repeats));
  const at = (link: PieceLink) => ({ placementId: placementOf(link.by), pass: link.pass });
  return [
    ...near.tooMany.map((link): Contradiction => ({ ...at(link), code: 'link-too-many' })),
    ...near.tooFew.map(few),
    ...near.contradictions.map(
      (link): Contradiction => ({ ...at(link), code: 'side-otherwise', told: link.from ?? 'front' }),
    ),
    ...foldContradictions(piece, near),
  ];
}

/** A fold too many stands where it is told; one that is missing is asked for where the repeat begins to differ: at its end. */
function foldContradictions({ repeat }: Piece, { fold }: NearMatch): readonly Contradiction[] {
  if (fold === 'as told') return [];
  const at = fold === 'too many' ? repeat.find(({ lie }) => lie === 'fold back') : lastCarrying(repeat);
  return at ? [{ placementId: at.id, code: fold === 'missing' ? 'fold-missing' : 'fold-too-many' }] : [];
}

/** What is folded back are the rings picked up last; it is done once all of them are linked. */
function lastCarrying(repeat: Piece['repeat']): Piece['repeat'][number] | undefined {
  const carrying = repeat.findLastIndex(({ carries }) => carries.length > 0);
  return repeat[carrying + 1] ?? repeat[carrying] ?? repeat.at(-1);
}

/** Each once, in the order of making. */
function inOrder(piece: Piece, found: readonly Contradiction[]): readonly Contradiction[] {
  const order = [...piece.start, ...piece.repeat, ...piece.finishing].map(({ id }) => id);
  const once = new Map(found.map((each) => [JSON.stringify(each), each] as const));
  return [...once.values()].toSorted((a, b) => order.indexOf(a.placementId) - order.indexOf(b.placementId));
}
