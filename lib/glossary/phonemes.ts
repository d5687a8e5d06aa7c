/**
 * The sounds of English as small whole numbers, and what it costs to take one
 * for another: costs follow from how a sound is made (where in the mouth, in
 * what manner, voiced or not; how high and how far back for vowels), so that
 * `clasp` and `class` are near and `clasp` and `chain` are not. The signs are
 * those of ARPAbet, the alphabet of the CMU Pronouncing Dictionary. The
 * weights are our own.
 */

/** A run of sounds; each is an index into the tables below. */
export type Sounds = readonly number[];

type Manner = 'stop' | 'affricate' | 'fricative' | 'nasal' | 'liquid' | 'glide';

/** Sign, place (0 lips ... 6 throat), manner, voiced. */
const CONSONANTS: readonly (readonly [string, number, Manner, boolean])[] = [
  ['P', 0, 'stop', false],
  ['B', 0, 'stop', true],
  ['M', 0, 'nasal', true],
  ['F', 0.5, 'fricative', false],
  ['V', 0.5, 'fricative', true],
  ['W', 0, 'glide', true],
  ['TH', 1, 'fricative', false],
  ['DH', 1, 'fricative', true],
  ['T', 2, 'stop', false],
  ['D', 2, 'stop', true],
  ['N', 2, 'nasal', true],
  ['S', 2, 'fricative', false],
  ['Z', 2, 'fricative', true],
  ['L', 2, 'liquid', true],
  ['R', 2.5, 'liquid', true],
  ['SH', 3, 'fricative', false],
  ['ZH', 3, 'fricative', true],
  ['CH', 3, 'affricate', false],
  ['JH', 3, 'affricate', true],
  ['Y', 4, 'glide', true],
  ['K', 5, 'stop', false],
  ['G', 5, 'stop', true],
  ['NG', 5, 'nasal', true],
  ['HH', 6, 'fricative', false],
];

/** Sign, height (0 open ... 1 close) and place (0 front ... 1 back) where it begins and where it ends. */
const VOWELS: readonly (readonly [string, number, number, number, number])[] = [
  ['IY', 1, 0, 1, 0],
  ['IH', 0.8, 0.15, 0.8, 0.15],
  ['EY', 0.65, 0.05, 0.9, 0.1],
  ['EH', 0.45, 0.1, 0.45, 0.1],
  ['AE', 0.15, 0.15, 0.15, 0.15],
  ['AA', 0, 0.8, 0, 0.8],
  ['AO', 0.3, 0.95, 0.3, 0.95],
  ['AH', 0.4, 0.6, 0.4, 0.6],
  ['ER', 0.5, 0.5, 0.5, 0.5],
  ['OW', 0.55, 0.9, 0.85, 0.9],
  ['UH', 0.8, 0.8, 0.8, 0.8],
  ['UW', 1, 0.85, 1, 0.9],
  ['AY', 0.05, 0.5, 0.85, 0.15],
  ['AW', 0.05, 0.5, 0.8, 0.85],
  ['OY', 0.4, 0.95, 0.85, 0.15],
];

/** Vowels stand twice: unstressed (as written here), then stressed with a `1`. */
const SIGNS: readonly string[] = [
  ...CONSONANTS.map(([sign]) => sign),
  ...VOWELS.map(([sign]) => `${sign}0`),
  ...VOWELS.map(([sign]) => `${sign}1`),
];
export const SOUND_COUNT = SIGNS.length;
const FIRST_VOWEL = CONSONANTS.length;
const FIRST_STRESSED = FIRST_VOWEL + VOWELS.length;

const bySign = new Map(SIGNS.map((sign, index) => [sign, index]));
for (const [sign] of VOWELS) bySign.set(`${sign}2`, bySign.get(`${sign}1`) ?? 0);

/** Sounds of an ARPAbet text (`K L AE1 S P`); signs that it does not know are left out. */
export const soundsOf = (arpabet: string): Sounds =>
  arpabet.split(' ').flatMap((sign) => bySign.get(sign) ?? bySign.get(`${sign}1`) ?? []);

/** ARPAbet without stress, for people and tests. */
export const signsOf = (sounds: Sounds): string =>
  sounds.map((sound) => (SIGNS[sound] ?? '').replace(/\d$/, '')).join(' ');

export const isVowel = (sound: number): boolean => sound >= FIRST_VOWEL;

/** Consonants that are taken for each other most, as classes; Y and H are too weak to count. */
const CLASSES = ['P B', 'M N NG', 'F V TH DH', 'T D', 'S Z SH ZH CH JH', 'K G', 'L R W'].map((signs) =>
  signs.split(' '),
);
export const CONSONANT_CLASSES = CLASSES.length;
const CLASS_OF = Int8Array.from(SIGNS, (sign) => {
  const plain = sign.replace(/\d$/, '');
  // The vowel that is coloured by R is heard as one.
  return CLASSES.findIndex((signs) => signs.includes(plain === 'ER' ? 'R' : plain));
});

/** Class of a consonant, 0 to CONSONANT_CLASSES - 1; -1 for vowels and weak sounds. */
export const consonantClass = (sound: number): number => CLASS_OF[sound] ?? -1;

/** `P` before `B` is one closing of the lips: the second of two such stops is not heard between words. */
export const isSwallowed = (before: number | undefined, sound: number | undefined): boolean =>
  before !== undefined &&
  sound !== undefined &&
  STOPS.has(before) &&
  STOPS.has(sound) &&
  consonantClass(before) === consonantClass(sound);

const STOPS = new Set(CONSONANTS.flatMap(([, , manner], at) => (manner === 'stop' ? [at] : [])));

/** Pairs that recognisers and ears take for each other more readily than their making tells. */
const NEAR: Readonly<Record<string, number>> = {
  'T D': 0.15,
  'S Z': 0.15,
  'F TH': 0.2,
  'V DH': 0.25,
  'M N': 0.3,
  'N NG': 0.3,
  'CH SH': 0.25,
  'JH ZH': 0.15,
  'JH CH': 0.2,
  'V W': 0.4,
  'L R': 0.45,
  'L W': 0.4,
  'R W': 0.4,
  'SH S': 0.3,
  'ZH Z': 0.3,
  'JH Z': 0.4,
  'TH T': 0.4,
  'DH D': 0.3,
  'B V': 0.35,
};

function consonantCost(a: number, b: number): number {
  const [one, other] = [CONSONANTS[a], CONSONANTS[b]];
  if (!one || !other) return 1;
  const near = NEAR[`${one[0]} ${other[0]}`] ?? NEAR[`${other[0]} ${one[0]}`];
  if (near !== undefined) return near;
  const place = Math.min(0.5, 0.22 * Math.abs(one[1] - other[1]));
  const manner = one[2] === other[2] ? 0 : 0.45;
  const voice = one[3] === other[3] ? 0 : 0.2;
  return Math.min(1, place + manner + voice);
}

function vowelCost(a: number, b: number): number {
  const [one, other] = [VOWELS[a], VOWELS[b]];
  if (!one || !other) return 1;
  const begins = Math.hypot(one[1] - other[1], 0.8 * (one[2] - other[2]));
  const ends = Math.hypot(one[3] - other[3], 0.8 * (one[4] - other[4]));
  return Math.min(0.85, 0.12 + 0.6 * (begins * 0.6 + ends * 0.4));
}

function substitution(a: number, b: number): number {
  if (a === b) return 0;
  if (isVowel(a) !== isVowel(b)) return rBetween(a, b) ? 0.5 : 1.1;
  if (!isVowel(a)) return consonantCost(a, b);
  const [plainA, plainB] = [(a - FIRST_VOWEL) % VOWELS.length, (b - FIRST_VOWEL) % VOWELS.length];
  if (plainA === plainB) return 0.05;
  // What is not stressed is hardly heard.
  const stressed = (a >= FIRST_STRESSED ? 1 : 0) + (b >= FIRST_STRESSED ? 1 : 0);
  return vowelCost(plainA, plainB) * (stressed === 2 ? 1 : stressed === 1 ? 0.8 : 0.5);
}

/** R and the vowel coloured by it are the same movement. */
const rBetween = (a: number, b: number): boolean => {
  const signs = [SIGNS[a], SIGNS[b]].map((sign) => sign?.replace(/\d$/, ''));
  return signs.includes('R') && signs.includes('ER');
};

/** What it costs to leave a sound out, or to hear one too many: the weaker the sound, the less. */
function gap(sound: number): number {
  const sign = SIGNS[sound] ?? '';
  if (sign === 'AH0' || sign === 'IH0') return 0.35;
  if (isVowel(sound)) return sound >= FIRST_STRESSED ? 1 : 0.55;
  if (sign === 'T' || sign === 'D' || sign === 'HH' || sign === 'R') return 0.45;
  if (sign === 'Y' || sign === 'W') return 0.55;
  if (sign === 'N' || sign === 'L' || sign === 'S' || sign === 'Z') return 0.7;
  return 0.8;
}

/** `SUBSTITUTION[a * SOUND_COUNT + b]`: 0 for the same sound, up to 1.1. */
export const SUBSTITUTION: Float64Array = Float64Array.from({ length: SOUND_COUNT * SOUND_COUNT }, (_, at) =>
  substitution(Math.floor(at / SOUND_COUNT), at % SOUND_COUNT),
);

export const GAP: Float64Array = Float64Array.from({ length: SOUND_COUNT }, (_, sound) => gap(sound));

/** Cost of turning one run of sounds into another; 0 for equal runs. Symmetric. */
export function soundDistance(one: Sounds, other: Sounds): number {
  let row: Float64Array = new Float64Array(other.length + 1);
  other.forEach((sound, at) => {
    row[at + 1] = (row[at] ?? 0) + (GAP[sound] ?? 1);
  });
  for (const sound of one) {
    const next = new Float64Array(other.length + 1);
    next[0] = (row[0] ?? 0) + (GAP[sound] ?? 1);
    other.forEach((heard, at) => {
      next[at + 1] = Math.min(
        (row[at] ?? 0) + (SUBSTITUTION[sound * SOUND_COUNT + heard] ?? 1),
        (row[at + 1] ?? 0) + (GAP[sound] ?? 1),
        (next[at] ?? 0) + (GAP[heard] ?? 1),
      );
    });
    row = next;
  }
  return row[other.length] ?? 0;
}
