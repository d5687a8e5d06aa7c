/** Answers with a lesson on paper, for everybody's sizes or, with `?measure=`, for a pupil's own. */
import { answerText } from '#app/http/answer-text.ts';
import { fault } from '#app/http/with-member.ts';
import { kitFor } from '#lib/kit/kit-list.ts';
import { bodyMmOf, measureOfQuery } from '#lib/lesson/asked-measure.ts';
import type { Revision } from '#lib/lesson/revision.ts';
import { sheetLessonOf } from './kit-sheet.ts';
import { lessonSheet, SHEET_PAGES, SHEET_SIZES } from './lesson-sheet.ts';
import { makePdfWithin } from './make-pdf.ts';

interface SheetPlaces {
  /** Whole address of the lesson page; null where there is none yet, or it is a secret. */
  readonly address: string | null;
  /** Whole address at which what is printed plays from a moment. */
  readonly playsAt: ((atMs: number) => string) | null;
  /** Number of the latest revision; left out for a draft. */
  readonly latest?: number;
  readonly cache: string;
}

/** @param number null for a draft */
export async function answerSheet(
  request: Request,
  revision: Revision,
  number: number | null,
  { address, playsAt, latest, cache }: SheetPlaces,
): Promise<Response> {
  const { content, recording } = revision;
  const query = new URL(request.url).searchParams;
  const asked = query.get('measure') ? measureOfQuery(Object.fromEntries(query), content) : null;
  const body = asked && bodyMmOf(asked, content.kitRules);
  if (body && !body.ok) return fault(422, body.fault.code);
  const kit = body && kitFor(content, body.value);
  if (kit && !kit.ok) return fault(422, kit.fault.code);
  const lesson = {
    ...sheetLessonOf(revision, address),
    revision: number,
    ...(latest === undefined ? {} : { latest }),
  };
  const from = { lesson, revision, kit: kit?.value ?? null, playsAt: recording === null ? null : playsAt };
  const sheet = await makePdfWithin(SHEET_PAGES, SHEET_SIZES, (size) => lessonSheet(from, size));
  return answerText(request, sheet, { type: 'application/pdf', cache });
}
