/** TTML's times (W3C TTML 1, section 10.3): clock times and offsets, with frames and ticks. */

/** What a file says of its times. */
export interface TtmlClock {
  /** Frames a second, with the multiplier in it. */
  readonly frameRate: number;
  readonly tickRate: number;
}

const CLOCK = /^(\d{2,}):(\d{2}):(\d{2})(?:\.(\d+)|:(\d{2,})(?:\.\d+)?)?$/;
const OFFSET = /^(\d+(?:\.\d+)?)(h|m|s|ms|f|t)$/;

/** A time expression in seconds; null where it is none, or stands for a number too large to hold. */
export function readTtmlTime(written: string, { frameRate, tickRate }: TtmlClock): number | null {
  const text = written.trim();
  const clock = CLOCK.exec(text);
  if (clock) {
    const [, hours, minutes, seconds, fraction = '0', frames = '0'] = clock;
    if (Number(minutes) > 59 || Number(seconds) > 60) return null;
    const whole = (Number(hours) * 60 + Number(minutes)) * 60 + Number(seconds);
    return finite(whole + Number(`0.${fraction}`) + Number(frames) / frameRate);
  }
  const offset = OFFSET.exec(text);
  return offset ? finite(Number(offset[1]) * secondsIn(offset[2] ?? 's', frameRate, tickRate)) : null;
}

const finite = (seconds: number): number | null => (Number.isFinite(seconds) ? seconds : null);

function secondsIn(metric: string, frameRate: number, tickRate: number): number {
  switch (metric) {
    case 'h':
      return 3600;
    case 'm':
      return 60;
    case 'ms':
      return 0.001;
    case 'f':
      return 1 / frameRate;
    case 't':
      return 1 / tickRate;
    default:
      return 1;
  }
}

/**
 * The clock of a file by its parameters (W3C TTML 1, section 6.2): 30 frames
 * a second where none are named; a tick is a frame where frames are, else a second.
 * @param parameter the value of an attribute of the root, or null
 */
export function readTtmlClock(parameter: (name: string) => string | null): TtmlClock {
  const named = positive(parameter('frameRate'));
  const parts = (parameter('frameRateMultiplier') ?? '').trim().split(/[\s:]+/);
  const [over, under] = [positive(parts[0] ?? null) ?? 1, positive(parts[1] ?? null) ?? 1];
  const frameRate = ((named ?? 30) * over) / under;
  return { frameRate, tickRate: positive(parameter('tickRate')) ?? (named === null ? 1 : frameRate) };
}

function positive(text: string | null): number | null {
  const value = text !== null && /^\s*\d{1,9}\s*$/.test(text) ? Number(text) : 0;
  return value > 0 ? value : null;
}
