/**
 * A published lesson of 12 chapters and 300 cues whose recording is edited
 * anew, as a teacher does it: the start is trimmed, a part in the middle cut,
 * a sentence said again, and a count put right with a correction. Two kits
 * were sold before. What she has to decide is counted. All of it is invented,
 * the sound too.
 *
 * It lasts a minute and a half here, and the cut 20 s; with TRIAL=full
 * ten minutes, and the cut a minute. SHOTS=folder keeps pictures.
 */
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { findDraft } from '#lib/data/lessons.ts';
import { getRevision, listRevisions } from '#lib/data/revisions.ts';
import { writeTextFile } from '#lib/lesson/text-files.ts';
import { speak, VOICES } from '#tests/retiming/made-sound.ts';
import { aContent } from '#tests/support/a-content.ts';
import { aLesson } from '#tests/support/a-lesson.ts';
import { sharedApp, type TestApp } from '#tests/support/app.ts';
import { openBrowser, type TestBrowser } from '#tests/support/chromium.ts';
import { look } from '#tests/support/look.ts';
import { pdfText } from '#tests/support/read-pdf.ts';
import { signIn } from '#tests/support/sign-in.ts';
import { batchOf, download, type SoldKit, sellKit } from '#tests/support/sold-kits.ts';
import { fromTo, spliced, writeSoundFile } from '#tests/support/sound-files.ts';
import { waitUntilSaved } from '#tests/support/transcript-page.ts';

const isFull = process.env['TRIAL'] === 'full';
const SECONDS = isFull ? 600 : 90;
const CUE_MS = (SECONDS * 1000) / 300;
/** Seconds of the old recording: trimmed before, cut between, said again between. */
const TRIM = 7;
const CUT = isFull ? ([240, 300] as const) : ([36, 56] as const);
const AGAIN = isFull ? ([400, 408] as const) : ([70, 74] as const);
const AGAIN_SECONDS = AGAIN[1] - AGAIN[0] + 1;

const [voice, other] = VOICES;
if (!voice || !other) throw new Error('there are voices');

const cueAt = (seconds: number): number => Math.round((seconds * 1000) / CUE_MS);
const RETAKEN = cueAt((AGAIN[0] + AGAIN[1]) / 2);
const COUNTED = cueAt(SECONDS / 4);
const SOLD = [
  { size: 'medium, 165 mm', madeOn: ['2026-05-04', '4 May 2026'] },
  { size: 'large, 180 mm', madeOn: ['2026-06-01', '1 June 2026'] },
] as const;
const WORDS = new Map([
  [RETAKEN, 'This wire is eighteen gauge.'],
  [COUNTED, 'Pick up two copper rings.'],
]);
const cues = Array.from({ length: 300 }, (_, k) => ({
  id: `cue-${String(k).padStart(3, '0')}`,
  startMs: Math.round(k * CUE_MS) + 20,
  endMs: Math.round((k + 1) * CUE_MS) - 20,
  text: WORDS.get(k) ?? `Sentence ${k} of this lesson.`,
  settings: '',
}));
const made = aContent();
const content = aContent({
  title: 'Byzantine bracelet for years',
  chapters: Array.from({ length: 12 }, (_, k) => ({
    id: `ch-${k}`,
    kind: 'setup' as const,
    title: `Chapter ${k + 1}`,
    startMs: Math.round((k * SECONDS * 1000) / 12),
  })),
  start: [],
  repeat: made.repeat.map((item, k) => ({
    ...item,
    sentence: k === 0 ? 'Pick up two copper rings.' : item.sentence,
    atMs: Math.round(SECONDS * (160 + 40 * k)),
  })),
  finishing: made.finishing.map((item, k) => ({ ...item, atMs: Math.round(SECONDS * (860 + 20 * k)) })),
});

let app: TestApp;
let browser: TestBrowser;
let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'true-for-years-'));
  const old = speak(voice, SECONDS, 71);
  const [cutFrom, cutTo] = CUT;
  const [againFrom, againTo] = AGAIN;
  writeSoundFile(join(folder, 'lesson.m4a'), old);
  writeSoundFile(
    join(folder, 'lesson, edited.m4a'),
    spliced(
      fromTo(old, TRIM, cutFrom),
      fromTo(old, cutTo, againFrom),
      speak(other, AGAIN_SECONDS, 72),
      fromTo(old, againTo),
    ),
  );
  app = await sharedApp();
  browser = await openBrowser(app.address);
}, 900_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

const publish = async (page: Page, bench: string, number: number): Promise<void> => {
  await page.goto(`${bench}/check`);
  await page.getByRole('button', { name: `Publish revision ${number}`, exact: true }).click();
  await page.getByRole('button', { name: `Publish revision ${number + 1}`, exact: true }).waitFor();
};

test('a re-edited recording and a wrong count are carried through a published lesson in fewer than ten decisions', {
  timeout: 600_000,
}, async () => {
  const rows = await aLesson(app.db, { content });
  await app.db.cue.createMany({
    data: cues.map((cue) => ({ ...cue, timing: null, lessonId: rows.lessonId })),
  });
  const bench = `${app.address}/bench/w-${rows.workshopId}/lessons/${rows.lessonId}`;
  const lessonPage = `${app.address}/workshop/w-${rows.workshopId}/lesson/l-${rows.lessonId}`;
  const page = await browser.open();
  await signIn(page, app.address, app.db, rows.userId);
  await page.goto(`${bench}/bring-in`);
  await page.getByLabel('Bring in the recording').setInputFiles(join(folder, 'lesson.m4a'));
  await page.getByLabel('Replace by another recording').waitFor({ timeout: 120_000 });
  await publish(page, bench, 1);
  const sold: SoldKit[] = [];
  for (const kit of SOLD) sold.push(await sellKit(page, bench, 1, kit));
  await look(page, 'kits-sold');
  expect(sold.map(({ address }) => address)).toEqual(
    [165, 180].map((bodyMm) => `${lessonPage}/kit/1?measure=${bodyMm}`),
  );
  const holder = await browser.open();
  for (const { address } of sold) {
    await holder.goto(address);
    await holder.getByText('Your kit is up to date.').waitFor();
  }

  const decisions: string[] = [];
  const decide = async (what: string, done: Promise<unknown>): Promise<void> => {
    decisions.push(what);
    await done;
  };
  await page.goto(`${bench}/bring-in`);
  const replace = page.getByLabel('Replace by another recording');
  await decide('the new file', replace.setInputFiles(join(folder, 'lesson, edited.m4a')));
  await page.getByRole('link', { name: 'Look at both and decide' }).click({ timeout: 300_000 });
  await page.getByText('The new recording was edited at 3 points.').waitFor();
  expect(await page.getByText('What was cut may have been said again here.').count()).toBe(1);
  // The sentence was said again in other words: a transcript of it is at hand.
  const newMs = (AGAIN[0] - CUT[1] + CUT[0] - TRIM) * 1000;
  const time = (ms: number): string => `00:${new Date(ms).toISOString().slice(14, 23)}`;
  const said = `WEBVTT\n\n${time(newMs + 500)} --> ${time(newMs + 4_500)}\nThis wire is 18 SWG.\n`;
  await writeFile(join(folder, 'again.vtt'), said);
  const transcript = page.getByLabel('A transcript of the new recording, if you have one');
  await decide('a transcript of what was said again', transcript.setInputFiles(join(folder, 'again.vtt')));
  await page.getByText('From the transcript are taken one cue of what was said again.').waitFor();
  await look(page, 'new-recording');
  const lost = page.getByText(/but its moment .* was cut: choose a new one/);
  const stepsCut = await lost.count();
  await decide(
    'take it and move everything',
    page.getByRole('button', { name: 'Take the new recording and move everything' }).click(),
  );
  await page.getByText('The new recording is the lesson’s now', { exact: false }).waitFor();
  for (let k = 0; k < stepsCut; k += 1) decisions.push('a new moment for a step whose picture was cut');

  await page.goto(`${bench}/corrections`);
  await decide('a correction', page.getByRole('button', { name: 'State a correction' }).click());
  await page.getByLabel('What was wrong').fill('two copper rings');
  await decide('the right count', page.getByLabel('What is right').fill('three copper rings'));
  await decide(
    'whom it concerns',
    page.getByLabel('Whom it concerns').fill('everyone with a kit of revision 1'),
  );
  await page.getByText('Cue at', { exact: false }).waitFor();
  await decide('put it right everywhere', page.getByRole('button', { name: /^Put right all 3/ }).click());
  await waitUntilSaved(page);
  await look(page, 'correction');
  await page.getByRole('link', { name: 'See all that would change' }).click();
  for (const name of ['Captions', 'Kits by size', 'Description text', 'Lesson page', 'Printed sheet'])
    await page.getByRole('heading', { name, exact: true }).waitFor();
  await look(page, 'all-that-would-change');
  decisions.push('publish');
  await publish(page, bench, 2);
  console.log(`${decisions.length} decisions: ${decisions.join('; ')}`);
  expect(decisions.length).toBeLessThan(10);

  // What pupils have now, and what they had.
  const [second, first] = await Promise.all(
    (await listRevisions(app.db, rows.lessonId)).map(({ id }) => getRevision(app.db, id)),
  );
  if (!first || !second) throw new Error('there are two revisions');
  expect([first.cues.length, first.content.chapters.length]).toEqual([300, 12]);
  const start = (id: string): number => second.cues.find((cue) => cue.id === id)?.startMs ?? -1;
  for (const [seconds, shift] of [
    [SECONDS / 5, TRIM],
    [SECONDS - 2, TRIM + CUT[1] - CUT[0] - 1],
  ] as const) {
    const cue = cues[cueAt(seconds)];
    expect(Math.abs(start(cue?.id ?? '') - ((cue?.startMs ?? 0) - shift * 1000))).toBeLessThan(60);
  }
  const text = (k: number) => second.cues.find(({ id }) => id === cues[k]?.id)?.text;
  expect(text(COUNTED)).toBe('Pick up three copper rings.');
  const saidAgain = second.cues.filter((cue) => cue.text === 'This wire is 18 SWG.');
  expect(saidAgain).toEqual([
    { ...cues[RETAKEN], text: 'This wire is 18 SWG.', startMs: newMs + 500, endMs: newMs + 4_500 },
  ]);
  expect(second.content.repeat[0]).toMatchObject({
    sentence: 'Pick up three copper rings.',
    carries: [{ ringKind: 'copper', count: 3 }],
  });
  expect(second.kits[0]?.rings[0]?.closed).toBe(((first.kits[0]?.rings[0]?.closed ?? 0) * 3) / 2);
  expect(second.content.corrections).toMatchObject([
    { revision: 2, kitsChange: true, effects: { length: 3 } },
  ]);
  // Published pages and files: the old revision has its own recording and captions still.
  for (const { number, content, cues: published, recording } of [first, second]) {
    const captions = await page.request.get(`${lessonPage}/revision/${number}/captions.vtt`);
    const durationMs = recording?.durationMs ?? null;
    expect(await captions.text()).toBe(
      writeTextFile('captions.vtt', { content, cues: published, durationMs }),
    );
    const range = { headers: { range: 'bytes=0-9' } };
    expect((await page.request.get(`${lessonPage}/revision/${number}/recording`, range)).status()).toBe(206);
  }
  expect(first.recording?.id).not.toBe(second.recording?.id);
  const shown = await (await page.request.get(lessonPage)).text();
  expect(shown).toContain('Put right with it: one cue, one step, one count.');

  // Who holds a kit is told what to add; the seller, which batches that concerns and what to pick for them.
  await page.goto(`${bench}/kit`);
  await page.getByText('Revision 2 changes the kits of 2 batches.').waitFor();
  await look(page, 'kits-affected');
  for (const [k, { title, address }] of sold.entries()) {
    const [before, now] = [first, second].map(
      ({ kits }) => kits[k + 1]?.rings.find(({ ringKind }) => ringKind === 'copper')?.issued ?? 0,
    ) as [number, number];
    const more = now - before;
    expect(more).toBeGreaterThan(0);
    await holder.goto(address);
    expect(await holder.getByRole('region', { name: 'What differs now' }).innerText()).toContain(
      `Add ${more} × copper`,
    );
    expect(await holder.getByRole('row', { name: /^copper/ }).innerText()).toMatch(
      new RegExp(`^copper\\s+${before}\\s+${now}\\s`),
    );
    const since = await holder.getByRole('region', { name: /^Corrected since/ }).innerText();
    expect(since).toContain('three copper rings');
    await look(holder, `holder-${k + 1}`);
    const batch = batchOf(page, title);
    await batch.getByText('Revision 2 changes these kits.').waitFor();
    const list = await download(page, batch.getByRole('link', { name: 'Picking list of the difference' }));
    expect(await pdfText(list)).toMatch(new RegExp(`copper.*put in ${more}`));
  }

  // She thinks better of the recording: everything stands where it stood, the correction too.
  await page.goto(`${bench}/bring-in`);
  await page.getByText('Go back to the recording before this one').click();
  await look(page, 'go-back');
  await page.getByRole('button', { name: 'Go back to the former recording' }).click();
  await page.getByRole('link', { name: 'Look at both and decide' }).waitFor();
  const draft = await findDraft(app.db, rows);
  const times = (list: readonly { readonly id: string; readonly startMs: number }[] | undefined) =>
    list?.map(({ id, startMs }) => [id, startMs]);
  expect(times(draft?.cues)).toEqual(times(first.cues));
  expect(times(draft?.content.chapters)).toEqual(times(first.content.chapters));
  expect(draft?.cues.find(({ id }) => id === cues[COUNTED]?.id)?.text).toBe('Pick up three copper rings.');
});
