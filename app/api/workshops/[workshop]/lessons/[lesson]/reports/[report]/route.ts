/** Settles a pupil's report, by a note or by the correction that was made of it, or takes it out. */
import { z } from 'zod';
import { readBody } from '#app/http/read-body.ts';
import { fault } from '#app/http/with-member.ts';
import { type LessonParams, withLesson } from '#app/http/with-recording.ts';
import { openBench } from '#lib/bench/bench.ts';
import { database } from '#lib/data/database.ts';
import { removeReport, settleReport } from '#lib/data/reports.ts';
import { LONGEST_REPORT } from '#lib/lesson/report.ts';
import { thingId } from '#lib/thing.ts';

type Params = LessonParams & { report: string };

const settled = z.union([
  z.object({ answer: z.string().trim().min(1).max(LONGEST_REPORT) }),
  z.object({ correctionId: thingId }),
]);

export const PATCH = withLesson<Params>('editor', async (request, lesson, { report }) => {
  const read = await readBody(request, settled);
  if (!read.ok) return read.refusal;
  const { db, now } = openBench();
  const known = await settleReport(db, lesson.id, report, { ...read.value, settledAt: now() });
  return known ? new Response(null, { status: 204 }) : fault(404, 'not-found');
});

export const DELETE = withLesson<Params>('editor', async (_request, lesson, { report }) => {
  await removeReport(database(), lesson.id, report);
  return new Response(null, { status: 204 });
});
