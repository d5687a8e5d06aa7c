/** Captions, chapters and transcript of a draft under a secret address. */
import { answerText } from '#app/http/answer-text.ts';
import { fault } from '#app/http/with-member.ts';
import { NEVER_KEPT, type PreviewParams, withPreview } from '#app/http/with-preview.ts';
import { isTextFile, TEXT_FILES, writeTextFile } from '#lib/lesson/text-files.ts';

export const GET = withPreview<PreviewParams & { file: string }>(
  (request, { content, cues, recording }, { file }) =>
    isTextFile(file)
      ? answerText(
          request,
          writeTextFile(file, { content, cues, durationMs: recording?.durationMs ?? null }),
          {
            type: `${TEXT_FILES[file]}; charset=utf-8`,
            cache: NEVER_KEPT,
          },
        )
      : fault(404, 'not-found'),
);
