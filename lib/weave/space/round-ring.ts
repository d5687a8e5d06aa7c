/**
 * A ring as a rigid round torus in space. Lengths are in any one unit (mm, or
 * wire diameters); whoever makes rings keeps to one.
 */
import { add, scale, turnAboutX, type Vector } from './vector.ts';

export interface RoundRing {
  readonly centre: Vector;
  /** Unit vector; its direction also says which way round the ring is counted. */
  readonly normal: Vector;
  /** Of the circle in the middle of the wire: (inner diameter + wire) / 2. */
  readonly radius: number;
  /** Diameter of the wire. */
  readonly wire: number;
}

/** Middle radius of a ring by inner diameter and wire. */
export const middleRadius = (inner: number, wire: number): number => (inner + wire) / 2;

/** The free space between two rings' surfaces is their circles' distance less this. */
export const leastDistance = (a: RoundRing, b: RoundRing): number => (a.wire + b.wire) / 2;

/**
 * A chain without end along x: the rings of one cell, repeated every `pitch`
 * and turned by `twist` radians about x each time.
 */
export interface Cell {
  readonly rings: readonly RoundRing[];
  readonly pitch: number;
  readonly twist: number;
}

/** Pitch of a closed group of rings: its next cell is too far away to meet. */
export const ALONE = 1e6;

/** The ring as it stands `cells` cells further on. */
export const inCell = (ring: RoundRing, { pitch, twist }: Cell, cells: number): RoundRing =>
  cells === 0
    ? ring
    : {
        ...ring,
        centre: add(turnAboutX(ring.centre, cells * twist), [cells * pitch, 0, 0]),
        normal: turnAboutX(ring.normal, cells * twist),
      };

/** Everything a factor larger; shapes with the same aspect ratios are alike. */
export const scaledCell = (cell: Cell, by: number): Cell => ({
  pitch: cell.pitch * by,
  twist: cell.twist,
  rings: cell.rings.map((ring) => ({
    centre: scale(ring.centre, by),
    normal: ring.normal,
    radius: ring.radius * by,
    wire: ring.wire * by,
  })),
});

/** The other leaning: everything seen in a mirror that stands along the chain. */
export const mirroredCell = (cell: Cell): Cell => ({
  pitch: cell.pitch,
  twist: -cell.twist,
  rings: cell.rings.map((ring) => ({
    ...ring,
    centre: [ring.centre[0], ring.centre[1], -ring.centre[2]],
    normal: [ring.normal[0], ring.normal[1], -ring.normal[2]],
  })),
});
