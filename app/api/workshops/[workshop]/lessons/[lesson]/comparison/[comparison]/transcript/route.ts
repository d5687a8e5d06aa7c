/** The transcript of another lesson that a comparison may place on this one's recording. */
import { fault, withMember } from '#app/http/with-member.ts';
import { openBench } from '#lib/bench/bench.ts';
import { readOtherTranscript } from '#lib/bench/place-other-transcript.ts';

type Params = { workshop: string; lesson: string; comparison: string };

export const GET = withMember<Params>('viewer', async (_request, at, params) => {
  const read = await readOtherTranscript(openBench(), at, {
    lessonId: params.lesson,
    comparisonId: params.comparison,
  });
  return read.ok
    ? Response.json(read.value, { headers: { 'cache-control': 'no-store' } })
    : fault(read.fault.code === 'not-found' ? 404 : 409, read.fault.code);
});
