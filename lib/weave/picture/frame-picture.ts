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
