/**
 * Numbers that are easily misheard and cost rings: thirteen and thirty, a
 * weave's `four in one` run together to 41, a point that was lost. Common
 * practice; only numbers beside a unit or a weave are looked at.
 */
import type { Cue } from '#lib/transcript/cue.ts';
import { sayNumber } from './number-words.ts';
import { readNumber, type SpokenNumber, type Token, tokensOf } from './spoken-number.ts';
import type { Reason, Suggestion } from './suggestion.ts';

/** A number beside a unit whose like-sounding one would stand there as well: to be listened to. */
export interface NumberToHear {
  readonly id: string;
  readonly cueId: string;
  readonly start: number;
  readonly end: number;
  /** With its unit: `thirty rings`. */
  readonly heard: string;
  /** The number that it may be: `thirteen`. */
  readonly otherwise: string;
}

export interface NumberTraps {
  readonly suggestions: readonly Suggestion[];
  readonly toHear: readonly NumberToHear[];
}

const GAUGE = new Set(['gauge', 'gauges', 'gage', 'ga', 'swg', 'awg']);
const UNIT = new Set(
  (
    'ring rings pair pairs repeat repeats row rows mm millimetre millimetres millimeter millimeters cm centimetre ' +
    'centimetres centimeter centimeters inch inches gram grams minute minutes per percent %'
  ).split(' '),
);
const MM = new Set(['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters']);
const WEAVES = new Set(
  'weave weaves pattern chain maille mail european persian japanese sheet byzantine'.split(' '),
);
const OF_A_RING = new Set('inside inner wire diameter internal thick id'.split(' '));
/** Gauges that wire for rings is sold in, widely taken. */
const GAUGES = { least: 4, most: 36 };
/** Widest ring and wire that a spoken whole number of millimetres is believed as. */
const WIDEST_MM = 20;

const TWINS: ReadonlyMap<number, number> = new Map(
  [13, 14, 15, 16, 17, 18, 19].flatMap((teen) => {
    const ty = (teen - 10) * 10;
    return [
      [teen, ty],
      [ty, teen],
    ] as const;
  }),
);

/** @param known numbers that the kit and the ring kinds state; what agrees with them needs no listening. */
export function findNumberTraps(
  cues: readonly Pick<Cue, 'id' | 'text'>[],
  known: ReadonlySet<number>,
): NumberTraps {
  const suggestions: Suggestion[] = [];
  const toHear: NumberToHear[] = [];
  for (const cue of cues) {
    const tokens = tokensOf(cue.text);
    for (let at = 0; at < tokens.length; ) {
      const number = readNumber(tokens, at);
      const trap = number && trapOf(tokens, at, number, known);
      if (trap?.reason === 'sounds alike') toHear.push(asToHear(cue, tokens, at, trap));
      else if (trap) suggestions.push(asSuggestion(cue, tokens, at, trap, trap.reason));
      at = Math.max(at + 1, trap?.to ?? number?.to ?? 0);
    }
  }
  return { suggestions, toHear };
}

type Spoken = Pick<Cue, 'id' | 'text'>;

/** In words where it was heard in words; names of weaves always in figures. */
const writtenLike = (heard: string, instead: string): string =>
  /\d/.test(heard) || instead.includes('-') ? instead : spoken(instead);

function asToHear(cue: Spoken, tokens: readonly Token[], from: number, trap: Trap): NumberToHear {
  const { start, end } = spanOf(tokens, from, trap.to);
  const heard = cue.text.slice(start, tokens[trap.to]?.end ?? end);
  return {
    id: `${cue.id} ${start} ${heard}`,
    cueId: cue.id,
    start,
    end,
    heard,
    otherwise: writtenLike(cue.text.slice(start, end), trap.instead),
  };
}

function asSuggestion(
  cue: Spoken,
  tokens: readonly Token[],
  from: number,
  trap: Trap,
  reason: Reason,
): Suggestion {
  const { start, end } = spanOf(tokens, from, trap.to);
  const heard = cue.text.slice(start, end);
  const instead = writtenLike(heard, trap.instead);
  return {
    id: `${cue.id} ${start} ${heard} ${instead}`,
    heard,
    instead,
    term: instead,
    reason,
    distance: 0,
    parts: [{ cueId: cue.id, start, end, instead }],
  };
}

interface Trap {
  readonly reason: Reason | 'sounds alike';
  /** In figures. */
  readonly instead: string;
  readonly to: number;
}

const spoken = (figures: string): string => {
  const [wholes = '0', digits] = figures.split('.');
  return digits === undefined
    ? sayNumber(Number(wholes))
    : `${sayNumber(Number(wholes))} point ${[...digits].map((digit) => sayNumber(Number(digit))).join(' ')}`;
};

const spanOf = (tokens: readonly Token[], from: number, to: number) => ({
  start: tokens[from]?.start ?? 0,
  end: tokens[to - 1]?.end ?? 0,
});

function trapOf(
  tokens: readonly Token[],
  at: number,
  number: SpokenNumber,
  known: ReadonlySet<number>,
): Trap | null {
  const next = tokens[number.to]?.word ?? '';
  const near = (set: ReadonlySet<string>, reach: number): boolean =>
    tokens.slice(Math.max(0, at - reach), number.to + reach).some(({ word }) => set.has(word));
  const { value, to } = number;
  if (number.kind !== 'whole') return null;
  const links = linksOf(tokens, at, number);
  if (links && near(WEAVES, 4)) return { reason: 'links run together', ...links };
  const twin = TWINS.get(value);
  if (GAUGE.has(next)) {
    if (twin !== undefined && (value < GAUGES.least || value > GAUGES.most))
      return { reason: 'no such gauge', instead: String(twin), to };
    if (twin === undefined || twin > GAUGES.most) return null;
    return twinTrap(value, twin, to, known);
  }
  if (
    MM.has(next) &&
    value > WIDEST_MM &&
    value < 100 &&
    value % 10 !== 0 &&
    near(OF_A_RING, 5) &&
    !known.has(value)
  )
    return { reason: 'point lost', instead: `${Math.floor(value / 10)}.${value % 10}`, to };
  return UNIT.has(next) && twin !== undefined ? twinTrap(value, twin, to, known) : null;
}

function twinTrap(value: number, twin: number, to: number, known: ReadonlySet<number>): Trap | null {
  if (known.has(value)) return null;
  return { reason: known.has(twin) ? 'kit says otherwise' : 'sounds alike', instead: String(twin), to };
}

/** `41` and `forty one` as `4-in-1`, `two to` as `2-2`. */
function linksOf(
  tokens: readonly Token[],
  at: number,
  { value, to }: SpokenNumber,
): { readonly instead: string; readonly to: number } | null {
  if ([21, 31, 41, 61, 81].includes(value)) return { instead: `${Math.floor(value / 10)}-in-1`, to };
  if (value === 122) return { instead: '12-in-2', to };
  const next = tokens[to]?.word ?? '';
  const before = tokens[at - 1]?.word ?? '';
  if (before === 'in') return null;
  if (value === 2 && ['to', 'too', 'two', '2'].includes(next)) return { instead: '2-2', to: to + 1 };
  if (value === 1 && ['one', '1', 'won'].includes(next)) return { instead: '1-1', to: to + 1 };
  return null;
}
