/** Words for sizes, rings and what fits through what. */
import type { DecimalFault } from '#lib/kit/parse-decimal.ts';
import type { BandFinding, FitFault, UsualBand } from '#lib/rings/fit.ts';
import type { SizeFault, SizeOf } from '#lib/rings/parse-size.ts';
import type { RingMass } from '#lib/rings/ring.ts';

/** A number to so many decimals, without needless zeros. */
export const figure = (n: number, places: number): string => String(Number(n.toFixed(places)));

const EXAMPLE: Readonly<Record<SizeOf, string>> = {
  'inner diameter': '1/4 in or 6.35 mm',
  wire: '18 SWG, 18 AWG or 1.2 mm',
  length: '165 mm or 6 1/2 in',
};

export function sizeFaultWords(fault: SizeFault, of: SizeOf): string {
  switch (fault.code) {
    case 'size-empty':
      return `Say the ${of} with its system: ${EXAMPLE[of]}.`;
    case 'size-not-read':
      return `“${fault.text}” could not be read. Write it like ${EXAMPLE[of]}.`;
    case 'size-needs-system':
      return fault.choices.length === 1
        ? `Is “${fault.text}” meant as ${fault.choices[0]?.stated}?`
        : `“${fault.text}” means different sizes in different systems. Which one is it?`;
    case 'gauge-not-known':
      return `There is no No. ${fault.number} in ${fault.system} as far as this table goes. Give the wire in mm.`;
    case 'size-out-of-range':
      return `${figure(fault.mm, 4)} mm is outside what fits here (${fault.leastMm} to ${fault.mostMm} mm). Look at the point and the unit.`;
  }
}

export function decimalFaultWords(fault: DecimalFault): string {
  switch (fault.code) {
    case 'number-empty':
      return 'A number is needed here.';
    case 'number-not-read':
      return `“${fault.text}” is not a number. Write it like 12.5.`;
    case 'number-too-fine':
      return fault.places === 0
        ? 'Only whole numbers go here.'
        : `At most ${fault.places} decimals go here; leave out separators of thousands.`;
    case 'number-too-large':
      return 'This number is too large.';
  }
}

/** `3 wires of at least 1.2 mm cannot pass: 2.59 mm would be needed and the ring has 2.5 mm.` */
export function fitFaultWords(fault: FitFault): string {
  const room = `at least ${figure(fault.needsMm, 2)} mm is needed and the inner diameter is ${figure(fault.innerMm, 2)} mm`;
  switch (fault.rule) {
    case 'packing':
      return fault.wires === 1
        ? `A wire of ${figure(fault.wireMm, 2)} mm cannot pass this ring: ${room}.`
        : `${fault.wires} wires cannot pass this ring side by side, even if all were as thin as the thinnest (${figure(fault.wireMm, 2)} mm): ${room}.`;
    case 'two thickest':
      return `The two thickest wires do not lie beside each other in this ring: ${room}.`;
    case 'area':
      return `${fault.wires} wires fill more than the hole of this ring: ${room}.`;
  }
}

export function bandWords(
  finding: Exclude<BandFinding, 'usual'>,
  ratio: number,
  weave: string,
  band: UsualBand,
): string {
  const usual = `${weave} is usually made with ${band.from} to ${band.to} (common practice)`;
  switch (finding) {
    case 'below':
      return `An aspect ratio of ${figure(ratio, 2)} may be too tight to weave: ${usual}, and ${band.tight} is already hard work.`;
    case 'tight':
      return `An aspect ratio of ${figure(ratio, 2)} will be tight: ${usual}.`;
    case 'above':
      return `An aspect ratio of ${figure(ratio, 2)} may be loose: ${usual}.`;
  }
}

/** `from a weighed hundred (17.2 g)`, `reckoned with 8.96 g/cm³ (CRC Handbook)`. */
export const ringMassSource = (mass: RingMass): string =>
  mass.from === 'weighed'
    ? `from a weighed hundred (${figure(mass.hundredG, 3)} g)`
    : `reckoned with ${mass.densityGPerCm3} g/cm³ (${mass.source})`;

/** `0.172 g a ring, from a weighed hundred (17.2 g)`; says which way it came about. */
export function ringMassWords(mass: RingMass | null): string {
  if (!mass) return 'No mass: give the density of the metal, or weigh a hundred.';
  const about = mass.from === 'weighed' ? '' : 'about ';
  return `${about}${figure(mass.g, 4)} g a ring, ${ringMassSource(mass)}`;
}
