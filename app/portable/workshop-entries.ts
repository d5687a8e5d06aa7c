/** The files of a whole workshop's portable copy: one folder a lesson, and what belongs to none. */
import { gatherLesson } from '#lib/bench/gather-copy.ts';
import { gatherWorkshop } from '#lib/bench/gather-workshop.ts';
import type { CopyEntry } from '#lib/copies/write-zip.ts';
import type { Database } from '#lib/data/database.ts';
import type { Pictured } from '#lib/lesson/pictured.ts';
import {
  type PortableWorkshop,
  portableWorkshopSchema,
  WORKSHOP_FILE,
  WORKSHOP_SCHEMA_FILE,
} from '#lib/portable/portable-workshop.ts';
import type { Storage } from '#lib/storage/storage.ts';
import { below, lessonEntries } from './lesson-entries.ts';
import { standingPage } from './lesson-file.ts';
import { each, html, when } from './markup.ts';

interface From {
  /** The lesson with what is known of its own sequences. */
  readonly pictured: (content: Pictured) => Promise<Pictured>;
  readonly db: Database;
  readonly storage: Storage;
  readonly workshop: { readonly id: string; readonly name: string; readonly slug: string };
}

/** One lesson is gathered at a time: a workshop's transcripts need not be in memory together. */
export async function* workshopEntries({ pictured, db, storage, workshop }: From): AsyncGenerator<CopyEntry> {
  const { document, lessons } = await gatherWorkshop(db, workshop.id);
  yield json(WORKSHOP_FILE, document);
  yield json(WORKSHOP_SCHEMA_FILE, portableWorkshopSchema());
  const listed: Listed[] = [];
  for (const { id, folder } of lessons) {
    const copy = await gatherLesson(
      { db, storage },
      { workshop, lessonId: id, withDraft: true, withBench: true },
    );
    // Deleted since it was listed.
    if (!copy) continue;
    listed.push({ folder, title: copy.shown.content.title, isDraft: copy.isDraft });
    yield* below(folder, lessonEntries(copy, await pictured(copy.shown.content)));
  }
  yield { path: 'index.html', content: async () => Buffer.from(workshopFile(document, listed)) };
}

interface Listed {
  readonly folder: string;
  readonly title: string;
  readonly isDraft: boolean;
}

const workshopFile = (workshop: PortableWorkshop, lessons: readonly Listed[]): string =>
  standingPage(
    workshop.language,
    workshop.name,
    html`<main>
<h1>${workshop.name}</h1>
<div class="summary">${each(
      workshop.about.split(/\n{2,}/).filter((text) => text.trim() !== ''),
      (text) => html`<p>${text}</p>`,
    )}</div>
<section aria-labelledby="lessons"><h2 id="lessons" lang="en">Lessons</h2>
${when(lessons.length === 0, () => html`<p lang="en">There is none yet.</p>`)}
<ul class="items">${each(
      lessons,
      ({ folder, title, isDraft }) =>
        html`<li><a href="${`${folder}/index.html`}">${title.trim() === '' ? 'Lesson without a title' : title}</a>${isDraft ? html` <span class="soft" lang="en">(draft)</span>` : null}</li>`,
    )}</ul></section>
<p class="files" lang="en">Stock, glossary and wording stand in <a href="workshop.json">workshop.json</a>, described by <a href="workshop.schema.json">its schema</a>.</p>
</main>`,
  );

const json = (path: string, value: unknown): CopyEntry => ({
  path,
  content: async () => Buffer.from(`${JSON.stringify(value, null, 2)}\n`),
});
