/** A whole workshop as a folder of plain files: every lesson, stock, glossary, wording. */
import { answerZip } from '#app/http/answer-zip.ts';
import { withMember } from '#app/http/with-member.ts';
import { toBePictured } from '#app/pictures/own-shapes.ts';
import { below } from '#app/portable/lesson-entries.ts';
import { workshopEntries } from '#app/portable/workshop-entries.ts';
import { database } from '#lib/data/database.ts';
import { openStorage } from '#lib/storage/open-storage.ts';

export const GET = withMember<{ workshop: string }>('owner', async (_request, { workshop }) =>
  answerZip(
    inFolder(
      workshop.slug,
      workshopEntries({ pictured: toBePictured, db: database(), storage: openStorage(), workshop }),
    ),
    `${workshop.slug}.zip`,
  ),
);

async function* inFolder(folder: string, entries: ReturnType<typeof workshopEntries>): typeof entries {
  for await (const entry of entries) yield* below(folder, [entry]);
}
