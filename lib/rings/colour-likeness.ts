/**
 * How unlike two picture colours are to eyes: to most, and to those that see
 * little difference between red and green, or between blue and yellow. Only pictures depend on it; words always say the colour too.
 */

type Triple = readonly [number, number, number];

/** `#rrggbb` as linear light, 0 to 1 (IEC 61966-2-1). */
const linear = (code: string): Triple => {
  const part = (at: number): number => {
    const value = Number.parseInt(code.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  };
  return [part(1), part(3), part(5)];
};

const times = (rows: readonly [Triple, Triple, Triple], [r, g, b]: Triple): Triple => {
  const of = (row: Triple): number => row[0] * r + row[1] * g + row[2] * b;
  return [of(rows[0]), of(rows[1]), of(rows[2])];
};

/** Oklab of linear light: B. Ottosson, A perceptual color space for image processing (2020); also CSS Color 4. */
export function oklabOf(code: string): Triple {
  return oklab(linear(code));
}

function oklab(light: Triple): Triple {
  const [l, m, s] = times(
    [
      [0.4122214708, 0.5363325363, 0.0514459929],
      [0.2119034982, 0.6806995451, 0.1073969566],
      [0.0883024619, 0.2817188376, 0.6299787005],
    ],
    light,
  );
  return times(
    [
      [0.2104542553, 0.793617785, -0.0040720468],
      [1.9779984951, -2.428592205, 0.4505937099],
      [0.0259040371, 0.7827717662, -0.808675766],
    ],
    [Math.cbrt(l), Math.cbrt(m), Math.cbrt(s)],
  );
}

/**
 * Linear light as the eyes named get it; figures from memory. Two kinds of
 * cone: Viénot, Brettel and Mollon 1999; without those for short waves, where
 * that way of reckoning does not hold: Machado, Oliveira and Fernandes 2009,
 * severity 1.0.
 */
const EYES: readonly (readonly [Triple, Triple, Triple])[] = [
  // All three cones.
  [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  // Without the cones for long waves.
  [
    [0.11238, 0.88762, 0],
    [0.11238, 0.88762, 0],
    [0.00401, -0.00401, 1],
  ],
  // Without those for middle waves.
  [
    [0.29275, 0.70725, 0],
    [0.29275, 0.70725, 0],
    [-0.02234, 0.02234, 1],
  ],
  // Without those for short waves.
  [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
];

/** Distance in Oklab to the eyes that see the least of it; 0 for the same colour, 1 from black to white. */
export function unlikeness(one: string, other: string): number {
  const positive = (light: Triple): Triple => [
    Math.max(0, light[0]),
    Math.max(0, light[1]),
    Math.max(0, light[2]),
  ];
  return Math.min(
    ...EYES.map((eyes) => {
      const [a, b] = [one, other].map((code) => oklab(positive(times(eyes, linear(code)))));
      return a && b ? Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) : 0;
    }),
  );
}

/** As `unlikeness`, on paper that is printed without colour: by relative luminance, as WCAG 2.2 defines it. */
export function unlikenessInGrey(one: string, other: string): number {
  const [a = 0, b = 0] = [one, other].map((code) => {
    const [r, g, b] = linear(code);
    return Math.cbrt(0.2126 * r + 0.7152 * g + 0.0722 * b);
  });
  return Math.abs(a - b);
}

/** Below this two colours in one picture are taken for each other. By looking at pictures of ours; no standard says it. */
export const ALIKE_BELOW = 0.06;
