/** Walks about the transcript screen as a teacher does. */
import { randomUUID } from 'node:crypto';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { saveDraft } from '#lib/bench/save-draft.ts';
import type { Database } from '#lib/data/database.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { aLesson, type LessonRows } from './a-lesson.ts';
import type { TestApp } from './app.ts';
import { signIn } from './sign-in.ts';

export interface OpenedLesson extends LessonRows {
  /** Address of the transcript screen. */
  readonly address: string;
}

/** A lesson with these cues, whose owner can sign in. */
export async function aMarkedLesson(app: TestApp, cues: readonly Cue[]): Promise<OpenedLesson> {
  const rows = await aLesson(app.db);
  await saveAs(app.db, rows, [...cues]);
  const { slug } = await app.db.workshop.findUniqueOrThrow({ where: { id: rows.workshopId } });
  return { ...rows, address: `${app.address}/bench/${slug}/lessons/${rows.lessonId}/transcript` };
}

async function saveAs(db: Database, rows: LessonRows, put: Cue[]): Promise<void> {
  const bench = { db, now: () => new Date(), newId: randomUUID };
  const changes = [{ kind: 'cues' as const, put, remove: [] }];
  const saved = await saveDraft(bench, { ...rows, saveId: randomUUID(), baseVersion: 1, changes });
  if (!saved.ok) throw new Error(saved.fault.code);
}

/** Signs the person in and opens the screen. */
export async function openTranscript(
  page: Page,
  app: TestApp,
  lesson: OpenedLesson,
  userId = lesson.userId,
): Promise<void> {
  await signIn(page, app.address, app.db, userId);
  await page.goto(lesson.address);
  await page.locator('[data-text]').first().waitFor();
}

/** Waits until the screen says that all is saved. */
export const waitUntilSaved = (page: Page): Promise<void> =>
  page.locator('[data-testid="save-state"][data-state="saved"]').waitFor();

export const textOf = (page: Page, cueId: string): Promise<string> =>
  page.locator(`[data-text="${cueId}"]`).innerText();

/** Presses Tab (or Shift+Tab) until what has the focus fits the selector; fails after 60. */
export async function tabTo(page: Page, selector: string, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  for (let presses = 0; presses < 60; presses += 1) {
    if (await page.evaluate((wanted) => document.activeElement?.matches(wanted), selector)) return;
    await page.keyboard.press(key);
  }
  expect.fail(`Tab never came to ${selector}`);
}
