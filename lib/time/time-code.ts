/** Time codes as people read and write them. */

const two = (n: number): string => String(n).padStart(2, '0');

/**
 * `0:07`, `12:03`, `1:02:03`: hours only where there are any, whole seconds,
 * rounded down. Used in lists and in description text.
 */
export function formatTimeCode(ms: number): string {
  const seconds = Math.floor(ms / 1000);
  const h = Math.floor(seconds / 3600);
  const m = Math.floor(seconds / 60) % 60;
  const s = seconds % 60;
  return h > 0 ? `${h}:${two(m)}:${two(s)}` : `${m}:${two(s)}`;
}

/** `12:03.250` or `1:02:03.250`: to the millisecond, for editing. */
export function formatPreciseTimeCode(ms: number): string {
  return `${formatTimeCode(ms)}.${String(ms % 1000).padStart(3, '0')}`;
}

/**
 * Reads `62`, `1:02`, `0:01:02`, `01:02.345`, `01:02,345`; a fraction of one
 * to three digits is tenths, hundredths or milliseconds. Minutes and seconds
 * behind a colon must be below 60.
 * @returns milliseconds, or null where the text is no time code.
 */
export function parseTimeCode(text: string): number | null {
  const match = /^(?:(?:(\d{1,3}):)?(\d{1,3}):)?(\d{1,6})(?:[.,](\d{1,3}))?$/.exec(text.trim());
  if (!match) return null;
  const [, hours, minutes, seconds, fraction] = match;
  const h = Number(hours ?? 0);
  const m = Number(minutes ?? 0);
  const s = Number(seconds);
  if (hours !== undefined && m > 59) return null;
  if (minutes !== undefined && s > 59) return null;
  return ((h * 60 + m) * 60 + s) * 1000 + Number((fraction ?? '').padEnd(3, '0'));
}
