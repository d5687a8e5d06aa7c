/**
 * Ring kinds that pictures would tell apart by colours that are too alike,
 * and by nothing else: all but the first of them bear a line along their wire.
 */
import { ALIKE_BELOW, unlikeness, unlikenessInGrey } from '#lib/rings/colour-likeness.ts';
import { sizesOf } from '#lib/rings/ring.ts';
import { RING_LINES, type RingLine } from '#lib/weave/picture/ring-line.ts';
import type { Content } from './content.ts';

type RingKind = Content['ringKinds'][number];

/** Rings of two kinds that differ by a tenth or more are told apart by their size. */
const SAME_SIZE = 0.1;

export function areOfOneSize(one: RingKind, other: RingKind): boolean {
  const [a, b] = [sizesOf(one), sizesOf(other)];
  const isNear = (x: number, y: number): boolean => Math.abs(x - y) < SAME_SIZE * Math.max(x, y);
  return isNear(a.innerMm, b.innerMm) && isNear(a.wireMm, b.wireMm);
}

/** What looks the same in the hand needs no telling apart in a picture. */
const areOfOneStuff = (one: RingKind, other: RingKind): boolean =>
  one.metal === other.metal &&
  one.metalName === other.metalName &&
  one.colour === other.colour &&
  one.colourCode === other.colourCode;

/** Whether two colours are alike to some eyes, or on paper printed without colour. */
const areAlike = (one: string, other: string): boolean =>
  Math.min(unlikeness(one, other), unlikenessInGrey(one, other)) < ALIKE_BELOW;

/** By ring kind's id, of all kinds of a lesson, the line that it bears; the first of kinds that are alike bears none, as those do that nothing is like. */
export function ringLines(kinds: readonly RingKind[]): ReadonlyMap<string, RingLine> {
  const lines = new Map<string, RingLine>();
  kinds.forEach((kind, index) => {
    const like = kinds
      .slice(0, index)
      .filter((other) => areOfOneSize(kind, other) && !areOfOneStuff(kind, other))
      .filter((other) => areAlike(kind.colourCode, other.colourCode));
    const taken = new Set(like.map(({ id }) => lines.get(id) ?? null));
    if (!taken.has(null)) return;
    lines.set(kind.id, RING_LINES.find((line) => !taken.has(line)) ?? 'dashed');
  });
  return lines;
}
