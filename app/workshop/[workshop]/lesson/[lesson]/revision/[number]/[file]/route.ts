/** A revision's captions, chapters and transcript as files in open formats. */
import { answerText, FROZEN } from '#app/http/answer-text.ts';
import { fault } from '#app/http/with-member.ts';
import { type RevisionParams, withRevision } from '#app/http/with-revision.ts';
import { isTextFile, TEXT_FILES, writeTextFile } from '#lib/lesson/text-files.ts';

type Params = RevisionParams & { file: string };

export const GET = withRevision<Params>((request, { content, cues, recording }, { file }) =>
  isTextFile(file)
    ? answerText(request, writeTextFile(file, { content, cues, durationMs: recording?.durationMs ?? null }), {
        type: `${TEXT_FILES[file]}; charset=utf-8`,
        cache: FROZEN,
      })
    : fault(404, 'not-found'),
);
