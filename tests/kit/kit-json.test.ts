import { Ajv2020 } from 'ajv/dist/2020.js';
import { expect, test } from 'vitest';
import { kitDocumentOf, kitJsonSchema } from '#lib/kit/kit-json.ts';
import { kitFor } from '#lib/kit/kit-list.ts';
import { aSample, byzantineMaking } from '#tests/support/a-making.ts';

const ADDRESS = 'https://lessons.example/schema/kit-1.json';
// ajv reads the published schema as JSON Schema draft 2020-12, strictly: it knows nothing of ours.
const holds = new Ajv2020({ strict: true, allErrors: true }).compile(kitJsonSchema(ADDRESS));

const documentOf = (bodyMm: number, over: Partial<ReturnType<typeof byzantineMaking>> = {}) => {
  const kit = kitFor({ ...byzantineMaking(), ...over }, bodyMm);
  if (!kit.ok) throw new Error(kit.fault.code);
  return kitDocumentOf(kit.value, { title: 'A lesson', address: null, revision: 2 }, ADDRESS);
};

test('every kit given out keeps to the published schema', () => {
  const pieces = [
    { repeats: 8, mm: 75.4 },
    { repeats: 13, mm: 118.4 },
  ];
  const documents = [
    documentOf(165),
    documentOf(150, { sample: aSample({ perRepeatMm: 8.6, endsMm: 6.6, pieces, readingMm: 0.5 }) }),
    documentOf(150, { repeat: [], sample: null }),
    documentOf(150, { ringKinds: [], repeat: [], finishing: [], sample: null }),
  ];
  for (const document of documents) {
    const read: unknown = JSON.parse(JSON.stringify(document));
    expect(holds(read), JSON.stringify(holds.errors)).toBe(true);
  }
});

test('the schema refuses what is no kit', () => {
  const whole = documentOf(165);
  expect(holds({ ...whole, rings: [{ ...whole.rings[0], opened: 1.5 }] })).toBe(false);
  expect(holds({ ...whole, totals: { ...whole.totals, packsMinor: 12.7 } })).toBe(false);
  expect(holds({ ...whole, currency: undefined })).toBe(false);
});

test('the numbers are those of the worked kit', () => {
  expect(documentOf(165)).toMatchObject({
    length: { repeats: 19, finishedMm: 190, leftoverMm: 5 },
    rings: [{ opened: 40, closed: 38, issued: 86 }, { opened: 38 }, { opened: 2 }],
    totals: { issued: 131, packsMinor: 1270, proRataMilli: 761_200 },
  });
});
