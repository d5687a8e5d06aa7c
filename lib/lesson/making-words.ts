/** Rings and materials as a pupil reads them in a list: every size with its system. */
import { metalNameOf } from '#lib/rings/metals.ts';
import { formatSize } from '#lib/rings/parse-size.ts';
import { sizesOf } from '#lib/rings/ring.ts';
import type { Content } from './content.ts';

type Kind = Content['ringKinds'][number];

/** `3.5`: to one place, as the trade compares it. */
export const formatAspectRatio = (kind: Kind): string => sizesOf(kind).aspectRatio.toFixed(1);

/** `inner diameter 1/4 in (6.35 mm), wire 18 SWG (1.2192 mm), aspect ratio 5.2, copper, deep blue`. */
export function ringFacts(kind: Kind): string {
  const metal = metalNameOf(kind);
  const measured = kind.measuredInnerMm === null ? '' : `, measured ${kind.measuredInnerMm} mm`;
  const colour = kind.colour.trim();
  return [
    `inner diameter ${formatSize(kind.innerDiameter)}${measured}`,
    `wire ${formatSize(kind.wire)}`,
    `aspect ratio ${formatAspectRatio(kind)}`,
    metal,
    colour === metal ? '' : colour,
  ]
    .filter((fact) => fact !== '')
    .join(', ');
}

/** A quantity in thousandths, without needless noughts: 2500 is `2.5`. */
export const formatMilli = (milli: number): string => String(milli / 1000);

const PLURALS = /^(piece|pair|bead|knot|drop|sheet|strip|stick|roll)$/i;

/** `1 piece`, `2 pieces`, `2.5 m`. */
export const quantityWord = (milli: number, unit: string): string =>
  `${formatMilli(milli)} ${milli !== 1000 && PLURALS.test(unit.trim()) ? `${unit.trim()}s` : unit.trim()}`;

/** How a stated quantity is counted: ``, `for each repeat`, `for each 100 mm`. */
export const perWord = (per: Content['materials'][number]['per']): string =>
  per === 'repeat' ? 'for each repeat' : per === 'length' ? 'for each 100 mm' : '';

/** Kept and used again rather than built in: no part of a kit. */
export const isTool = (item: Content['materials'][number]): boolean =>
  item.kind === 'tool' || item.kind === 'safety';

const hasRings = ({ ringKinds, repeat }: Content): boolean => ringKinds.length > 0 || repeat.length > 0;

/** What the name of a weave is called: a piece without rings has a technique. */
export const weaveWord = (content: Content): 'Weave' | 'Technique' =>
  hasRings(content) ? 'Weave' : 'Technique';

/** `20 min to prepare`, `90 min to weave`; what is not stated is left out. */
export function timeNeeded(content: Content): readonly string[] {
  const { prepareMinutes, makeMinutes } = content;
  return [
    ...(prepareMinutes === null ? [] : [`${prepareMinutes} min to prepare`]),
    ...(makeMinutes === null ? [] : [`${makeMinutes} min to ${hasRings(content) ? 'weave' : 'make'}`]),
  ];
}
