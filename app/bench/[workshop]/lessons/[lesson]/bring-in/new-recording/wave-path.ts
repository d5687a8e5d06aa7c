/** The outline of a whole recording's sound, drawn from left to right about a middle line. Pure. */

const PEAK_MS = 50;
const COLUMNS = 480;

/**
 * SVG path data from x 0 to `width` and about y 0, `half` high either way.
 * Loudness is drawn by its square root, so that quiet speech is seen.
 */
export function wavePath(peaks: Uint8Array | null, durationMs: number, width: number, half: number): string {
  const count = Math.max(1, Math.ceil(durationMs / PEAK_MS));
  const columns = Math.min(COLUMNS, count);
  const heights = Array.from({ length: columns }, (_, at) => {
    let loudest = 0;
    const end = Math.max(Math.floor(((at + 1) * count) / columns), Math.floor((at * count) / columns) + 1);
    for (let peak = Math.floor((at * count) / columns); peak < end; peak++) {
      loudest = Math.max(loudest, peaks?.[peak] ?? 0);
    }
    return Math.max(0.6, half * Math.sqrt(loudest / 255));
  });
  const x = (at: number): string => (((at + 0.5) * width) / columns).toFixed(1);
  const above = heights.map((height, at) => `L${x(at)} ${(-height).toFixed(1)}`);
  const below = heights.map((height, at) => `L${x(at)} ${height.toFixed(1)}`).toReversed();
  return `M0 0${above.join('')}L${width.toFixed(1)} 0${below.join('')}Z`;
}
