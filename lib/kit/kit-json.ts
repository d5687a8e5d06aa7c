/** A kit as data for other programs, by a schema that is published with it. */
import { z } from 'zod';
import { metalNameOf } from '#lib/rings/metals.ts';
import { statedSize } from '#lib/rings/ring-kind.ts';
import { pack } from '#lib/thing.ts';
import type { PackChoice } from './choose-packs.ts';
import type { KitList, RingLine } from './kit-list.ts';
import { material, spareRule } from './making.ts';
import type { MaterialLine } from './material-line.ts';

const whole = z.int().min(0);
const mm = z.number();
/** Sums of money and of thousandths are whole, and may be larger than what one thing costs. */
const bought = {
  /** The packs to buy; null where none are stated. */
  packs: z
    .array(z.object({ pack, holds: whole.describe('In thousandths for materials'), times: whole }))
    .nullable(),
  over: whole.nullable(),
  packsMinor: whole.nullable().describe('Price of whole packs, minor units'),
  proRataMilli: whole.nullable().describe('Price of what is used of them, thousandths of a minor unit'),
};

const supply = z.object({
  id: z.string(),
  kind: material.shape.kind,
  name: z.string(),
  needMilli: whole.describe('Thousandths of the unit'),
  unit: z.string(),
  grams: z.number().nullable(),
  ...bought,
});

export const KIT_SCHEMA = 1;

export const kitDocument = z.object({
  $schema: z.string(),
  schema: z.literal(KIT_SCHEMA),
  lesson: z.object({
    title: z.string(),
    address: z.string().nullable().describe('Of the lesson page; null where it has none yet'),
    revision: z.int().min(1).nullable().describe('Null for a draft'),
  }),
  bodyMm: mm,
  length: z
    .object({
      targetMm: mm,
      easeMm: mm,
      thicknessMm: mm.nullable(),
      repeats: whole,
      leastRepeats: whole.nullable().describe('As sure as the sample was read; null where nobody said'),
      mostRepeats: whole.nullable(),
      finishedMm: mm,
      leftoverMm: mm,
    })
    .nullable()
    .describe('Null where nothing repeats'),
  spareRule,
  currency: z.string().describe('ISO 4217'),
  rings: z.array(
    z.object({
      id: z.string(),
      name: z.string(),
      innerDiameter: statedSize,
      measuredInnerMm: mm.nullable(),
      wire: statedSize,
      metal: z.string(),
      colour: z.string(),
      opened: whole,
      closed: whole,
      spare: whole,
      issued: whole.describe('Opened + closed + spare'),
      ringG: z.number().nullable(),
      massFrom: z.enum(['weighed', 'metal']).nullable(),
      ...bought,
    }),
  ),
  materials: z.array(supply),
  tools: z.array(supply).describe('Kept; not in the sums'),
  totals: z.object({
    opened: whole,
    closed: whole,
    spare: whole,
    issued: whole,
    packsMinor: whole,
    proRataMilli: whole,
    unpriced: whole.describe('Lines that state no price and are not in the sums'),
  }),
});
export type KitDocument = z.infer<typeof kitDocument>;

/** JSON Schema (draft 2020-12) of the document, under its address. */
export const kitJsonSchema = (address: string): object => ({
  ...z.toJSONSchema(kitDocument, { io: 'output' }),
  $id: address,
  title: 'A kit list for one measure of a lesson',
});

/** @param schemaAddress where `kitJsonSchema` is published */
export function kitDocumentOf(
  kit: KitList,
  lesson: KitDocument['lesson'],
  schemaAddress: string,
): KitDocument {
  const { length, totals } = kit;
  return {
    $schema: schemaAddress,
    schema: KIT_SCHEMA,
    lesson,
    bodyMm: kit.bodyMm,
    length: length && {
      targetMm: length.targetMm,
      easeMm: length.easeMm,
      thicknessMm: length.thickness?.mm ?? null,
      repeats: length.repeats,
      leastRepeats: length.certainty?.leastRepeats ?? null,
      mostRepeats: length.certainty?.mostRepeats ?? null,
      finishedMm: length.finishedMm,
      leftoverMm: length.leftoverMm,
    },
    spareRule: kit.spareRule,
    currency: kit.currency,
    rings: kit.rings.map(ringOf),
    materials: kit.materials.map(supplyOf),
    tools: kit.tools.map(supplyOf),
    totals: {
      opened: totals.opened,
      closed: totals.closed,
      spare: totals.spare,
      issued: totals.issued,
      packsMinor: totals.price.packsMinor,
      proRataMilli: totals.price.proRataMilli,
      unpriced: totals.price.unpriced,
    },
  };
}

const boughtOf = ({ packs, price }: Pick<RingLine, 'packs' | 'price'>) => ({
  packs: packs && packsOf(packs),
  over: packs?.over ?? null,
  packsMinor: price?.packsMinor ?? null,
  proRataMilli: price?.proRataMilli ?? null,
});

const packsOf = ({ picked }: PackChoice) =>
  picked.map(({ pack: one, holds, times }) => ({ pack: one, holds, times }));

const ringOf = (line: RingLine): KitDocument['rings'][number] => ({
  id: line.ringKind.id,
  name: line.ringKind.name,
  innerDiameter: line.ringKind.innerDiameter,
  measuredInnerMm: line.ringKind.measuredInnerMm,
  wire: line.ringKind.wire,
  metal: metalNameOf(line.ringKind),
  colour: line.ringKind.colour,
  opened: line.opened,
  closed: line.closed,
  spare: line.spare,
  issued: line.issued,
  ringG: line.ringMass?.g ?? null,
  massFrom: line.ringMass?.from ?? null,
  ...boughtOf(line),
});

const supplyOf = (line: MaterialLine): KitDocument['materials'][number] => ({
  id: line.material.id,
  kind: line.material.kind,
  name: line.material.name,
  needMilli: line.needMilli,
  unit: line.material.unit,
  grams: line.g,
  ...boughtOf(line),
});
