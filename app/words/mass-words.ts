/** Words for masses that packs are sold by. */
import { gramsOf, type MassFault } from '#lib/kit/parse-mass.ts';
import type { StatedMass } from '#lib/thing.ts';
import { figure } from './ring-words.ts';

/** `1 ozt (31.1035 g)`; a mass stated in grams is not said twice. */
export const statedMassWords = (mass: StatedMass): string =>
  /\bg$/.test(mass.stated) ? mass.stated : `${mass.stated} (${figure(gramsOf(mass), 4)} g)`;

export function massFaultWords(fault: MassFault): string {
  switch (fault.code) {
    case 'mass-empty':
      return 'Say the mass with its unit: 50 g, 1 ozt or 1/2 lb.';
    case 'mass-not-read':
      return `“${fault.text}” could not be read as a mass. Write it like 50 g, 1 ozt or 1/2 lb.`;
    case 'mass-needs-unit':
      return `“${fault.text}” can mean different masses. Which one is it?`;
    case 'mass-out-of-range':
      return 'This mass is nothing, or more than nine tonnes.';
  }
}
