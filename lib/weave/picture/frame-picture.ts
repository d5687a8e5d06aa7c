/** A drawing framed as one SVG file: its size, its name and its description for who does not see it. */

import { short } from './curve.ts';
import type { Drawn } from './draw-rings.ts';

const MARGIN = 14;

const escaped = (text: string): string =>
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

const BETWEEN = 44;
const INK = '#16130e';

/** Two drawings as one, the second one after an arrow: first this, then that. */
export function sideBySide(
  first: Pick<Drawn, 'elements' | 'box'>,
  then: Pick<Drawn, 'elements' | 'box'>,
): Pick<Drawn, 'elements' | 'box'> {
  const [left, top, right, bottom] = first.box;
  const [thenLeft, thenTop, thenRight, thenBottom] = then.box;
  const across = right + BETWEEN - thenLeft;
  const middle = (top + bottom) / 2;
  const down = middle - (thenTop + thenBottom) / 2;
  const at = right + 8;
  const to = right + BETWEEN - 8;
  const arrow = `<path d="M${short(at)} ${short(middle)}L${short(to - 8)} ${short(middle)}" stroke="${INK}" stroke-width="3"/><path d="M${short(to)} ${short(middle)}l-10 -6v12z" fill="${INK}"/>`;
  return {
    elements: [
      ...first.elements,
      arrow,
      `<g transform="translate(${short(across)} ${short(down)})">${then.elements.join('')}</g>`,
    ],
    box: [left, Math.min(top, thenTop + down), thenRight + across, Math.max(bottom, thenBottom + down)],
  };
}
