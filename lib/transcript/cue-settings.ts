/**
 * WebVTT cue settings: where a cue stands on the picture. Reading follows
 * "parse the WebVTT cue settings" (W3C WebVTT, section 6.4): what cannot be
 * read is passed over, and named here.
 */

export interface CueSettings {
  readonly vertical: '' | 'rl' | 'lr';
  /** Line number, or per cent of the picture where `snapToLines` is false. */
  readonly line: number | 'auto';
  readonly snapToLines: boolean;
  readonly lineAlign: 'start' | 'center' | 'end';
  /** Per cent of the picture. */
  readonly position: number | 'auto';
  readonly positionAlign: 'auto' | 'line-left' | 'center' | 'line-right';
  /** Per cent of the picture. */
  readonly size: number;
  readonly align: 'start' | 'center' | 'end' | 'left' | 'right';
  /** Id of a region, or empty. */
  readonly region: string;
}

export const DEFAULT_SETTINGS: CueSettings = {
  vertical: '',
  line: 'auto',
  snapToLines: true,
  lineAlign: 'start',
  position: 'auto',
  positionAlign: 'auto',
  size: 100,
  align: 'center',
  region: '',
};

interface ReadSettings {
  readonly settings: CueSettings;
  /** The settings that meant something, as written. */
  readonly understood: readonly string[];
  /** Those that meant nothing, as written. */
  readonly passedOver: readonly string[];
}

/** Reads the settings behind a cue's times; never fails. */
export function readCueSettings(text: string): ReadSettings {
  let settings = DEFAULT_SETTINGS;
  const understood: string[] = [];
  const passedOver: string[] = [];
  for (const written of text.split(/[ \t\n\f\r]+/)) {
    if (written === '') continue;
    const pair = readPair(written);
    const said = pair && readSetting(pair[0], pair[1]);
    if (said) {
      settings = { ...settings, ...said };
      understood.push(written);
    } else {
      passedOver.push(written);
    }
  }
  // A region places its cues itself; a cue that also places itself leaves it.
  const places = settings.line !== 'auto' || settings.size !== 100 || settings.vertical !== '';
  if (places && settings.region !== '') settings = { ...settings, region: '' };
  return { settings, understood, passedOver };
}

/** The settings that mean something in any file: a region is described in one file alone. */
export const portableSettings = (written: string): string =>
  readCueSettings(written)
    .understood.filter((setting) => !setting.startsWith('region:'))
    .join(' ');

/** `name:value`; null where either is empty. Values may hold colons. */
export function readPair(written: string): readonly [string, string] | null {
  const colon = written.indexOf(':');
  if (colon <= 0 || colon === written.length - 1) return null;
  return [written.slice(0, colon), written.slice(colon + 1)];
}

/** `42%`, `42.5%`: 0 to 100; null where it is none. */
export function readPercentage(text: string): number | null {
  if (!/^\d+(?:\.\d+)?%$/.test(text)) return null;
  const value = Number(text.slice(0, -1));
  return value <= 100 ? value : null;
}

function readSetting(name: string, value: string): Partial<CueSettings> | null {
  switch (name) {
    case 'region':
      return { region: value };
    case 'vertical':
      return value === 'rl' || value === 'lr' ? { vertical: value } : null;
    case 'line':
      return readLine(value);
    case 'position':
      return readPosition(value);
    case 'size': {
      const size = readPercentage(value);
      return size === null ? null : { size };
    }
    case 'align':
      return isOneOf(value, ['start', 'center', 'end', 'left', 'right']) ? { align: value } : null;
    default:
      return null;
  }
}

function readLine(value: string): Partial<CueSettings> | null {
  const [where, align] = partAtComma(value);
  const percent = where.endsWith('%');
  const line = percent ? readPercentage(where) : readLineNumber(where);
  if (line === null) return null;
  const placed = { line, snapToLines: !percent };
  if (align === null) return placed;
  return isOneOf(align, ['start', 'center', 'end']) ? { ...placed, lineAlign: align } : null;
}

function readPosition(value: string): Partial<CueSettings> | null {
  const [where, align] = partAtComma(value);
  const position = readPercentage(where);
  if (position === null) return null;
  if (align === null) return { position };
  return isOneOf(align, ['line-left', 'center', 'line-right']) ? { position, positionAlign: align } : null;
}

/** A line number may be negative or broken; one too large for a number is none. */
function readLineNumber(text: string): number | null {
  if (!/^-?\d+(?:\.\d+)?$/.test(text)) return null;
  const value = Number(text);
  return Number.isFinite(value) ? value + 0 : null;
}

function partAtComma(value: string): readonly [string, string | null] {
  const comma = value.indexOf(',');
  return comma < 0 ? [value, null] : [value.slice(0, comma), value.slice(comma + 1)];
}

const isOneOf = <T extends string>(value: string, of: readonly T[]): value is T =>
  (of as readonly string[]).includes(value);
