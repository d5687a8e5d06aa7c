/** Decides about a new recording that was compared with the lesson's own. */
import { readBody } from '#app/http/read-body.ts';
import { fault, withMember } from '#app/http/with-member.ts';
import { openBench } from '#lib/bench/bench.ts';
import {
  type DecideRecordingFault,
  decideRecording,
  recordingDecision,
} from '#lib/bench/decide-recording.ts';

type Params = { workshop: string; lesson: string; comparison: string };

/** An edit list of thousands of edits. */
const MOST_BYTES = 4 * 1024 * 1024;

export const POST = withMember<Params>('editor', async (request, at, params) => {
  const body = await readBody(request, recordingDecision, MOST_BYTES);
  if (!body.ok) return body.refusal;
  const decided = await decideRecording(openBench(), {
    workshopId: at.workshop.id,
    lessonId: params.lesson,
    comparisonId: params.comparison,
    userId: at.caller.userId,
    decision: body.value,
  });
  return decided.ok
    ? Response.json(decided.value, { headers: { 'cache-control': 'no-store' } })
    : refuse(decided.fault);
});

function refuse(why: DecideRecordingFault): Response {
  const { code, ...facts } = why;
  switch (code) {
    case 'not-found':
      return fault(404, code);
    case 'list-not-valid':
      return fault(422, code);
    case 'decided-before':
    case 'draft-is-newer':
      return fault(409, code, facts);
  }
}
