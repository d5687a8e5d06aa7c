import { expect, test } from 'vitest';
import { kitInserts, kitLabels } from '#app/paper/kit-labels.ts';
import { kitSheet, type SheetLesson } from '#app/paper/kit-sheet.ts';
import { makePdf } from '#app/paper/make-pdf.ts';
import { pickingSheet } from '#app/paper/picking-sheet.ts';
import { sheetLines } from '#app/paper/sheet-lines.ts';
import { stepsForPaper } from '#app/pictures/pictures-for-paper.ts';
import { kitFor } from '#lib/kit/kit-list.ts';
import { emptyContent } from '#lib/lesson/content.ts';
import { findWeave } from '#lib/weave/weave-library.ts';
import { aContent } from '#tests/support/a-content.ts';
import { aRingKind, byzantineMaking } from '#tests/support/a-making.ts';
import { pdfCode, pdfText } from '#tests/support/read-pdf.ts';

const lesson: SheetLesson = {
  title: 'Byzantine bracelet',
  weave: 'Byzantine',
  workshop: 'Lower Withy',
  language: 'en',
  address: 'https://lessons.example/workshop/lower-withy/lesson/byzantine-bracelet',
  revision: 3,
  at: new Date('2026-05-04T10:00:00Z'),
};

const kitOf = (bodyMm: number) => {
  const kit = kitFor(byzantineMaking(), bodyMm);
  if (!kit.ok) throw new Error(kit.fault.code);
  return kit.value;
};

test('the sheet says what the kit says, and its code leads to the lesson', async () => {
  const sheet = await makePdf(kitSheet(lesson, kitOf(165)));
  const text = await pdfText(sheet);
  // The worked kit of the standards tests: 78 copper (40 opened, 38 closed), 8 spare; 190 mm; 12.70.
  for (const told of [
    'Byzantine bracelet',
    'For 165 mm (6.5 in) on the body.',
    '19 repeats, finished 190 mm (7.48 in)',
    '12.70 EUR',
    '40 opened = 19 × 2 in the repeat + 2 to finish',
    'revision 3',
  ])
    expect(text).toContain(told);
  expect(text).toMatch(/copper.*40 ?38 ?8 ?86/);
  expect(await pdfCode(sheet)).toBe(lesson.address);
});

test('the lines of a sheet are what is printed on it', async () => {
  const sheet = kitSheet(lesson, kitOf(165));
  const printed = (await pdfText(await makePdf(sheet))).replaceAll(/\s/g, '');
  const all = sheetLines(sheet);
  // What comes after may run over the page's end, where the foot is printed in between.
  const lines = all.slice(0, all.indexOf('How these numbers came about'));
  // Title, sizes, a row for each ring and their sum, materials, costs.
  expect(lines.length).toBeGreaterThan(12);
  for (const cell of lines.flatMap((line) => line.split(/ · |, /)))
    expect(printed, cell).toContain(cell.replaceAll(/\s/g, ''));
  expect(sheetLines(kitSheet(lesson, kitOf(180)))).not.toEqual(all);
});

test('the same kit gives the same bytes', async () => {
  const [one, other] = [
    await makePdf(kitSheet(lesson, kitOf(150))),
    await makePdf(kitSheet(lesson, kitOf(150))),
  ];
  expect(Buffer.from(one).equals(Buffer.from(other))).toBe(true);
});

test('a class has one sheet to pick from, and a label for every kit', async () => {
  const sizes = [
    { name: 'small', kit: kitOf(150), times: 2 },
    { name: 'medium', kit: kitOf(165), times: 3 },
    { name: 'large', kit: kitOf(180), times: 1 },
  ];
  const picking = await pdfText(await makePdf(pickingSheet(lesson, sizes, 'per kit')));
  expect(picking).toMatch(/copper.*77 ?86 ?95 ?47 ?507/);
  expect(picking).toContain('53.40 EUR');
  const pooled = await pdfText(await makePdf(pickingSheet(lesson, sizes, 'pooled')));
  expect(pooled).toMatch(/copper.*70 ?78 ?86 ?46 ?506/);
  const labels = await pdfText(await makePdf(kitLabels(lesson, sizes)));
  expect(labels.match(/Kit small, 150 mm/g)).toHaveLength(2);
  expect(labels.match(/Kit medium, 165 mm/g)).toHaveLength(3);
  const one = sizes.slice(0, 1).map((size) => ({ ...size, times: 1 }));
  // The code names revision and size.
  expect(await pdfCode(await makePdf(kitLabels(lesson, one)))).toBe(`${lesson.address}/kit/3?measure=150`);
  // No address can name a draft.
  const draft = { ...lesson, revision: null };
  expect(await pdfCode(await makePdf(kitLabels(draft, one)))).toBe(lesson.address);
  expect(await pdfText(await makePdf(kitLabels(draft, one)))).toContain('Draft');
});

test('a leaf for every kit says what it is, what is in it and what to take care of, and leads to its page', async () => {
  const content = aContent({ cautions: [{ id: 'n', of: 'nickel', text: '' }] });
  const sizes = [{ name: 'medium', kit: kitOf(165), times: 2 }];
  const leaves = await makePdf(kitInserts(lesson, content, sizes));
  const text = await pdfText(leaves);
  for (const told of [
    'Byzantine bracelet',
    'Kit medium, 165 mm (6.5 in)',
    'Revision 3 of the lesson.',
    'Small parts: keep away from children',
    'Nickel and skin.',
    'open 40, close 38, 8 spare',
    'lobster clasp, 1 piece',
  ])
    expect(text).toContain(told);
  expect(text.match(/In this bag/g)).toHaveLength(2);
  expect(await pdfCode(await makePdf(kitInserts(lesson, content, sizes, { rule: 'pooled', from: 2 })))).toBe(
    `${lesson.address}/kit/3?measure=165`,
  );
  // With one tray for all, the kit itself holds what the piece takes.
  expect(
    await pdfText(await makePdf(kitInserts(lesson, content, sizes, { rule: 'pooled', from: 2 }))),
  ).toMatch(/78 × copper.*open 40, close 38(?!, 8 spare)/);
});

test('labels of a large batch are printed in parts', async () => {
  const sizes = [{ name: 'small', kit: kitOf(150), times: 205 }];
  const rest = await pdfText(await makePdf(kitLabels(lesson, sizes, { rule: 'per kit', from: 201 })));
  expect(rest.match(/Kit small/g)).toHaveLength(5);
});

test('hostile and foreign names stay words', async () => {
  const making = byzantineMaking();
  const [copper, ...rest] = making.ringKinds;
  if (!copper) throw new Error('no copper');
  const name = '<script>alert(1)</script> Жёлтое κόκκινο ďábel {qr}';
  const kit = kitFor({ ...making, ringKinds: [{ ...copper, name }, ...rest] }, 165);
  if (!kit.ok) throw new Error(kit.fault.code);
  expect(await pdfText(await makePdf(kitSheet({ ...lesson, address: null }, kit.value)))).toContain(name);
});

test('steps stand on a page of their own, each sentence beside its picture with its numbers', async () => {
  const weave = findWeave('byzantine');
  if (!weave) throw new Error('no byzantine');
  const { start, repeat, finishing } = weave.piece;
  const ringKinds = weave.roles.map(({ id }) => aRingKind({ id, wire: { stated: '1.1 mm', mm: 1.1 } }));
  const content = { ...emptyContent('A lesson', 'en', 'EUR'), start, repeat, finishing, ringKinds };
  const steps = stepsForPaper(content);
  expect(steps.steps.map(({ picture }) => picture !== null)).toEqual([true, true, true, true, true]);
  const text = await pdfText(await makePdf(kitSheet({ ...lesson, steps }, kitOf(165))));
  expect(text).toContain('The steps in pictures');
  expect(text).toContain('Opened knot ring 3 enters, from the back, rings 1 and 2');
  // Numbers on rings are text in the picture too.
  expect(text.split('The steps in pictures')[1]).toMatch(/\b8\b/);
});
