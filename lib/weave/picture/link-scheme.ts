/**
 * The flat scheme of a step, for pieces whose shape in space is not known:
 * rings as numbered circles in their rows, a line for every passing, its end
 * saying from which side.
 */
import type { Woven } from '../walk.ts';
import type { WeavePicture } from './draw-piece.ts';
import { framePicture } from './frame-picture.ts';
import { type KindLooks, stepWords } from './say-step.ts';

const ACROSS = 44;
const DOWN = 62;
const ROUND = 15;
const INK = '#16130e';
const PAPER = '#fffdf8';

/** The roles of rings as in the drawn pictures: number on black, in a box, dotted outline. */
const LOOKS = {
  new: { inside: INK, number: PAPER, outline: 'stroke-width="3"' },
  carried: { inside: PAPER, number: INK, outline: 'stroke-width="3" stroke-dasharray="5 3"' },
  entered: {
    inside: PAPER,
    number: INK,
    outline: 'stroke-width="3" stroke-dasharray="0.1 5" stroke-linecap="round"',
  },
  plain: { inside: PAPER, number: INK, outline: 'stroke-width="1.2"' },
} as const;

/** The scheme of a piece once a turn is done; null where the turn adds nothing. */
export function drawScheme(woven: Woven, turn: number, kinds: KindLooks): WeavePicture | null {
  const made = woven.turns[turn];
  if (!made || (made.opened === null && made.carried.length === 0)) return null;
  const part = new Set([...made.passed, ...made.carried, made.opened].filter((ring) => ring !== null));
  const there = woven.rings.filter((ring) => ring.turn <= turn);
  const joined = woven.links.filter(
    (link) => link.turn <= turn && (part.has(link.by) || part.has(link.through)),
  );
  // What takes part, and what that hangs on: more would be small, and lines would cross.
  const near = new Set([...part, ...joined.flatMap(({ by, through }) => [by, through])]);
  const shown = there.filter(({ index }) => near.has(index));
  const rows = [...new Set(shown.map(({ row }) => row))];
  const places = new Map<number, readonly [number, number]>();
  const filled = rows.map(() => 0);
  for (const { index, row } of shown) {
    const line = rows.indexOf(row);
    places.set(index, [(filled[line] ?? 0) * ACROSS + (line % 2) * (ACROSS / 2), line * DOWN]);
    filled[line] = (filled[line] ?? 0) + 1;
  }
  // How far bows rise over the uppermost row: half of the way to where they are drawn towards, and their marks.
  let rise = ROUND + 6;
  const lines = woven.links
    .filter((link) => link.turn <= turn)
    .map(({ by, through, from, turn: at }) => {
      const [a, b] = [places.get(by), places.get(through)];
      if (!a || !b) return '';
      // Rings of one row are joined by a bow, so that lines do not run through circles.
      const bow = a[1] === b[1] ? Math.min(28, 9 + Math.abs(a[0] - b[0]) / 4) : 0;
      if (bow > 0 && a[1] === 0) rise = Math.max(rise, bow + ROUND / 2 + 6);
      const [mx, my] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2 - 2 * bow - (bow > 0 ? ROUND : 0)];
      const isNew = at === turn;
      const path = `<path d="M${a[0]} ${a[1]}Q${mx} ${my} ${b[0]} ${b[1]}" fill="none" stroke="${isNew ? INK : '#a59c8c'}" stroke-width="${isNew ? 2.4 : 1.2}"/>`;
      return isNew && from !== null ? path + sideMark(a, [mx, my], b, from) : path;
    });
  const circles = shown.map(({ index, ringKind }) => {
    const [x, y] = places.get(index) ?? [0, 0];
    const isNew = index === made.opened || (made.opened === null && made.carried.includes(index));
    const role = isNew
      ? 'new'
      : made.carried.includes(index)
        ? 'carried'
        : part.has(index)
          ? 'entered'
          : 'plain';
    const { inside, number, outline } = LOOKS[role];
    const frame =
      role === 'carried'
        ? `<path d="M${x - 9} ${y - 8}h18v16h-18z" fill="none" stroke="${INK}" stroke-width="1.4"/>`
        : '';
    return `<circle cx="${x}" cy="${y}" r="${ROUND}" fill="${inside}" stroke="${kinds.get(ringKind)?.colour ?? '#857a68'}" stroke-width="6"/><circle cx="${x}" cy="${y}" r="${ROUND + 3}" fill="none" stroke="${INK}" ${outline}/>${frame}<text x="${x}" y="${y + 4}" font-size="11" font-weight="700" font-family="sans-serif" text-anchor="middle" fill="${number}">${index + 1}</text>`;
  });
  const all = [...places.values()];
  const box = [
    Math.min(...all.map(([x]) => x)) - ROUND - 6,
    -rise,
    Math.max(...all.map(([x]) => x)) + ROUND + 6,
    Math.max(...all.map(([, y]) => y)) + ROUND + 6,
  ] as const;
  const text = stepWords({ woven, turn: made, kinds });
  const svg = framePicture(
    { elements: [lines.join(''), circles.join('')], box },
    { title: 'Scheme of this step', description: text },
  );
  return { svg, text };
}

/** Near the ring that is entered: a dot where the wire comes from the back, a cross from the front. */
function sideMark(
  a: readonly [number, number],
  m: readonly [number, number],
  b: readonly [number, number],
  from: 'front' | 'back',
): string {
  const t = 0.68;
  const at = ([0, 1] as const).map(
    (axis) => Math.round(((1 - t) ** 2 * a[axis] + 2 * t * (1 - t) * m[axis] + t * t * b[axis]) * 10) / 10,
  );
  const [x = 0, y = 0] = at;
  const disc = `<circle cx="${x}" cy="${y}" r="5" fill="${PAPER}" stroke="${INK}" stroke-width="1.4"/>`;
  return from === 'back'
    ? `${disc}<circle cx="${x}" cy="${y}" r="1.8" fill="${INK}"/>`
    : `${disc}<path d="M${x - 3.2} ${y - 3.2}l6.4 6.4m0-6.4l-6.4 6.4" stroke="${INK}" stroke-width="1.4"/>`;
}
