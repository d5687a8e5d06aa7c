/** The outline of a stretch of sound, drawn downwards about a middle line. Pure. */

/** Peaks files hold one byte for every 50 ms (lib/recording). */
const PEAK_MS = 50;
/** Half the width that silence takes and that the loudest sound takes, of 50. */
const THIN = 1.5;
const WIDE = 46;
const MOST_POINTS = 80;

/**
 * SVG path data in a box 100 wide and 100 high, from `startMs` at the top to
 * `endMs` at the bottom. Loudness is drawn by its square root, so that quiet
 * speech is seen beside the clink of rings. Without peaks it is a thin line.
 */
export function ribbonPath(peaks: Uint8Array | null, startMs: number, endMs: number): string {
  const from = Math.floor(startMs / PEAK_MS);
  const count = Math.max(1, Math.ceil(endMs / PEAK_MS) - from);
  const points = peaks ? Math.min(count, MOST_POINTS) : 1;
  const halves = Array.from({ length: points }, (_, at) => {
    const first = from + Math.floor((at * count) / points);
    const last =
      from + Math.max(Math.floor(((at + 1) * count) / points), Math.floor((at * count) / points) + 1);
    let loudest = 0;
    for (let peak = first; peak < last; peak += 1) loudest = Math.max(loudest, peaks?.[peak] ?? 0);
    return THIN + (WIDE - THIN) * Math.sqrt(loudest / 255);
  });
  const y = (at: number) => ((at + 0.5) * 100) / points;
  const ends = [halves[0] ?? THIN, halves.at(-1) ?? THIN] as const;
  const right = halves.map((half, at) => `L${(50 + half).toFixed(1)} ${y(at).toFixed(1)}`);
  const left = halves.map((half, at) => `L${(50 - half).toFixed(1)} ${y(at).toFixed(1)}`).reverse();
  return [
    `M${(50 + ends[0]).toFixed(1)} 0`,
    ...right,
    `L${(50 + ends[1]).toFixed(1)} 100L${(50 - ends[1]).toFixed(1)} 100`,
    ...left,
    `L${(50 - ends[0]).toFixed(1)} 0Z`,
  ].join('');
}
