/**
 * Aspect ratios that weaves are usually made with: common practice, from
 * memory, depending on how stiff the metal is. Only bands that are widely
 * agreed on; for any other weave nothing is said. Outside the band is a
 * warning, never an error.
 */
import type { UsualBand } from '#lib/rings/fit.ts';

interface NamedBand {
  readonly weave: string;
  readonly names: RegExp;
  readonly band: UsualBand;
}

const BANDS: readonly NamedBand[] = [
  { weave: 'byzantine', names: /\bbyzantine\b/i, band: { tight: 3.2, from: 3.5, to: 4 } },
  {
    weave: 'European 4-in-1',
    names: /\beuropean 4[- ](in[- ])?1\b/i,
    band: { tight: 2.9, from: 3.5, to: 5 },
  },
  {
    weave: 'Jens Pind linkage 3',
    names: /\b(jens pind|jpl[- ]?3)\b/i,
    band: { tight: 2.75, from: 2.85, to: 3.05 },
  },
  { weave: 'spiral 4-in-1', names: /\bspiral\b/i, band: { tight: 3.3, from: 3.7, to: 5 } },
  {
    weave: 'triple chain 3-3',
    names: /\b3-3\b|\b3[- ]in[- ]3\b|\btriple chain\b/i,
    band: { tight: 3.6, from: 4, to: 6 },
  },
  {
    weave: 'double chain 2-2',
    names: /\b2-2\b|\b2[- ]in[- ]2\b|\bdouble chain\b/i,
    band: { tight: 2.8, from: 3, to: 5 },
  },
  {
    weave: 'single chain 1-1',
    names: /\b1-1\b|\bsingle chain\b|\bcable chain\b/i,
    band: { tight: 2, from: 2.5, to: 6 },
  },
];

/** The usual band of a weave by its name or other names; null where nothing is agreed on, or two bands are named. */
export function usualBandOf(
  weave: string,
  otherNames = '',
): { readonly weave: string; readonly band: UsualBand } | null {
  const named = BANDS.filter(({ names }) => names.test(weave));
  const found = named.length > 0 ? named : BANDS.filter(({ names }) => names.test(otherNames));
  const [only, second] = found;
  return only && !second ? { weave: only.weave, band: only.band } : null;
}
