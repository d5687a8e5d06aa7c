/** The draft of a lesson: read it whole, or save changes on a named version of it. */
import { readBody } from '#app/http/read-body.ts';
import { fault, withMember } from '#app/http/with-member.ts';
import { openBench } from '#lib/bench/bench.ts';
import { type SaveDraftFault, saveDraft, saveRequest } from '#lib/bench/save-draft.ts';
import { findDraft } from '#lib/data/lessons.ts';

type Params = { workshop: string; lesson: string };

// 20,000 cues of a sentence each, twice over.
const MOST_BYTES = 16 * 1024 * 1024;
const fresh = { headers: { 'cache-control': 'no-store' } };

export const GET = withMember<Params>('viewer', async (_request, at, params) => {
  const draft = await findDraft(openBench().db, { workshopId: at.workshop.id, lessonId: params.lesson });
  return draft ? Response.json(draft, fresh) : fault(404, 'not-found');
});

export const PATCH = withMember<Params>('editor', async (request, at, params) => {
  const body = await readBody(request, saveRequest, MOST_BYTES);
  if (!body.ok) return body.refusal;
  const saved = await saveDraft(openBench(), {
    ...body.value,
    workshopId: at.workshop.id,
    lessonId: params.lesson,
    userId: at.caller.userId,
  });
  return saved.ok ? Response.json(saved.value, fresh) : refuse(saved.fault, at.caller.userId);
});

function refuse(why: SaveDraftFault, callerId: string): Response {
  switch (why.code) {
    case 'not-found':
      return fault(404, why.code);
    case 'save-id-taken':
      return fault(409, why.code);
    case 'draft-is-newer':
      return fault(409, why.code, {
        newer: why.newer,
        // Other members are told by name; an id is nobody's business.
        saves: why.saves.map(({ userId, userName, ...save }) => ({
          ...save,
          by: userName,
          own: userId === callerId,
        })),
      });
    case 'changes-not-valid':
      return fault(422, why.code, { faults: why.faults });
  }
}
