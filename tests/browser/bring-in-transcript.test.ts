/** A transcript is brought in, looked at, taken, undone, and handed out again, in a real browser. */

import type { Page } from 'playwright-core';
import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { writeChaptersWebVtt } from '#lib/chapters/chapters-webvtt.ts';
import { writeWebVtt } from '#lib/transcript/webvtt-write.ts';
import { someCues } from '#tests/support/a-lesson.ts';
import { aReadyRecording } from '#tests/support/a-ready-recording.ts';
import { sharedApp, type TestApp } from '#tests/support/app.ts';
import { openBrowser, type TestBrowser } from '#tests/support/chromium.ts';
import { type SignedIn, signedInOwner } from '#tests/support/signed-in.ts';

let app: TestApp;
let browser: TestBrowser;
let owner: SignedIn;
let page: Page;

beforeAll(async () => {
  app = await sharedApp();
  browser = await openBrowser(app.address);
});

beforeEach(async () => {
  owner = await signedInOwner(app);
  page = await browser.open();
  await page.context().addCookies(owner.cookies.map((cookie) => ({ ...cookie, url: app.address })));
});

const WEBVTT = `WEBVTT

NOTE made by hand

00:00.000 --> 00:02.000
<i>Open</i> two <b>rings</b> & wait

00:02.000 --> 00:04.500
Close them both.
`;

const choose = (name: string, bytes: Buffer) =>
  page.getByLabel('A transcript file').setInputFiles({ name, mimeType: 'text/plain', buffer: bytes });

const cuesKept = () =>
  app.db.cue.findMany({
    where: { lessonId: owner.lessonId },
    orderBy: { startMs: 'asc' },
    select: { text: true },
  });

describe('bringing a transcript in', () => {
  test('shows what was understood and what was lost, takes the cues, and takes them back', async () => {
    await page.goto(`${owner.bench}/bring-in`);
    await choose('lesson.vtt', Buffer.from(WEBVTT));
    await page.getByRole('heading', { name: 'What was understood of lesson.vtt' }).waitFor();
    // The same stands, folded away, with the kept file further up.
    await page.getByText('Notes between the cues (line 3)').last().click();
    await page.getByText('made by hand').last().waitFor();
    await page.getByRole('cell', { name: 'Open two rings & wait' }).waitFor();
    expect(await cuesKept()).toEqual([]);

    await page.getByRole('button', { name: 'Take these 2 cues' }).click();
    await page.getByText('2 cues taken into the lesson.').waitFor();
    await expect.poll(cuesKept).toEqual([{ text: 'Open two rings & wait' }, { text: 'Close them both.' }]);

    await page.getByRole('button', { name: 'Undo bringing in lesson.vtt' }).last().click();
    await expect.poll(cuesKept).toEqual([]);
  });

  test('takes a script without times, which is then brought right by ear', async () => {
    await aReadyRecording(app.db, app.files, owner.lessonId, 90_000);
    await page.goto(`${owner.bench}/bring-in`);
    const script = Array.from(
      { length: 20 },
      (_, at) => `This is sentence number ${at} of what is said here.`,
    );
    await choose('script.txt', Buffer.from(script.join('\n')));
    await page.getByText('There are no times in it.').waitFor();
    await page.getByRole('button', { name: 'Take these 20 cues' }).click();
    await expect.poll(async () => (await cuesKept()).length).toBe(20);

    await page.goto(`${owner.bench}/transcript`);
    const place = page.getByRole('region', { name: 'These times are approximate' });
    await place.getByText('This is sentence number 0').waitFor();
    await page.getByRole('slider', { name: 'Place in the recording' }).fill('5');
    await place.getByRole('button', { name: 'It begins now' }).click();
    await place.getByText('begins at 0:05').waitFor();
    await place.getByText('This is sentence number 8').waitFor();
    const times = () =>
      app.db.cue.findMany({
        where: { lessonId: owner.lessonId },
        orderBy: { startMs: 'asc' },
        select: { startMs: true, timing: true },
      });
    await expect.poll(async () => (await times())[0]).toEqual({ startMs: 5_000, timing: 'start heard' });
    expect((await times()).slice(1).every(({ timing }) => timing === 'approximate')).toBe(true);
    await place.getByText('One start heard so far').click();
    await place.getByRole('button', { name: 'Take the times as they are' }).click();
    await expect.poll(async () => (await times()).every(({ timing }) => timing === null)).toBe(true);
  });

  test('finds chapters in a pasted description, and takes them', async () => {
    await page.goto(`${owner.bench}/bring-in`);
    await page.getByLabel('Lines of a description').fill('A lesson\n0:00 Hello\n1:10 The repeat unit\nBye');
    await page.getByRole('button', { name: 'Find chapters in it' }).click();
    await page.getByText('Text that has no time (2 places)').waitFor();
    await page.getByRole('button', { name: 'Take these 2 chapters' }).click();
    const chapters = async () => {
      const { content } = await app.db.lesson.findUniqueOrThrow({ where: { id: owner.lessonId } });
      return (content as { chapters: { title: string; kind: string; startMs: number }[] }).chapters.map(
        ({ title, kind, startMs }) => [title, kind, startMs],
      );
    };
    await expect.poll(chapters).toEqual([
      ['Hello', 'opening', 0],
      ['The repeat unit', 'repeat unit', 70_000],
    ]);
  });

  test('a recogniser’s long cues are broken for readers, no word changed', async () => {
    const said =
      'Take the eighteen gauge wire and wind it around the mandrel, about twenty turns, then cut each ring.';
    await app.db.cue.create({
      data: { id: 'long', lessonId: owner.lessonId, startMs: 0, endMs: 9_000, text: said, settings: '' },
    });
    await page.goto(`${owner.bench}/transcript`);
    await page.getByRole('button', { name: 'Captions' }).click();
    await page.getByText('1 of 1 cues are hard to read').waitFor();
    await page.getByRole('button', { name: 'Break and time anew' }).click();
    await page.getByText('every word is as it was').waitFor();
    await expect.poll(async () => (await cuesKept()).length).toBeGreaterThan(1);
    expect((await cuesKept()).map(({ text }) => text.replaceAll('\n', ' ')).join(' ')).toBe(said);
  });

  test('says how many cues it would replace', async () => {
    await app.db.cue.createMany({
      data: someCues(3).map((cue) => ({ ...cue, timing: null, lessonId: owner.lessonId })),
    });
    await page.goto(`${owner.bench}/bring-in`);
    await choose('lesson.vtt', Buffer.from(WEBVTT));
    await page.getByText('The lesson has 3 cues now').waitFor();
    await page.getByRole('button', { name: 'Replace with these 2 cues' }).click();
    await expect.poll(async () => (await cuesKept()).length).toBe(2);
  });

  test('asks which letters read right, by keys alone', async () => {
    await page.goto(`${owner.bench}/bring-in`);
    await choose(
      'alt.srt',
      Buffer.from('1\n00:00:01,000 --> 00:00:02,000\nÖffne den Ring für sie\n', 'latin1'),
    );
    const right = page.getByRole('radio', {
      name: /Öffne den Ring für sie Western European \(Windows-1252\)/,
    });
    await right.focus();
    await page.keyboard.press('Space');
    await page.keyboard.press('Enter');
    await page.getByRole('cell', { name: 'Öffne den Ring für sie' }).waitFor();
  });

  test('refuses what is no transcript, and says what to do', async () => {
    await page.goto(`${owner.bench}/bring-in`);
    await choose('notes.pdf', Buffer.from('%PDF-1.7'));
    await page.getByText('This is a PDF. Copy its text and paste it below').waitFor();
    browser.forgive(/422/);
    await page.getByText('Paste the text instead').click();
    await page.getByLabel('Text, with times or without').fill('[0:00] Open it.\n\n[0:05] Close it.');
    await page.getByRole('button', { name: 'Read this text' }).click();
    await page.getByText('Text with time stamps').waitFor();
  });
});

describe('files of the draft', () => {
  /** What the browser's own track makes of a file. */
  async function readByTrack(kind: 'captions' | 'chapters', written: string) {
    await page.goto(app.address);
    return page.evaluate(
      async ([kind, file]) => {
        const video = document.createElement('video');
        const track = document.createElement('track');
        track.kind = kind;
        track.default = true;
        track.src = URL.createObjectURL(new Blob([file], { type: 'text/vtt' }));
        video.append(track);
        document.body.append(video);
        track.track.mode = 'hidden';
        await new Promise((resolve, reject) => {
          track.onload = resolve;
          track.onerror = reject;
        });
        return Array.from(track.track.cues ?? [], (cue) => ({
          startMs: Math.round(cue.startTime * 1000),
          endMs: Math.round(cue.endTime * 1000),
          text: (cue as VTTCue).getCueAsHTML().textContent,
        }));
      },
      [kind, written] as const,
    );
  }

  test('the browser’s own track reads our captions as the cues that they were made of', async () => {
    const cues = someCues(40, (at) =>
      at % 3 === 0 ? `<b>${at}</b> & more -->` : `Ring ${at}\nand its pair`,
    );
    const read = await readByTrack('captions', writeWebVtt(cues));
    expect(read).toEqual(cues.map(({ startMs, endMs, text }) => ({ startMs, endMs, text })));
  });

  test('and our chapters, each up to the next and the last to the end', async () => {
    const titles = ['Rings & <wire>', 'The repeat --> again', 'Clasp'];
    const chapters = titles.map((title, at) => ({
      id: `chapter-${at}`,
      kind: 'setup' as const,
      title,
      startMs: at * 61_001,
    }));
    const read = await readByTrack('chapters', writeChaptersWebVtt(chapters, 200_000));
    expect(read).toEqual(
      titles.map((text, at) => ({
        startMs: at * 61_001,
        endMs: at === 2 ? 200_000 : (at + 1) * 61_001,
        text,
      })),
    );
  });

  test.each([
    ['captions.vtt', 'text/vtt', 'WEBVTT\n\n00:00:00.000 --> 00:00:02.000\nSentence 1.\n'],
    ['captions.srt', 'application/x-subrip', '1\n00:00:00,000 --> 00:00:02,000\nSentence 1.\n'],
    ['chapters.vtt', 'text/vtt', 'WEBVTT\n'],
    [
      'chapters.json',
      'application/json+chapters',
      '{\n  "version": "1.2.0",\n  "title": "Box chain in two colours",\n  "chapters": []\n}\n',
    ],
    ['chapters.ffmetadata', 'text/plain', ';FFMETADATA1\ntitle=Box chain in two colours\n'],
    ['transcript.txt', 'text/plain', '[0:00] Sentence 1.\n'],
  ])('%s is saved as a file', async (name, type, text) => {
    await app.db.cue.createMany({
      data: someCues(1).map((cue) => ({ ...cue, timing: null, lessonId: owner.lessonId })),
    });
    const answer = await fetch(`${owner.api}/exports/${name}`, { headers: { cookie: owner.cookie } });
    expect(answer.headers.get('content-type')).toBe(`${type}; charset=utf-8`);
    expect(answer.headers.get('content-disposition')).toMatch(/^attachment/);
    expect(await answer.text()).toBe(text);
  });

  test('a file that was brought in comes back byte by byte, under its name', async () => {
    const bytes = Buffer.from(WEBVTT.replace('both', 'b\u00f6th'), 'latin1');
    const listed = page.getByRole('link', { name: /Übung "1"\.vtt$/ });
    const sent = await fetch(`${owner.api}/transcript-files`, {
      method: 'POST',
      headers: {
        cookie: owner.cookie,
        origin: app.address,
        'x-file-name': encodeURIComponent('../Übung "1".vtt'),
      },
      body: bytes,
    });
    const { fileId } = (await sent.json()) as { fileId: string };
    const back = await fetch(`${owner.api}/transcript-files/${fileId}`, {
      headers: { cookie: owner.cookie },
    });
    expect(Buffer.from(await back.arrayBuffer()).equals(bytes)).toBe(true);
    expect(back.headers.get('content-disposition')).toContain("filename*=UTF-8''%C3%9Cbung%20%221%22.vtt");
    expect(back.headers.get('x-content-type-options')).toBe('nosniff');
    await page.goto(`${owner.bench}/bring-in`);
    await page.getByText('The file that was brought in').click();
    expect(await listed.getAttribute('href')).toContain(fileId);
  });
});
