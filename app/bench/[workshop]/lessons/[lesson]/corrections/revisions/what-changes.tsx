/** All that differs between two states of a lesson, in everything that is given out of it. */
import { lessonPath } from '#app/lesson-page/page-addresses.ts';
import { kitSheet, sheetLessonOf } from '#app/paper/kit-sheet.ts';
import { sheetLines } from '#app/paper/sheet-lines.ts';
import { revisionChangeSentence } from '#app/words/revision-change.ts';
import { environment } from '#lib/config/environment.ts';
import { changedLines } from '#lib/description/changed-lines.ts';
import type { DescriptionSetup } from '#lib/description/description-setup.ts';
import { composeDescription } from '#lib/description/description-text.ts';
import { kitFor } from '#lib/kit/kit-list.ts';
import { pageLines } from '#lib/lesson/page-lines.ts';
import type { Revision } from '#lib/lesson/revision.ts';
import { revisionDifference } from '#lib/lesson/revision-difference.ts';
import { type CueChanges, cueChanges, kitChanges, textChanges } from '#lib/lesson/revision-texts.ts';
import { writeTextFile } from '#lib/lesson/text-files.ts';
import { KitChanges, LineChanges, TextChanges } from './difference.tsx';

interface WhatChangesProps {
  readonly older: Revision;
  readonly newer: Revision;
  readonly setup: DescriptionSetup;
  readonly lessonSlug: string;
}

export function WhatChanges({ older, newer, setup, lessonSlug }: WhatChangesProps) {
  const changes = revisionDifference(older, newer);
  const between = (write: (revision: Revision) => readonly string[]) =>
    changedLines(write(older).join('\n'), write(newer).join('\n'));
  const address = `${environment().BENCHLEAF_ADDRESS}${lessonPath(newer.workshop.slug, lessonSlug)}`;
  if (changes.length === 0) return <p>Nothing differs.</p>;
  return (
    <>
      <h4>In the public history</h4>
      <ul>
        {changes.map((change) => (
          <li key={`${change.part} ${change.how}`}>{revisionChangeSentence(change)}</li>
        ))}
      </ul>
      <TextChanges changes={textChanges(older, newer)} />
      <LineChanges
        of="Captions"
        note={cueWords(cueChanges(older, newer))}
        lines={between((revision) => [writeTextFile('captions.vtt', sourceOf(revision))])}
      />
      <KitChanges
        changes={kitChanges(older, newer)}
        before={older.content.currency}
        now={newer.content.currency}
      />
      <LineChanges
        of="Description text"
        lines={between(({ content, recording }) => [
          composeDescription({
            content,
            setup,
            lessonAddress: address,
            durationMs: recording?.durationMs ?? null,
            format: 'text',
          }).text,
        ])}
      />
      <LineChanges of="Lesson page" lines={between(pageLines)} />
      <LineChanges of="Printed sheet" lines={between((revision) => sheetsOf(revision, address))} />
    </>
  );
}

const sourceOf = ({ content, cues, recording }: Revision) => ({
  content,
  cues,
  durationMs: recording?.durationMs ?? null,
});

/** The sheet of every size; where it cannot be reckoned, none is printed. */
const sheetsOf = (revision: Revision, address: string): readonly string[] =>
  revision.content.sizes.flatMap(({ name, bodyMm }) => {
    const kit = kitFor(revision.content, bodyMm);
    if (!kit.ok) return [];
    return [`Size ${name}`, ...sheetLines(kitSheet(sheetLessonOf(revision, address), kit.value))];
  });

/** `3 cues in other words, 240 at another time.` */
function cueWords({ added, removed, reworded, moved }: CueChanges): string {
  const told = [
    [reworded, 'in other words'],
    [moved, 'at another time, word for word the same'],
    [added, 'new'],
    [removed, 'gone'],
  ] as const;
  const parts = told.filter(([count]) => count > 0).map(([count, how]) => `${count} ${how}`);
  return parts.length === 0 ? '' : `Cues: ${parts.join(', ')}.`;
}
