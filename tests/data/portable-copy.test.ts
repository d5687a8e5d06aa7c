/** A lesson taken out as a portable copy and brought in again is the same lesson. */
import { createHash, randomUUID } from 'node:crypto';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { unzipSync } from 'fflate';
import { HtmlValidate } from 'html-validate';
import { describe, expect, test } from 'vitest';
import { readLessonPage } from '#lib/bench/read-lesson-page.ts';
import { findCopiedTexts } from '#lib/data/description-texts.ts';
import { findEndedLesson, noteEndedLesson } from '#lib/data/ended-lessons.ts';
import { findKitBatches } from '#lib/data/kit-batches.ts';
import { findPlaceMarks } from '#lib/data/place-marks.ts';
import { findReports } from '#lib/data/reports.ts';
import { aContent } from '#tests/support/a-content.ts';
import { aLesson } from '#tests/support/a-lesson.ts';
import { copyBench, HOSTILE, textOf } from '#tests/support/copy-bench.ts';

const { db, work, taught, lessonZip, workshopZip, bringIn, another } = await copyBench();

const sha = (bytes: Uint8Array | undefined): string =>
  createHash('sha256')
    .update(bytes ?? '')
    .digest('hex');

describe('a lesson', () => {
  test('comes back equal, byte for byte, in another workshop', async () => {
    const out = await lessonZip(taught);
    // The same content gives the same bytes.
    expect(sha(await lessonZip(taught))).toBe(sha(out));
    const other = await another();
    const sent = await bringIn(out, other.workshopId, other.userId);
    expect(sent).toMatchObject({ state: 'ready', fault: null, lessons: [{ title: HOSTILE }] });
    const lessonId = sent.lessons[0]?.id ?? '';
    const again = await lessonZip({ ...other, lessonId });
    // Read by a library that had no part in writing it.
    const [before, after] = [unzipSync(out), unzipSync(again)];
    expect(Object.keys(after)).toEqual(Object.keys(before));
    for (const [name, bytes] of Object.entries(before))
      expect([name, sha(after[name])]).toEqual([name, sha(bytes)]);
    expect(sha(again)).toBe(sha(out));
    const slug = `l-${taught.lessonId}`;
    expect(Object.keys(before)).toEqual(
      expect.arrayContaining(
        [
          'index.html',
          'lesson.json',
          'revisions/1.json',
          'revisions/2.json',
          'draft.json',
          'media/recording-1.mp4',
          'captions.vtt',
          'chapters.json',
          'kit/size-1.csv',
          'kit/size-3.json',
          'transcripts/1',
          'bench.json',
          'sheet.pdf',
        ].map((name) => `${slug}/${name}`),
      ),
    );
    const row = await db.recording.findUniqueOrThrow({
      where: { id: (await db.lesson.findUniqueOrThrow({ where: { id: lessonId } })).recordingId ?? '' },
    });
    expect(row.sha256).toBe(sha(before[`${slug}/media/recording-1.mp4`]));
    // What the workshop keeps for itself is there too: its batch still holds the mark of its place.
    const [batch] = await findKitBatches(db, lessonId);
    const kept = await db.kitBatch.findFirstOrThrow({ where: { lessonId, note: HOSTILE } });
    expect(batch).toMatchObject({ revision: 1, madeOn: '2026-05-04', kits: [{ name: HOSTILE, times: 6 }] });
    expect((await findPlaceMarks(db, lessonId)).map(({ place }) => place).toSorted()).toEqual([
      `batch-${kept.id}`,
      'title',
    ]);
    expect(await findReports(db, lessonId)).toMatchObject([
      { wrong: HOSTILE, answer: null },
      { wrong: HOSTILE, at: '1:0x', answer: 'Thank you.' },
    ]);
    expect((await findCopiedTexts(db, lessonId)).markdown?.text).toBe(`# ${HOSTILE}\n`);
    // Pupils see it at once, as they saw the one that it was copied from.
    const page = await readLessonPage(db, {
      workshop: `w-${other.workshopId}`,
      lesson: slug,
      number: null,
      held: null,
    });
    expect(page?.revision).toMatchObject({
      number: 2,
      content: { title: 'Byzantine bracelet', corrections: [{ right: HOSTILE }] },
    });
    expect(page?.revision.stills.length).toBeGreaterThan(0);
  });

  test('stands beside one with the same address', async () => {
    const out = await lessonZip(taught);
    const sent = await bringIn(out, taught.workshopId, taught.userId);
    const made = await db.lesson.findUniqueOrThrow({ where: { id: sent.lessons[0]?.id ?? '' } });
    expect(made.slug).toBe(`l-${taught.lessonId}-2`);
    await db.lesson.delete({ where: { id: made.id } });
  });

  test('that was deleted comes back to its own address, which kits and sheets lead to', async () => {
    const slug = `l-${taught.lessonId}`;
    const other = await another();
    const ended = { workshopId: other.workshopId, slug, endedAt: new Date() };
    await noteEndedLesson(db, { ...ended, title: 'Another lesson' });
    const out = await lessonZip(taught);
    const beside = await bringIn(out, other.workshopId, other.userId);
    const slugOf = async (sent: typeof beside) =>
      (await db.lesson.findUniqueOrThrow({ where: { id: sent.lessons[0]?.id ?? '' } })).slug;
    expect(await slugOf(beside)).toBe(`${slug}-2`);
    await noteEndedLesson(db, { ...ended, title: 'Byzantine bracelet' });
    expect(await slugOf(await bringIn(out, other.workshopId, other.userId))).toBe(slug);
    expect(await findEndedLesson(db, `w-${other.workshopId}`, slug)).toBeNull();
  });

  test('without its draft holds nothing that is not published', async () => {
    const files = unzipSync(await lessonZip(taught, false));
    expect(Object.keys(files).some((name) => /draft|transcripts|bench/.test(name))).toBe(false);
    // A member who is no owner takes the draft, and nothing of what pupils said.
    const members = unzipSync(await lessonZip(taught, true, false));
    expect(Object.keys(members).filter((name) => /draft|bench/.test(name))).toEqual([
      `l-${taught.lessonId}/draft.json`,
    ]);
    for (const bytes of Object.values(files))
      expect(new TextDecoder().decode(bytes)).not.toContain(`"title": "</script>`);
    const other = await another();
    const sent = await bringIn(await lessonZip(taught, false), other.workshopId, other.userId);
    const made = await db.lesson.findUniqueOrThrow({ where: { id: sent.lessons[0]?.id ?? '' } });
    expect(made.content).toMatchObject({ title: 'Byzantine bracelet' });
  });

  test('is described by the schema that lies beside it (ajv, JSON Schema 2020-12)', async () => {
    const files = unzipSync(await lessonZip(taught));
    const at = `l-${taught.lessonId}`;
    const schema = JSON.parse(textOf(files, `${at}/lesson.schema.json`));
    const ajv = new Ajv2020({ strict: false, validateFormats: false });
    ajv.addSchema(schema, 'lesson');
    for (const [name, part] of [
      ['lesson.json', 'lesson'],
      ['revisions/2.json', 'lesson#/$defs/revision'],
      ['draft.json', 'lesson#/$defs/draft'],
      ['bench.json', 'lesson#/$defs/bench'],
    ]) {
      const valid = ajv.getSchema(part ?? '');
      expect(valid?.(JSON.parse(textOf(files, `${at}/${name}`))), JSON.stringify(valid?.errors)).toBe(true);
    }
    expect(
      ajv.getSchema('lesson')?.({ ...JSON.parse(textOf(files, `${at}/lesson.json`)), revisions: 'none' }),
    ).toBe(false);
  });

  test('has a page that is valid and lets nothing typed act (html-validate)', async () => {
    const page = textOf(unzipSync(await lessonZip(taught)), `l-${taught.lessonId}/index.html`);
    const report = await new HtmlValidate({
      extends: ['html-validate:standard'],
      rules: { 'require-sri': 'off', 'no-inline-style': 'off', 'valid-id': 'off' },
    }).validateString(page);
    expect(
      report.results.flatMap(({ messages }) =>
        messages.map(({ ruleId, line, message }) => `${ruleId} ${line} ${message}`),
      ),
    ).toEqual([]);
    expect(page).not.toContain('<img src=x');
    expect(page).toContain('&lt;/script&gt;&lt;img src=x onerror=alert(1)&gt;');
    expect(page).not.toMatch(/(src|href)="(https?:)?\/\//);
  });
});

describe('a workshop', () => {
  test('comes back with its lessons, its stock, its glossary and its wording', async () => {
    const home = await aLesson(db, { content: aContent({ title: 'Never published' }) });
    await db.workshop.update({ where: { id: home.workshopId }, data: { about: 'Rings, <b>slowly</b>.' } });
    await db.stockItem.create({
      data: { workshopId: home.workshopId, key: 'ring / 1', name: HOSTILE, unit: 'ring', onHandMilli: 5_000 },
    });
    await db.glossaryTerm.create({
      data: {
        ...{ id: randomUUID(), workshopId: home.workshopId, term: 'maille', forms: ['mail'], sounds: [] },
        meaning: 'Rings, woven.',
      },
    });
    await db.heardDecision.create({
      data: { workshopId: home.workshopId, heard: 'busy time', instead: 'byzantine', taken: 3 },
    });
    const out = await workshopZip(home.workshopId);
    const other = await another();
    await db.lesson.delete({ where: { id: other.lessonId } });
    const sent = await bringIn(out, other.workshopId, other.userId);
    expect(sent).toMatchObject({ state: 'ready', lessons: [{ title: 'Never published' }] });
    expect(sha(await workshopZip(other.workshopId))).toBe(sha(out));
    // Once more: what is there already stays as it is, and lessons stand beside each other.
    await db.stockItem.updateMany({ where: { workshopId: other.workshopId }, data: { onHandMilli: 7_000 } });
    expect((await bringIn(out, other.workshopId, other.userId)).state).toBe('ready');
    expect(await db.stockItem.findMany({ where: { workshopId: other.workshopId } })).toMatchObject([
      { onHandMilli: 7_000 },
    ]);
    expect(await db.lesson.count({ where: { workshopId: other.workshopId } })).toBe(2);
  });
});
