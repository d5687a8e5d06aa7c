/** A drawing framed as one SVG file: its size, its name and its description for who does not see it. */

import { short } from './curve.ts';
import type { Drawn } from './draw-rings.ts';

const MARGIN = 14;

export const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

/** `elements` are painted over the drawing. No styles and no scripts, so any page may carry it. */
export function framePicture(
  { elements, box }: Pick<Drawn, 'elements' | 'box'>,
  words: { readonly title: string; readonly description: string },
  over: readonly string[] = [],
): string {
  const [left, top, right, bottom] = box;
  const width = right - left + 2 * MARGIN;
  const height = bottom - top + 2 * MARGIN;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="${short(left - MARGIN)} ${short(top - MARGIN)} ${short(width)} ${short(height)}" width="${short(width)}" height="${short(height)}">`,
    `<title>${escaped(words.title)}</title><desc>${escaped(words.description)}</desc>`,
    ...elements,
    ...over,
    '</svg>',
  ].join('');
}

const BETWEEN = 34;
const INK = '#16130e';

/** Two drawings as one, the second one below an arrow: first this, then that. Upright, so that both are large in a narrow column. */
export function oneAboveOther(
  first: Pick<Drawn, 'elements' | 'box'>,
  then: Pick<Drawn, 'elements' | 'box'>,
): Pick<Drawn, 'elements' | 'box'> {
  const [left, top, right, bottom] = first.box;
  const [thenLeft, thenTop, thenRight, thenBottom] = then.box;
  const down = bottom + BETWEEN - thenTop;
  const middle = (left + right) / 2;
  const across = middle - (thenLeft + thenRight) / 2;
  const at = bottom + 6;
  const to = bottom + BETWEEN - 6;
  const arrow = `<path d="M${short(middle)} ${short(at)}L${short(middle)} ${short(to - 8)}" stroke="${INK}" stroke-width="3"/><path d="M${short(middle)} ${short(to)}l-6 -10h12z" fill="${INK}"/>`;
  return {
    elements: [
      ...first.elements,
      arrow,
      `<g transform="translate(${short(across)} ${short(down)})">${then.elements.join('')}</g>`,
    ],
    box: [Math.min(left, thenLeft + across), top, Math.max(right, thenRight + across), thenBottom + down],
  };
}
