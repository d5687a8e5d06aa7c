/** WebVTT regions: "collect WebVTT region settings" (W3C WebVTT, section 6.2). */
import { readPair, readPercentage } from './cue-settings.ts';

export interface WebVttRegion {
  /** Line of the block's first word, from 1. */
  readonly line: number;
  readonly id: string;
  /** Per cent of the picture. */
  readonly width: number;
  readonly lines: number;
  /** Per cent of the region and of the picture: x, y. */
  readonly regionAnchor: readonly [number, number];
  readonly viewportAnchor: readonly [number, number];
  readonly scroll: '' | 'up';
}

const DEFAULT_REGION = {
  id: '',
  width: 100,
  lines: 3,
  regionAnchor: [0, 100],
  viewportAnchor: [0, 100],
  scroll: '',
} as const;

/** Reads the lines below `REGION`; what cannot be read keeps its default. */
export function readRegion(text: string, line: number): WebVttRegion {
  let region: WebVttRegion = { line, ...DEFAULT_REGION };
  for (const written of text.split(/[ \t\n\f\r]+/)) {
    const pair = readPair(written);
    if (pair) region = { ...region, ...readRegionSetting(pair[0], pair[1]) };
  }
  return region;
}

function readRegionSetting(name: string, value: string): Partial<WebVttRegion> {
  switch (name) {
    case 'id':
      return { id: value };
    case 'width': {
      const width = readPercentage(value);
      return width === null ? {} : { width };
    }
    case 'lines':
      return /^\d+$/.test(value) ? { lines: Number(value) } : {};
    case 'regionanchor': {
      const regionAnchor = readAnchor(value);
      return regionAnchor ? { regionAnchor } : {};
    }
    case 'viewportanchor': {
      const viewportAnchor = readAnchor(value);
      return viewportAnchor ? { viewportAnchor } : {};
    }
    case 'scroll':
      return value === 'up' ? { scroll: 'up' } : {};
    default:
      return {};
  }
}

function readAnchor(value: string): readonly [number, number] | null {
  const comma = value.indexOf(',');
  if (comma < 0) return null;
  const x = readPercentage(value.slice(0, comma));
  const y = readPercentage(value.slice(comma + 1));
  return x === null || y === null ? null : [x, y];
}
