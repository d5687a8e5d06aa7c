/**
 * The pictures of the demo recording: each scene at a moment of its own
 * movement, 0 to 1, as one SVG of 1280 by 720. The order of the weaving is in
 * the narration; here is only what is seen.
 */
import { clasp, dimension, glasses, pliers, ruler, twistTie } from './bench-props.ts';
import { CORE_RADIUS, folding, type Pair, PITCH, type Ring, settled } from './byzantine-in-space.ts';
import { circle, drawTubes, METALS, type Metal, type Point, type Tube, type View } from './tube-drawing.ts';

export const WIDTH = 1280;
export const HEIGHT = 720;

const CHAIN: View = { turnX: 0.75, turnY: 0.12, scale: 42, x: 560, y: 372 };
const START_X = -PITCH + 2.985;

type Scene = (moved: number) => string;

/** Every scene by its name in the narration. `moving` tells whether it changes while it is spoken. */
export const SCENES: Readonly<Record<string, { readonly moving: boolean; readonly draw: Scene }>> = {
  title: { moving: false, draw: title },
  kinds: { moving: false, draw: () => kinds('all') },
  'kinds-copper': { moving: false, draw: () => kinds('copper') },
  'kinds-blue': { moving: false, draw: () => kinds('blue') },
  'kinds-small': { moving: false, draw: () => kinds('small') },
  tools: { moving: false, draw: tools },
  pair: { moving: false, draw: () => pairs(false) },
  eye: { moving: false, draw: () => pairs(true) },
  'fold-shown': { moving: true, draw: (moved) => chain([...knots(0), ...newest(0, late(moved))], handle()) },
  prepare: { moving: false, draw: prepare },
  'twist-open': { moving: true, draw: twistOpen },
  start: { moving: false, draw: () => chain(knots(0), handle()) },
  'add-inner-1': { moving: true, draw: (moved) => chain(knots(0), handle(), addInner(0, 0, moved)) },
  'add-inner-2': { moving: true, draw: (moved) => chain(knots(0), handle(), addInner(0, 1, moved)) },
  fold: { moving: true, draw: (moved) => chain([...knots(0), ...newest(0, moved)], handle()) },
  folded: { moving: true, draw: foldedEyes },
  'lock-1': {
    moving: true,
    draw: (moved) => chain([...knots(0), ...newest(0, 1)], handle(), lock(0, 0, moved)),
  },
  'lock-2': {
    moving: true,
    draw: (moved) => chain([...knots(0), ...newest(0, 1), joined(0, 0)], handle(), lock(0, 1, moved)),
  },
  again: { moving: true, draw: (moved) => chain(knots(1), handle(), addInner(1, 0, moved)) },
  'again-fold': { moving: true, draw: againFold },
  ruler: { moving: false, draw: measured },
  last: { moving: false, draw: () => chain(knots(3), [], [], { x: 300 }) },
  untied: { moving: true, draw: untied },
  'clasp-ring': { moving: false, draw: () => ends([smallRing(-1.2, 3.6, 0.7)]) },
  'clasp-on': { moving: true, draw: claspOn },
  done: { moving: false, draw: bracelet },
};

/** A movement that waits a little, then runs, then rests. */
const late = (moved: number, from = 0.3, to = 0.9): number =>
  smooth(Math.min(1, Math.max(0, (moved - from) / (to - from))));
const smooth = (share: number): number => share * share * (3 - 2 * share);

const metalOf = (pair: Pair): Metal => (pair === 'folded' ? METALS.blue : METALS.copper);
const tube = (ring: Ring, metal: Metal, more: Partial<Tube> & { gap?: number } = {}): Tube => ({
  line: circle(ring.centre, ring.normal, CORE_RADIUS, more.gap ?? 0, 64, 0.4),
  radius: 0.5,
  metal,
  ...more,
});
const BOTH = [0, 1] as const;

const joined = (knot: number, which: 0 | 1): Tube => tube(settled('joining', knot, which), METALS.copper);

/** The first pair and `count` finished repeats. */
function knots(count: number): Tube[] {
  const tubes = BOTH.map((which) => joined(-1, which));
  for (let knot = 0; knot < count; knot += 1) {
    for (const pair of ['inner', 'folded', 'joining'] as const) {
      for (const which of BOTH) tubes.push(tube(settled(pair, knot, which), metalOf(pair)));
    }
  }
  return tubes;
}

/** The inner and the blue pair of a repeat that is not locked yet. */
const newest = (knot: number, folded: number): Tube[] =>
  (['inner', 'folded'] as const).flatMap((pair) =>
    BOTH.map((which) => tube(folding(pair, knot, which, folded), metalOf(pair))),
  );

const handle = (): Tube[] => twistTie(START_X - CORE_RADIUS + 0.9);

/** An open ring comes from `away`, goes to its place and closes. */
function comes(ring: Ring, metal: Metal, moved: number, away: Point, carried: readonly Tube[] = []): Tube[] {
  const still = 1 - smooth(Math.min(1, moved / 0.6));
  const gap = 0.85 * (1 - smooth(Math.min(1, Math.max(0, (moved - 0.68) / 0.22))));
  const shift = ([x, y, z]: Point): Point => [x + away[0] * still, y + away[1] * still, z + away[2] * still];
  const moving = tube({ ...ring, centre: shift(ring.centre) }, metal, { gap, marked: moved < 0.95 });
  return [moving, ...carried.map((held) => ({ ...held, line: held.line.map(shift) }))];
}

function addInner(knot: number, which: 0 | 1, moved: number): Tube[] {
  const inner = (index: 0 | 1) => folding('inner', knot, index, 0);
  const blue = BOTH.map((index) => tube(folding('folded', knot, index, 0), METALS.blue));
  const away: Point = knot % 2 === 0 ? [4.6, 1.6, 2.6] : [4.6, 2.6, 1.6];
  if (which === 0) return comes(inner(0), METALS.copper, moved, away, blue);
  return [tube(inner(0), METALS.copper), ...blue, ...comes(inner(1), METALS.copper, moved, [1.2, -4.2, 3.4])];
}

const lock = (knot: number, which: 0 | 1, moved: number): Tube[] =>
  comes(settled('joining', knot, which), METALS.copper, moved, which === 0 ? [5.4, 2.2, 1] : [5.4, -2.2, 1]);

function againFold(moved: number): string {
  const phase = moved * 4;
  if (phase < 1) return chain(knots(1), handle(), addInner(1, 1, phase));
  if (phase < 2) return chain([...knots(1), ...newest(1, smooth(phase - 1))], handle());
  const folded = [...knots(1), ...newest(1, 1)];
  if (phase < 3) return chain(folded, handle(), lock(1, 0, phase - 2));
  return chain([...folded, joined(1, 0)], handle(), lock(1, 1, phase - 3));
}

function chain(
  rings: readonly Tube[],
  held: readonly Tube[],
  added: readonly Tube[] = [],
  view = {},
): string {
  return sheet(drawTubes([...rings, ...held, ...added], { ...CHAIN, ...view }));
}

function foldedEyes(moved: number): string {
  const rings = drawTubes([...knots(0), ...newest(0, 1), ...handle()], CHAIN);
  const shown = late(moved, 0.35, 0.6).toFixed(2);
  // The eyes of the blue pair open at the far end of the parted copper pair.
  const mark = `<g opacity="${shown}" stroke="#1d675a" stroke-width="7"><path d="M846 372H736"/><path d="M762 350L734 372L762 394"/></g>`;
  return sheet(rings + mark);
}

function title(): string {
  const view: View = { ...CHAIN, scale: 30, x: 250, y: 468 };
  return sheet(
    `<text x="640" y="160" class="title">Two-colour byzantine bracelet</text>` +
      `<text x="640" y="222" class="under">Lower Withy Workshop</text>` +
      drawTubes(knots(5), view),
  );
}

type Shown = 'all' | 'copper' | 'blue' | 'small';

function kinds(shown: Shown): string {
  const flat = (x: number, core: number, radius: number, metal: Metal, kind: Shown): string => {
    const view: View = { turnX: 0, turnY: 0, scale: 62, x, y: 350 };
    const ring = drawTubes([{ line: circle([0, 0, 0], [0, 0, 1], core, 0, 96), radius, metal }], view);
    return shown === 'all' || shown === kind ? ring : `<g opacity="0.32">${ring}</g>`;
  };
  const small = { core: (3.175 + 0.9144) / 2 / 1.2192, radius: 0.375 };
  const rings =
    flat(260, 2.29, 0.5, METALS.copper, 'copper') +
    flat(640, 2.29, 0.5, METALS.blue, 'blue') +
    flat(990, small.core, small.radius, METALS.copper, 'small');
  const large = (x: number) =>
    dimension([x - 110, 350], [x + 110, 350], '11/64 in', [x, 336]) +
    dimension([x + 110, 556], [x + 173, 556], '18 SWG', [x + 142, 606]);
  const labels: Record<Shown, string> = {
    all: '',
    copper: large(260),
    blue: large(640),
    small:
      dimension([910, 350], [1070, 350], '1/8 in', [990, 336]) +
      dimension([1070, 500], [1117, 500], '20 SWG', [1094, 550]),
  };
  return sheet(rings + labels[shown]);
}

function tools(): string {
  const view: View = { turnX: 0, turnY: 0, scale: 30, x: 120, y: 210 };
  const tie: View = { turnX: 0.5, turnY: 0, scale: 46, x: 800, y: 590 };
  return sheet(
    drawTubes(clasp(2, 9), view) +
      drawTubes(twistTie(0), tie) +
      pliers(820, 270, -12, 1.15) +
      pliers(1060, 270, 12, 1.15) +
      glasses(270, 500),
  );
}

/** A plain chain of two pairs: what a pair is, and where its eye is. */
function pairs(eye: boolean): string {
  const view: View = { turnX: 0.75, turnY: 0.3, scale: 56, x: 520, y: 372 };
  const first = BOTH.map((which) =>
    tube({ centre: [0, which ? 0.52 : -0.52, 0], normal: [0, 1, 0] }, METALS.copper),
  );
  const second = BOTH.map((which) =>
    tube({ centre: [3.3, 0, which ? 0.52 : -0.52], normal: [0, 0, 1] }, METALS.blue),
  );
  if (!eye) return sheet(drawTubes(first, { ...view, x: 640 }));
  const mark =
    '<ellipse cx="745" cy="356" rx="58" ry="46" fill="#dcece6" fill-opacity="0.85" stroke="#1d675a" stroke-width="6"/>' +
    '<g stroke="#1d675a" stroke-width="7"><path d="M1010 200L806 322"/><path d="M842 320L804 324L822 290"/></g>';
  return sheet(drawTubes([...first, ...second], view) + mark);
}

/** Every large ring of the medium size, laid out and counted in elevens: closed above, open below. */
function prepare(): string {
  const ring = (x: number, y: number, metal: Metal, gap: number): string =>
    drawTubes([{ line: circle([0, 0, 0], [0, 0, 1], 2.29, gap, 22, Math.PI / 2), radius: 0.5, metal }], {
      turnX: 0,
      turnY: 0,
      scale: 8,
      x,
      y,
    });
  const rows = (count: number, across: number, x: number, y: number, metal: Metal, gap: number) =>
    Array.from({ length: count }, (_, k) =>
      ring(x + (k % across) * 50, y + Math.floor(k / across) * 52, metal, gap),
    ).join('');
  return sheet(
    rows(44, 11, 100, 110, METALS.blue, 0) +
      rows(2, 2, 100, 400, METALS.copper, 0) +
      rows(88, 11, 690, 110, METALS.copper, 0.75) +
      '<path d="M640 80V640" stroke="#ddd3c2" stroke-width="3"/>',
  );
}

function twistOpen(moved: number): string {
  const apart = 0.9 * Math.sin(Math.PI * Math.min(1, moved * 1.05));
  const line = circle([0, 0, 0], [0, 0, 1], 2.29, 0.05, 96, Math.PI / 2).map(
    ([x, y, z], k): Point => [x, y, z + apart * (k / 48 - 1)],
  );
  const view: View = { turnX: 0.55, turnY: 0.5, scale: 78, x: 640, y: 400 };
  return sheet(
    drawTubes([{ line, radius: 0.5, metal: METALS.copper }], view) +
      pliers(330, 250, 118, 1.1) +
      pliers(950, 250, -118, 1.1),
  );
}

function measured(): string {
  const pxPerMm = 13;
  const scale = (73 * pxPerMm) / (10 * PITCH);
  const view: View = { turnX: 0.75, turnY: 0, scale, x: 150 - START_X * scale + 2.2 * scale, y: 300 };
  return sheet(
    drawTubes(knots(10), view) + ruler(150 + 2.2 * scale - 2.75 * scale + 2.75 * scale, 430, 80, pxPerMm),
  );
}

/** Both ends of the chain, facing each other: the last pair at the left, the first pair at the right. */
function ends(added: readonly Tube[], held: readonly Tube[] = []): string {
  const left = knots(2).map((part) => moveX(part, -(2.985 + PITCH) - 2.75 - 1.1));
  const right = [...knots(2), ...held].map((part) => moveX(part, -START_X + 2.75 + 8.4));
  return sheet(drawTubes([...left, ...right, ...added], { ...CHAIN, scale: 34, x: 500, y: 372, turnY: 0 }));
}

const moveX = (part: Tube, by: number): Tube => ({
  ...part,
  line: part.line.map(([x, y, z]): Point => [x + by, y, z]),
});

function untied(moved: number): string {
  const leaving = handle().map((part) => ({ ...moveX(part, -6 * late(moved)), opacity: 1 - late(moved) }));
  return ends([], leaving);
}

const smallRing = (x: number, y: number, gap: number): Tube => ({
  line: circle([x, y, 0], [0, 0.6, 1], 1.68, gap, 48, 0.4),
  radius: 0.375,
  metal: METALS.copper,
});

function claspOn(moved: number): string {
  const still = 1 - late(moved, 0.05, 0.55);
  const gap = 0.9 * (1 - late(moved, 0.6, 0.85));
  const added = [
    smallRing(-0.2, 3.6 * still, gap),
    ...clasp(1.75, 8.6).map((part) => liftY(part, 3 * still)),
  ];
  return ends(added);
}

const liftY = (part: Tube, by: number): Tube => ({
  ...part,
  line: part.line.map(([x, y, z]): Point => [x, y + by, z]),
});

/** The finished bracelet: the straight chain bent round a wrist that is not there. */
function bracelet(): string {
  const count = 21;
  const around = count * PITCH + 8;
  const radius = around / (2 * Math.PI);
  const bend = ([x, y, z]: Point): Point => {
    const angle = (x / around) * 2 * Math.PI + Math.PI * 0.62;
    return [Math.cos(angle) * (radius + z), y, -Math.sin(angle) * (radius + z)];
  };
  const bent = (part: Tube): Tube => ({ ...part, line: part.line.map(bend) });
  const end = 2.985 + (count - 1) * PITCH + CORE_RADIUS;
  const tubes = [...knots(count), ...clasp(end, 6.4)].map(bent);
  return sheet(drawTubes(tubes, { turnX: 0.62, turnY: 0, scale: 17, x: 640, y: 372 }));
}

/** The sheet that everything is drawn on: warm paper with the bench's dots. */
function sheet(body: string): string {
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}" fill="none">` +
    '<defs><pattern id="dots" width="40" height="40" patternUnits="userSpaceOnUse"><circle cx="20" cy="20" r="1.6" fill="#ddd3c2"/></pattern></defs>' +
    `<rect width="${WIDTH}" height="${HEIGHT}" fill="#f8f4ec"/><rect width="${WIDTH}" height="${HEIGHT}" fill="url(#dots)"/>` +
    `<rect x="14" y="14" width="${WIDTH - 28}" height="${HEIGHT - 28}" rx="10" stroke="#ddd3c2" stroke-width="3"/>${body}</svg>`
  );
}
