/** A weave whose shapes were worked out beforehand, for rings of one size. */
export interface SettledWeave {
  readonly id: string;
  /** Below it no shape was found; wire diameters. */
  readonly leastAspectRatio: number;
  /**
   * The shape at the smallest aspect ratio, a hair above it: shapes of tight
   * rings are pulled from it, as others cannot be squeezed into it in the
   * rounds there are. Absent where all aspect ratios have one shape.
   */
  readonly tightest?: SettledShape;
  /** By rising aspect ratio. */
  readonly shapes: readonly SettledShape[];
}

/** A taut cell; lengths in wire diameters, the twist in radians. */
export interface SettledShape {
  readonly aspectRatio: number;
  readonly pitch: number;
  /** Pitch pushed together; null where a weave has none. */
  readonly pushed: number | null;
  readonly twist: number;
  /** Per ring its centre and normal, six numbers. */
  readonly rings: readonly (readonly number[])[];
}
