/**
 * The temporal part of a Media Fragments URI (W3C Media Fragments URI 1.0,
 * section 4.2.1): `#t=62.5`, `#t=1:02,1:20`, `?t=npt:,80`,
 * `#t=smpte-25:0:00:03:12`. Times of day (`clock:`) say nothing here: a
 * recording does not tell when it was made.
 */

/** A stretch of a recording, ms; the end is null where it goes on to the recording's. */
export interface Fragment {
  readonly startMs: number;
  readonly endMs: number | null;
}

const SECONDS = String.raw`\d+(?:\.\d*)?`;
const CLOCK = String.raw`(?:\d+:)?[0-5]\d:[0-5]\d(?:\.\d*)?`;
const NPT = new RegExp(`^(?:${CLOCK}|${SECONDS}s?)$`);
const SMPTE = /^(\d+):([0-5]\d):([0-5]\d)(?::(\d{2})(?:\.(\d{2}))?)?$/;
/** Frames a second of a SMPTE time code; without a rate it is 30 (section 4.2.1.2). */
const FRAMES: Readonly<Record<string, number>> = {
  smpte: 30,
  'smpte-25': 25,
  'smpte-30': 30,
  'smpte-30-drop': 30_000 / 1001,
};

/**
 * Reads what stands behind `#` or `?` of an address, with or without that
 * sign. The last valid `t` counts; a start at or behind the end names the
 * whole recording, as does a text without a valid `t`: null.
 */
export function readFragment(written: string): Fragment | null {
  const bare = written.replace(/^[#?]/, '');
  let found: Fragment | null = null;
  for (const pair of bare.split('&')) {
    const equals = pair.indexOf('=');
    if (equals < 0 || decode(pair.slice(0, equals)) !== 't') continue;
    const value = decode(pair.slice(equals + 1));
    found = (value === null ? null : readSpan(value)) ?? found;
  }
  return found;
}

/** A span as a fragment in normal play time, seconds: `t=62.5,80`, `t=62.5` where it has no end. */
export const writeFragment = ({ startMs, endMs }: Fragment): string =>
  `t=${startMs / 1000}${endMs === null ? '' : `,${endMs / 1000}`}`;

/** Percent-decodes; null where the bytes are no UTF-8. */
function decode(text: string): string | null {
  try {
    return decodeURIComponent(text);
  } catch {
    return null;
  }
}

function readSpan(value: string): Fragment | null {
  const unit = /^(npt|smpte(?:-25|-30|-30-drop)?):/.exec(value)?.[1] ?? 'npt';
  const bare = value.startsWith(`${unit}:`) ? value.slice(unit.length + 1) : value;
  const [from = '', to, ...more] = bare.split(',');
  if (more.length > 0 || (from === '' && !to) || to === '') return null;
  const startMs = from === '' ? 0 : readTime(from, unit);
  const endMs = to === undefined ? null : readTime(to, unit);
  if (startMs === null || (to !== undefined && endMs === null)) return null;
  return endMs !== null && startMs >= endMs ? null : { startMs, endMs };
}

function readTime(text: string, unit: string): number | null {
  const seconds = unit === 'npt' ? readNpt(text) : readSmpte(text, unit);
  const ms = seconds === null ? Number.NaN : Math.round(seconds * 1000);
  return Number.isSafeInteger(ms) ? ms : null;
}

function readNpt(text: string): number | null {
  if (!NPT.test(text)) return null;
  const parts = text.replace(/s$/, '').split(':').map(Number);
  return parts.reduce((sum, part) => sum * 60 + part, 0);
}

function readSmpte(text: string, unit: string): number | null {
  const match = SMPTE.exec(text);
  const rate = FRAMES[unit];
  if (!match || rate === undefined) return null;
  const [hours, minutes, seconds, frames, parts] = match.slice(1).map((part) => Number(part ?? 0));
  const whole = ((hours ?? 0) * 60 + (minutes ?? 0)) * 60 + (seconds ?? 0);
  const part = (frames ?? 0) + (parts ?? 0) / 100;
  if (unit !== 'smpte-30-drop') return whole + part / rate;
  // Two numbers are left out at the start of each minute but every tenth, so that the count keeps time.
  const gone = Math.floor(whole / 60);
  return (whole * 30 + part - 2 * (gone - Math.floor(gone / 10))) / rate;
}
