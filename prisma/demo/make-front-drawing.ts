/**
 * Draws the chain of the front page: `node prisma/demo/make-front-drawing.ts`.
 * Run by hand when the drawing changes; writes public/byzantine.svg.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { CORE_RADIUS, type Pair, PITCH, settled } from './byzantine-in-space.ts';
import { circle, drawTubes, METALS, type Tube } from './tube-drawing.ts';

const REPEATS = 4;
const SCALE = 26;

const ring = (pair: Pair, knot: number, which: 0 | 1): Tube => {
  const { centre, normal } = settled(pair, knot, which);
  const metal = pair === 'folded' ? METALS.blue : METALS.copper;
  return { line: circle(centre, normal, CORE_RADIUS, 0, 40), radius: 0.5, metal };
};
const tubes = [0, 1].flatMap((side) => {
  const which = side === 0 ? 0 : 1;
  const knots = Array.from({ length: REPEATS }, (_, knot) =>
    (['inner', 'folded', 'joining'] as const).map((pair) => ring(pair, knot, which)),
  );
  return [ring('joining', -1, which), ...knots.flat()];
});

const width = Math.round((REPEATS * PITCH + 6.4) * SCALE);
const height = 6.6 * SCALE;
const view = { turnX: 0.75, turnY: 0.1, scale: SCALE, x: 5.8 * SCALE, y: height / 2 };

/** Pairs of tone and width become classes: the same few hundred times. */
const classes = new Map<string, string>();
const body = drawTubes(tubes, view).replace(
  /<path d="([^"]+)" stroke="(#[0-9a-f]+)" stroke-width="([\d.]+)"\/>/g,
  (_, d: string, colour: string, wide: string) => {
    const rule = `stroke:${colour};stroke-width:${wide}`;
    if (!classes.has(rule)) classes.set(rule, `c${classes.size.toString(36)}`);
    return `<path class="${classes.get(rule)}" d="${d}"/>`;
  },
);
const style = [...classes].map(([rule, name]) => `.${name}{${rule}}`).join('');
const folder = join(import.meta.dirname, '..', '..', 'public');
mkdirSync(folder, { recursive: true });
writeFileSync(
  join(folder, 'byzantine.svg'),
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${Math.round(height)}" fill="none"><title>Byzantine chain</title><style>${style}</style>${body}</svg>\n`,
);
