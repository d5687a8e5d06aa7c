/** How wire looks: five tones from one colour, as of a round bar under a lamp at the upper left. */

import { unlikenessInGrey } from '#lib/rings/colour-likeness.ts';

export interface Tones {
  /** Edge lines. */
  readonly edge: string;
  readonly shade: string;
  readonly body: string;
  /** Round the brightest line. */
  readonly gleam: string;
  readonly glint: string;
}

type Rgb = readonly [number, number, number];

const parse = (code: string): Rgb => [
  Number.parseInt(code.slice(1, 3), 16),
  Number.parseInt(code.slice(3, 5), 16),
  Number.parseInt(code.slice(5, 7), 16),
];

const write = (rgb: Rgb): string =>
  `#${rgb
    .map((part) =>
      Math.round(Math.max(0, Math.min(255, part)))
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`;

const mixed = (a: Rgb, b: Rgb, part: number): Rgb => [
  a[0] + (b[0] - a[0]) * part,
  a[1] + (b[1] - a[1]) * part,
  a[2] + (b[2] - a[2]) * part,
];

/** Tones of wire whose colour is given as `#rrggbb`. */
export function tonesOf(colour: string): Tones {
  const rgb = parse(colour);
  const warm: Rgb = [255, 250, 240];
  return {
    edge: write(mixed(mixed(rgb, [20, 16, 12], 0.72), rgb, 0.05)),
    shade: write(mixed(rgb, [24, 18, 14], 0.44)),
    body: write(mixed(rgb, warm, 0.06)),
    gleam: write(mixed(rgb, warm, 0.3)),
    glint: write(mixed(rgb, warm, 0.8)),
  };
}

/** The tone of a line along a wire: dark, and bright on a dark wire, where its own outline would hardly show. */
export const lineTone = ({ body, edge, glint }: Tones): string =>
  unlikenessInGrey(body, edge) < TOO_DARK ? glint : edge;

/** Between black and white, in lightness. */
const TOO_DARK = 0.17;
