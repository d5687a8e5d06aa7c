/** The files of a portable copy that are made from its data: for people and for other programs. */
import { kitFile } from '#app/paper/kit-file.ts';
import { lessonSheet, SHEET_PAGES, SHEET_SIZES } from '#app/paper/lesson-sheet.ts';
import { makePdfWithin } from '#app/paper/make-pdf.ts';
import { oneOfMaking, picturesOf } from '#app/pictures/answer-picture.ts';
import type { LessonCopy } from '#lib/bench/gather-copy.ts';
import type { CopyEntry } from '#lib/copies/write-zip.ts';
import { kitFor } from '#lib/kit/kit-list.ts';
import { pictureTexts } from '#lib/lesson/lesson-pictures.ts';
import { pageSteps } from '#lib/lesson/page-steps.ts';
import type { Pictured } from '#lib/lesson/pictured.ts';
import { TEXT_FILES, type TextFile, writeTextFile } from '#lib/lesson/text-files.ts';
import { kitName } from './kit-part.ts';
import { drawnName, lessonFile } from './lesson-file.ts';

/**
 * Every file of one lesson: its page first, its recordings last.
 *
 * @param pictured its content with what is known of its own sequences
 */
export function lessonEntries(copy: LessonCopy, pictured: Pictured): readonly CopyEntry[] {
  const { shown, isDraft, revisions } = copy;
  const { content, cues, recording } = shown;
  const { pictures } = picturesOf(pictured, { roll: 0, side: 'front' });
  const texts = pictureTexts(content);
  const mirrored = (id: string): string => {
    const drawn = oneOfMaking(pictured, { of: id, as: 'picture', repeats: 1, isMirrored: true });
    return drawn && 'svg' in drawn ? drawn.svg : '';
  };
  const steps = pageSteps(content).filter(({ id }) => pictures[id] !== undefined);
  const kits = content.sizes.flatMap((size, index) => {
    const kit = kitFor(content, size.bodyMm);
    return kit.ok ? [{ index, kit: kit.value }] : [];
  });
  const page = lessonFile({
    revision: shown,
    isDraft,
    numbers: revisions.map(({ number }) => number),
    drawn: new Map(steps.map(({ id }) => [id, texts.get(id) ?? ''])),
    kits: new Set(kits.map(({ index }) => index)),
  });
  const told = {
    title: content.title,
    weave: content.weave,
    workshop: shown.workshop.name,
    language: content.language,
    address: null,
    revision: isDraft ? null : shown.number,
    // A draft has no day of its own, and its copy has the same bytes on every day.
    at: isDraft ? new Date(0) : new Date(shown.publishedAt),
  };
  return [
    text('index.html', page),
    ...(Object.keys(TEXT_FILES) as TextFile[])
      .filter((name) => (name.startsWith('chapters') ? content.chapters : cues).length > 0)
      .map((name) =>
        text(name, writeTextFile(name, { content, cues, durationMs: recording?.durationMs ?? null })),
      ),
    ...kits.flatMap(({ index, kit }) =>
      (['csv', 'json'] as const).map((ending) => ({
        path: kitName(index, ending),
        content: async () => bytesOf((await kitFile(`kit.${ending}`, told, kit)).body),
      })),
    ),
    ...steps.flatMap((step) => [
      text(drawnName(step), pictures[step.id]?.svg ?? ''),
      text(drawnName(step, 'mirrored'), mirrored(step.id)),
    ]),
    {
      path: 'sheet.pdf',
      content: () =>
        makePdfWithin(SHEET_PAGES, SHEET_SIZES, (size) =>
          // A code would lead to a site that may not be there any more.
          lessonSheet({ lesson: told, revision: shown, kit: null, playsAt: null }, size),
        ),
    },
    ...copy.entries,
  ];
}

const text = (path: string, content: string): CopyEntry => ({ path, content: async () => bytesOf(content) });

const bytesOf = (content: string | Uint8Array): Uint8Array =>
  typeof content === 'string' ? Buffer.from(content.toWellFormed()) : content;

/** The files below a folder. */
export const below = (folder: string, entries: readonly CopyEntry[]): readonly CopyEntry[] =>
  entries.map((entry) => ({ ...entry, path: `${folder}/${entry.path}` }));

/** Files that are there already, as a stream of them. */
export async function* inTurn(entries: readonly CopyEntry[]): AsyncGenerator<CopyEntry> {
  yield* entries;
}
