import { expect, test } from 'vitest';
import { makePdf, type Sheet } from '#app/paper/make-pdf.ts';
import { LOST, signs } from '#app/paper/signs.ts';
import { pdfBoxes, pdfText } from '#tests/support/read-pdf.ts';

const sheet = (content: Sheet['content']): Sheet => ({
  title: 'Signs',
  language: 'en',
  at: new Date('2026-05-04T10:00:00Z'),
  foot: 'Foot → ½',
  content,
});

// Letters of the alphabets by Unicode's code charts (unicode.org/charts): Latin Extended-A, Greek, Cyrillic.
const SIGNS = '× ÷ ± ≤ ≥ ½ ¼ ⅛ ⅓ ′ ″ → ← ↔ ✓ ☐ € £ ¥ ₹ ° µ Ω ∅ ⌀';
const WORDS = [
  'Zażółć gęślą jaźń ĄĆĘŁŃÓŚŹŻ',
  'Příliš žluťoučký kůň ďábelské ódy',
  'Ξεσκεπάζω τὴν ψυχοφθόρα',
  'Съешь ещё этих мягких французских булок, їжак, ўладар',
  'Árvíztűrő tükörfúrógép, Ğışöç, ŋ, ő',
  'Հայաստան, საქართველო',
];

test('signs of the trade and the letters of many languages are printed, in plain and in bold', async () => {
  const lines = [SIGNS, ...WORDS];
  const made = await makePdf(
    sheet([
      ...lines,
      ...lines.map((text) => ({ text, bold: true })),
      { ul: lines },
      { table: { body: [[{ text: ['a ', SIGNS] }, SIGNS]] } },
      { columns: lines.slice(0, 2) },
    ]),
  );
  expect(await pdfBoxes(made)).toBe(0);
  const text = (await pdfText(made)).replaceAll(' ', '');
  // The micro sign and the Greek letter are one glyph (NFKC makes them one character, too).
  for (const line of lines)
    expect(text).toContain(line.normalize('NFC').replaceAll(' ', '').replace('\u00b5', '\u03bc'));
  expect(text).toContain('Foot→½');
  expect(text).not.toContain(LOST);
});

test('the finder of boxes finds one where a face lacks a sign', async () => {
  // The plain face has no arrow: asked for by name, past the choice of faces.
  const made = await makePdf(
    sheet([{ qr: 'x' }, { toc: { title: { text: '→', font: 'Roboto' } } }] as never),
  );
  expect(await pdfBoxes(made)).toBe(1);
});

test('what no face prints is a mark, once for a run, and the sheet says so', async () => {
  const made = await makePdf(sheet([{ text: 'Name: 編み輪, 🪡 and שלום.' }]));
  expect(await pdfBoxes(made)).toBe(0);
  const text = await pdfText(made);
  expect(text).toContain('Name: [?], [?] and [?].');
  expect(text).toContain('stands for letters or signs that this sheet cannot print');
});

test('what steers other signs is not printed, and what is written in parts is put together', async () => {
  const known = await signs();
  const printed = (text: string) =>
    known
      .runsOf(text)
      .map((run) => run.text)
      .join('');
  expect(printed('e\u0301 so\u00ADft ✓\uFE0F')).toBe('é soft ✓');
  expect(known.lostIn('Ring 輪輪 ✓ ा')).toEqual(['輪', 'ा']);
});
