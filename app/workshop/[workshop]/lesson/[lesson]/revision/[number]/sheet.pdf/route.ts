/** The lesson on paper, for everybody's sizes or, with `?measure=`, for the pupil's own. */
import { answerText } from '#app/http/answer-text.ts';
import { fault } from '#app/http/with-member.ts';
import { withRevision } from '#app/http/with-revision.ts';
import { lessonPath, momentLink, revisionPath } from '#app/lesson-page/page-addresses.ts';
import { lessonSheet, SHEET_PAGES, SHEET_SIZES } from '#app/paper/lesson-sheet.ts';
import { makePdfWithin } from '#app/paper/make-pdf.ts';
import { environment } from '#lib/config/environment.ts';
import { kitFor } from '#lib/kit/kit-list.ts';
import { bodyMmOf, measureOfQuery } from '#lib/lesson/asked-measure.ts';

export const GET = withRevision(async (request, revision, { workshop, lesson }, _id, latest) => {
  const { content, number } = revision;
  const query = new URL(request.url).searchParams;
  const asked = query.get('measure') ? measureOfQuery(Object.fromEntries(query), content) : null;
  const body = asked && bodyMmOf(asked, content.kitRules);
  if (body && !body.ok) return fault(422, body.fault.code);
  const kit = body && kitFor(content, body.value);
  if (kit && !kit.ok) return fault(422, kit.fault.code);
  const site = environment().BENCHLEAF_ADDRESS;
  // A code plays the recording that its moment was taken from, whatever is published later; that page leads on to the latest.
  const player = `${site}${revisionPath(workshop, lesson, number)}`;
  const from = {
    lesson: {
      title: content.title,
      weave: content.weave,
      workshop: revision.workshop.name,
      language: content.language,
      address: `${site}${lessonPath(workshop, lesson)}`,
      revision: number,
      latest,
      at: new Date(revision.publishedAt),
    },
    revision,
    kit: kit?.value ?? null,
    playsAt: revision.recording === null ? null : (atMs: number) => momentLink(player, atMs),
  };
  const sheet = await makePdfWithin(SHEET_PAGES, SHEET_SIZES, (size) => lessonSheet(from, size));
  // A revision never changes, but how a sheet is set may.
  return answerText(request, sheet, { type: 'application/pdf', cache: 'public, max-age=3600' });
});
