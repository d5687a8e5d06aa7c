/** The transcript of another lesson, placed on a recording that was cut from that lesson's, at the keyboard alone. */
import { randomUUID } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { findDraft } from '#lib/data/lessons.ts';
import { emptyContent } from '#lib/lesson/content.ts';
import { speak, VOICES } from '#tests/retiming/made-sound.ts';
import { aLesson } from '#tests/support/a-lesson.ts';
import { aReadyRecording } from '#tests/support/a-ready-recording.ts';
import { sharedApp, type TestApp } from '#tests/support/app.ts';
import { openBrowser, type TestBrowser } from '#tests/support/chromium.ts';
import { keyboardOf } from '#tests/support/keyboard.ts';
import { look } from '#tests/support/look.ts';
import { signIn } from '#tests/support/sign-in.ts';
import { fromTo, spliced, writeSoundFile } from '#tests/support/sound-files.ts';
import { waitUntilSaved } from '#tests/support/transcript-page.ts';

const [voice] = VOICES;
if (!voice) throw new Error('there are voices');
const SECONDS = 60;
const cues = Array.from({ length: SECONDS }, (_, k) => ({
  id: `cue-${k}`,
  startMs: k * 1000 + 50,
  endMs: k * 1000 + 950,
  text: `Sentence ${k}.`,
  settings: '',
}));

let app: TestApp;
let browser: TestBrowser;
let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'placed-transcript-'));
  app = await sharedApp();
  browser = await openBrowser(app.address);
}, 300_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

test('what is heard in both gets the other lesson’s words at its own times; the rest is listed, and undo takes all of it out', {
  timeout: 180_000,
}, async () => {
  const long = await aLesson(app.db, {
    content: {
      title: 'The long film',
      chapters: [0, 20, 40].map((at) => ({
        id: `ch-${at}`,
        kind: 'setup' as const,
        title: `From ${at} s`,
        startMs: at * 1000,
      })),
    },
  });
  const short = { ...long, lessonId: randomUUID() };
  await app.db.lesson.create({
    data: {
      id: short.lessonId,
      workshopId: long.workshopId,
      slug: 'short',
      content: emptyContent('The short cut', 'en', 'EUR'),
    },
  });
  const rows = (lessonId: string, of: readonly (typeof cues)[number][]) =>
    of.map((cue) => ({ ...cue, timing: null, lessonId }));
  await app.db.cue.createMany({ data: rows(long.lessonId, cues) });
  const own = { ...cues[3], id: 'own', text: 'Written here.' } as (typeof cues)[number];
  await app.db.cue.createMany({ data: rows(short.lessonId, [own]) });
  const sound = speak(voice, SECONDS, 73);
  const files = [join(folder, 'long.m4a'), join(folder, 'short.m4a')] as const;
  writeSoundFile(files[0], sound);
  // 5 s off the start, and what lies between 25 and 35 s is not in it.
  writeSoundFile(files[1], spliced(fromTo(sound, 5, 25), fromTo(sound, 35)));
  await aReadyRecording(app.db, app.files, long.lessonId, SECONDS * 1000, files[0]);
  await aReadyRecording(app.db, app.files, short.lessonId, (SECONDS - 15) * 1000, files[1]);

  const page = await browser.open();
  const keys = keyboardOf(page);
  await signIn(page, app.address, app.db, long.userId);
  const bench = `${app.address}/bench/w-${long.workshopId}/lessons/${short.lessonId}`;
  const begin = async (): Promise<void> => {
    await page.goto(`${bench}/bring-in`);
    const part = page.getByRole('region', { name: 'Transcript of another lesson' });
    await keys.choose(part.getByLabel('Lesson', { exact: true }), 'The long');
    await keys.enter(part.getByRole('button', { name: 'Compare the recordings' }));
    await page.getByRole('heading', { name: 'A transcript placed by its sound' }).waitFor();
  };
  await begin();
  await page
    .getByText('This lesson’s recording differs from the recording of “The long film” at 2 points.')
    .waitFor({ timeout: 60_000 });
  await page.getByText('“Sentence 0.” is left out.').waitFor();
  await page.getByText('“Sentence 25.” is left out.').waitFor();
  await look(page, 'transcript-placed');
  // The list of what lies in the second cut.
  await keys.enter(page.getByText('7 more that fell into the cut'));
  expect(await page.getByText('“Sentence 34.” is left out.').isVisible()).toBe(true);
  await keys.to(page.getByLabel('Take its chapters too'));
  expect(await page.getByLabel('Take its chapters too').isChecked()).toBe(true);
  await keys.enter(page.getByRole('button', { name: 'Replace this lesson’s one cue by these 45' }));
  await page.getByText('The transcript stands in this lesson now').waitFor();
  await waitUntilSaved(page);

  const placed = await findDraft(app.db, short);
  expect(placed?.cues.map(({ id }) => id)).toEqual(
    cues.map(({ id }) => id).filter((_, k) => (k >= 5 && k < 25) || k >= 35),
  );
  for (const { id, startMs, text } of placed?.cues ?? []) {
    const k = Number(id.slice(4));
    expect(Math.abs(startMs - (k * 1000 + 50 - (k < 25 ? 5_000 : 15_000)))).toBeLessThanOrEqual(60);
    expect(text).toBe(`Sentence ${k}.`);
  }
  expect(placed?.content.chapters.map(({ id }) => id)).toEqual(['ch-0', 'ch-20', 'ch-40']);
  expect(placed?.content.chapters[0]?.startMs).toBe(0);
  expect(Math.abs((placed?.content.chapters[2]?.startMs ?? 0) - 25_000)).toBeLessThanOrEqual(60);
  expect(await app.db.cue.count({ where: { lessonId: long.lessonId } })).toBe(SECONDS);

  await keys.enter(page.getByRole('button', { name: /^Undo/ }));
  await waitUntilSaved(page);
  const undone = await findDraft(app.db, short);
  expect([undone?.cues.map(({ id }) => id), undone?.content.chapters]).toEqual([['own'], []]);

  await begin();
  await keys.enter(page.getByRole('button', { name: 'Do without this transcript' }));
  await page.getByText('The lesson stays as it was.').waitFor();
  expect(await findDraft(app.db, short)).toMatchObject({ version: undone?.version });
});

test('a recording that is taken in while the transcript is open can be marked up without a reload', async () => {
  const rows = await aLesson(app.db);
  await app.db.cue.createMany({
    data: cues.slice(0, 5).map((cue) => ({ ...cue, timing: null, lessonId: rows.lessonId })),
  });
  const page = await browser.open();
  await signIn(page, app.address, app.db, rows.userId);
  await page.goto(`${app.address}/bench/w-${rows.workshopId}/lessons/${rows.lessonId}/transcript`);
  await page.getByText('Sentence 0.').waitFor();
  const mark = page.getByRole('button', { name: 'Set a chapter here' });
  expect(await mark.count()).toBe(0);
  await aReadyRecording(app.db, app.files, rows.lessonId, 10_000);
  await mark.click();
  await page.getByRole('textbox', { name: /title/i }).first().fill('The beginning');
  await waitUntilSaved(page);
  expect((await findDraft(app.db, rows))?.content.chapters).toMatchObject([{ title: 'The beginning' }]);
});
