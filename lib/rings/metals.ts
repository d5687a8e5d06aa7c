/**
 * Metals that rings are made of, with the density that a ring's mass is
 * reckoned from where no hundred was weighed. Densities are defaults: alloys
 * vary, and a weighed hundred always wins.
 */

/** What a metal gives reason to warn about; cautions are offered from these. */
export type MetalConcern =
  /** Releases nickel on skin, or may. */
  | 'nickel'
  /** Holds nickel that it normally hardly releases. */
  | 'little nickel'
  /** Zinc coat: fume when heated. */
  | 'zinc coat'
  /** Swarf burns near sparks. */
  | 'burning swarf'
  /** Words for it are regulated where it is sold. */
  | 'precious'
  | 'rubber';

export interface Metal {
  readonly id: string;
  readonly name: string;
  /** g/cm3 at about 20 degrees C. */
  readonly densityGPerCm3: number;
  readonly source: string;
  readonly concerns: readonly MetalConcern[];
}

const metal = (
  id: string,
  name: string,
  densityGPerCm3: number,
  source: string,
  ...concerns: readonly MetalConcern[]
): Metal => ({ id, name, densityGPerCm3, source, concerns });

export const METALS: readonly Metal[] = [
  metal('copper', 'copper', 8.96, 'CRC Handbook element table'),
  metal('brass-c26000', 'brass 70/30 (C26000)', 8.53, 'ASTM B36 alloy data: 0.308 lb/in3'),
  metal('red-brass-c23000', 'red brass (C23000)', 8.75, 'copper industry alloy data, from memory'),
  metal('bronze-c22600', "jewellers' bronze (C22600)", 8.78, 'copper industry alloy data, from memory'),
  metal('bronze-c22000', 'commercial bronze (C22000)', 8.8, 'copper industry alloy data, from memory'),
  metal(
    'phosphor-bronze-c51000',
    'phosphor bronze (C51000)',
    8.86,
    'copper industry alloy data, from memory',
  ),
  metal(
    'nickel-silver-c75200',
    'nickel silver (C75200)',
    8.73,
    'copper industry alloy data, from memory',
    'nickel',
  ),
  metal('aluminium-1100', 'aluminium 1100', 2.71, 'welding alloy data: 0.098 lb/in3'),
  metal('aluminium-5356', 'aluminium 5356', 2.64, 'alloy data sheet'),
  metal('aluminium-6061', 'aluminium 6061', 2.7, 'alloy data, from memory'),
  metal(
    'stainless-304',
    'stainless steel 304',
    7.93,
    'data sheets; EN 10088-1 rounds to 7.9',
    'little nickel',
  ),
  metal('stainless-316', 'stainless steel 316', 7.98, 'data sheets', 'little nickel'),
  metal('steel', 'mild steel', 7.85, 'metals density tables'),
  metal(
    'steel-galvanised',
    'galvanised steel',
    7.85,
    'metals density tables; the zinc changes it by less than 0.5 %',
    'zinc coat',
  ),
  metal(
    'titanium-grade-2',
    'titanium grade 2',
    4.51,
    'element data 4.507; commercially pure grades 4.51',
    'burning swarf',
  ),
  metal('niobium', 'niobium', 8.57, 'CRC Handbook element table, from memory'),
  metal('fine-silver', 'fine silver', 10.49, 'CRC Handbook element table', 'precious'),
  metal(
    'sterling-silver',
    'sterling silver 925',
    10.36,
    'rule of mixtures: 1/(0.925/10.49 + 0.075/8.96)',
    'precious',
  ),
  metal(
    'gold-14k-yellow',
    '14k yellow gold',
    13.07,
    'bench handbook, from memory; depends on the alloy, ask the supplier',
    'precious',
  ),
  metal(
    'gold-filled-14k',
    '14k gold-filled 1/20',
    8.68,
    'rule of mixtures on brass C26000: 1/(0.05/13.07 + 0.95/8.53)',
    'precious',
  ),
  metal('epdm', 'EPDM rubber', 1.25, 'varies by filler from 0.9 to over 2.0: weigh a hundred', 'rubber'),
  metal('silicone', 'silicone rubber', 1.15, 'from memory; 1.1 to 1.2 is met', 'rubber'),
];

const byId = new Map(METALS.map((m) => [m.id, m]));

/** The metal of that id, or null: `other` and ids that this table does not know. */
export const findMetal = (id: string): Metal | null => byId.get(id) ?? null;

/** What a ring kind's metal is called; its own name where it is none of ours. */
export const metalNameOf = (kind: { readonly metal: string; readonly metalName: string }): string =>
  findMetal(kind.metal)?.name ?? kind.metalName;
