/** What lies on the drawn bench besides the chain: handle, clasp, pliers, glasses, ruler. */
import { circle, METALS, type Metal, type Point, type Tube } from './tube-drawing.ts';

const VERDIGRIS: Metal = { edge: '#0d352e', dark: '#1d675a', light: '#5aa595', shine: '#dcece6' };

/** A twist-tie through the first pair, its two ends twisted into a handle to the left of `x`. */
export function twistTie(x: number): Tube[] {
  const loop = circle([x - 1.1, 0, 0], [0, 1, 0], 1.25, 0.5, 40, Math.PI);
  const strand = (side: number): Point[] =>
    Array.from({ length: 61 }, (_, k) => {
      const angle = k * 0.42 + (side > 0 ? 0 : Math.PI);
      const wide = Math.min(1, 0.35 + k * 0.002) * 0.42;
      return [x - 2.3 - k * 0.085, Math.sin(angle) * wide, Math.cos(angle) * wide];
    });
  return [
    { line: loop, radius: 0.2, metal: VERDIGRIS },
    { line: strand(1), radius: 0.2, metal: VERDIGRIS },
    { line: strand(-1), radius: 0.2, metal: VERDIGRIS },
  ];
}

/** A lobster clasp, its loop at `x` and its hook `length` further along the chain. */
export function clasp(x: number, length = 9): Tube[] {
  const body: Point[] = Array.from({ length: 65 }, (_, k) => {
    const angle = (2 * Math.PI * k) / 64;
    const along = (1 - Math.cos(angle)) / 2;
    const wide = 2.1 * Math.sin(angle) * (0.45 + 0.55 * along);
    return [x + 1 + along * (length - 1.2), wide, 0];
  });
  return [
    { line: circle([x, 0, 0], [0, 0, 1], 1.15), radius: 0.38, metal: METALS.steel },
    { line: body, radius: 0.52, metal: METALS.steel },
    {
      line: [
        [x + 2.6, -0.3, 0.3],
        [x + 4, -0.95, 0.3],
        [x + 5.6, -1.7, 0.3],
      ],
      radius: 0.5,
      metal: METALS.steel,
    },
  ];
}

/** Smooth-jawed pliers, seen from above, `turn` degrees from lying upright. */
export function pliers(x: number, y: number, turn: number, scale = 1): string {
  const jaw = 'M-4 -10C-16 -40 -12 -96 -3 -122L-1 -122L-1 -10Z';
  const grip = 'M-6 -6C-30 40 -44 110 -34 196C-32 208 -16 208 -16 196C-20 120 -8 60 8 10Z';
  const half = `<path d="${jaw}" fill="#8d9499" stroke="#33363a" stroke-width="3"/><path d="${grip}" fill="#1d675a" stroke="#0d352e" stroke-width="3"/>`;
  return `<g transform="translate(${x} ${y}) rotate(${turn}) scale(${scale})">${half}<g transform="scale(-1 1)">${half}</g><circle r="13" fill="#c3c9cd" stroke="#33363a" stroke-width="3"/></g>`;
}

/** Safety glasses, from the front. */
export function glasses(x: number, y: number): string {
  const lens = (at: number) =>
    `<rect x="${at}" y="-34" width="112" height="70" rx="28" fill="#dcece6" fill-opacity="0.8" stroke="#25211b" stroke-width="7"/>`;
  return `<g transform="translate(${x} ${y})">${lens(-124)}${lens(12)}<path d="M-12 -8C-6 -20 6 -20 12 -8" stroke="#25211b" stroke-width="7"/><path d="M-124 -12L-150 -26M124 -12L150 -26" stroke="#25211b" stroke-width="7"/></g>`;
}

/** A ruler with a tick each millimetre; `mm` long, its zero at `x`. */
export function ruler(x: number, y: number, mm: number, pxPerMm: number): string {
  const ticks = Array.from({ length: mm + 1 }, (_, k) => {
    const high = k % 10 === 0 ? 34 : k % 5 === 0 ? 24 : 14;
    return `<path d="M${(x + k * pxPerMm).toFixed(1)} ${y}v${high}" stroke="#25211b" stroke-width="1.6"/>`;
  });
  const figures = Array.from(
    { length: Math.floor(mm / 10) + 1 },
    (_, k) => `<text x="${x + k * 10 * pxPerMm}" y="${y + 62}" class="figure">${k * 10}</text>`,
  );
  return `<rect x="${x - 26}" y="${y}" width="${mm * pxPerMm + 60}" height="84" rx="6" fill="#f4e4d5" stroke="#857a68" stroke-width="2"/>${ticks.join('')}${figures.join('')}`;
}

/** A line between two points with a bar at each end, and what it measures. */
export function dimension(
  from: readonly [number, number],
  to: readonly [number, number],
  label: string,
  at: readonly [number, number],
): string {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy);
  const [nx, ny] = [(-dy / length) * 10, (dx / length) * 10];
  const bar = ([x, y]: readonly [number, number]) => `M${x - nx} ${y - ny}L${x + nx} ${y + ny}`;
  return `<path d="M${from[0]} ${from[1]}L${to[0]} ${to[1]}${bar(from)}${bar(to)}" stroke="#1d675a" stroke-width="4"/><text x="${at[0]}" y="${at[1]}" class="measure">${label}</text>`;
}
