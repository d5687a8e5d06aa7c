/** Takes what a pupil reports from the lesson page: a plain form, answered by leading back to the page. */

import { withPublic } from '#app/http/moved-or-ended.ts';
import { placeOf } from '#app/http/place-of.ts';
import { readForm } from '#app/http/read-form.ts';
import { fault } from '#app/http/with-member.ts';
import { lessonPath, type Reported, reportedPath } from '#app/lesson-page/page-addresses.ts';
import { openBench } from '#lib/bench/bench.ts';
import { takeReport } from '#lib/bench/take-report.ts';
import { pupilReport } from '#lib/lesson/report.ts';

export const POST = withPublic<{ workshop: string; lesson: string }>(
  async (request, { workshop, lesson }) => {
    const form = await readForm(request);
    if (!form.ok) return form.refusal;
    const back = (reported: Reported): Response =>
      new Response(null, {
        status: 303,
        headers: {
          location: reportedPath(lessonPath(workshop, lesson), reported),
          'cache-control': 'no-store',
        },
      });
    const report = pupilReport.safeParse(form.fields);
    if (!report.success) return back('not-complete');
    const taken = await takeReport(openBench(), {
      workshop,
      lesson,
      report: report.data,
      place: placeOf(request),
    });
    if (taken.ok) return back('yes');
    return taken.fault.code === 'not-found' ? fault(404, 'not-found') : back('too-many');
  },
);
