/** A revision's captions, chapters and transcript as files in open formats, and its recording with both inside. */
import { answerText, FROZEN } from '#app/http/answer-text.ts';
import { serveStored } from '#app/http/serve-stored.ts';
import { fault } from '#app/http/with-member.ts';
import { type RevisionParams, withRevision } from '#app/http/with-revision.ts';
import { database } from '#lib/data/database.ts';
import { revisionFile } from '#lib/data/revision-files.ts';
import { isMadeFile, MADE_FILES } from '#lib/lesson/made-files.ts';
import { isTextFile, TEXT_FILES, writeTextFile } from '#lib/lesson/text-files.ts';

type Params = RevisionParams & { file: string };

const serve = withRevision<Params>(async (request, { content, cues, recording }, { file }, revisionId) => {
  if (isTextFile(file)) {
    const text = writeTextFile(file, { content, cues, durationMs: recording?.durationMs ?? null });
    return answerText(request, text, { type: `${TEXT_FILES[file]}; charset=utf-8`, cache: FROZEN });
  }
  const made = isMadeFile(file) ? await revisionFile(database(), { revisionId, name: file }) : null;
  return made?.state === 'ready'
    ? serveStored(request, made.storageKey, MADE_FILES[made.name], { cache: FROZEN })
    : fault(404, 'not-found');
});

export { serve as GET, serve as HEAD };
