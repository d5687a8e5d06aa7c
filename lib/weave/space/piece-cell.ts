/**
 * The repeat of a ring sequence as it stands in the middle of a long piece:
 * its rings, and who passes through whom how many repeats back.
 */
import type { Piece, Side } from '../placement.ts';
import { type Woven, walkPiece } from '../walk.ts';

export interface PieceRing {
  /** `placement id/slot`, the same in every repeat. */
  readonly key: string;
  readonly ringKind: string;
}

/** Ring `by` of a repeat passes through ring `through` of the repeat `repeats` further on (mostly 0 or before). */
export interface PieceLink {
  readonly by: number;
  readonly through: number;
  readonly repeats: number;
  readonly from: Side | null;
  /** Which pass of its placement makes it, from 1; null where the ring is carried. */
  readonly pass: number | null;
}

export interface PieceCell {
  readonly rings: readonly PieceRing[];
  readonly links: readonly PieceLink[];
  /** Whether anything is folded back: then links and sides do not tell the weave. */
  readonly isFolded: boolean;
  /** Without a repeat: a closed group of rings, which all stand in it. */
  readonly isUnit: boolean;
}

/** Repeats walked to be sure that the middle one is like all others. */
export const WALKED = 9;
export const MIDDLE = 6;

export const keyOfRing = (woven: Woven, ring: number): string => {
  const { turn = -1, slot = 0 } = woven.rings[ring] ?? {};
  return `${woven.turns[turn]?.placement.id ?? ''}/${slot}`;
};

export const repeatOfRing = (woven: Woven, ring: number): number | null =>
  woven.turns[woven.rings[ring]?.turn ?? -1]?.repeat ?? null;

/** The middle repeat, or all rings of a piece without one; null where passes name no rings, or where a repeat reaches back further than a few. */
export function pieceCell(piece: Piece): PieceCell | null {
  const woven = walkPiece({ ...piece, runs: [], endsAfter: null }, WALKED);
  if (!woven.isNamed) return null;
  if (piece.repeat.length === 0) return unitOf(piece, woven);
  const inMiddle = woven.rings.filter(({ index }) => repeatOfRing(woven, index) === MIDDLE);
  const places = new Map(inMiddle.map(({ index }, place) => [keyOfRing(woven, index), place]));
  const links: PieceLink[] = [];
  for (const { by, through, from, turn } of woven.links) {
    if (repeatOfRing(woven, by) !== MIDDLE) continue;
    const place = places.get(keyOfRing(woven, by));
    const other = places.get(keyOfRing(woven, through));
    const repeat = repeatOfRing(woven, through);
    if (place === undefined || other === undefined || repeat === null) return null;
    const pass = woven.turns[turn]?.passed.indexOf(through) ?? -1;
    links.push({
      by: place,
      through: other,
      repeats: repeat - MIDDLE,
      from,
      pass: pass < 0 ? null : pass + 1,
    });
  }
  const rings = inMiddle.map(({ index, ringKind }) => ({ key: keyOfRing(woven, index), ringKind }));
  const isFolded = piece.repeat.some(({ lie }) => lie === 'fold back');
  return rings.length > 0 ? { rings, links, isFolded, isUnit: false } : null;
}

function unitOf(piece: Piece, woven: Woven): PieceCell | null {
  const rings = woven.rings.map(({ index, ringKind }) => ({ key: keyOfRing(woven, index), ringKind }));
  const links = woven.links.map(({ by, through, from, turn }): PieceLink => {
    const pass = woven.turns[turn]?.passed.indexOf(through) ?? -1;
    return { by, through, repeats: 0, from, pass: pass < 0 ? null : pass + 1 };
  });
  const isFolded = [...piece.start, ...piece.finishing].some(({ lie }) => lie === 'fold back');
  return rings.length > 0 ? { rings, links, isFolded, isUnit: true } : null;
}
