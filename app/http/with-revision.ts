/** Wraps the public files of a revision: whoever asks, the revision has to be published. */
import { database } from '#lib/data/database.ts';
import { findPublicLesson, getRevision } from '#lib/data/revisions.ts';
import type { Revision } from '#lib/lesson/revision.ts';
import { withPublic } from './moved-or-ended.ts';
import { fault } from './with-member.ts';

export interface RevisionParams {
  workshop: string;
  lesson: string;
  number: string;
}

/** A revision's number as it stands in an address: no sign, no leading nought; null for anything else. */
export const numberOfAddress = (text: string): number | null =>
  /^[1-9]\d{0,5}$/.test(text) ? Number(text) : null;

export const withRevision = <P extends RevisionParams>(
  handle: (
    request: Request,
    revision: Revision,
    params: P,
    revisionId: string,
    /** Number of the lesson's latest revision. */
    latest: number,
  ) => Response | Promise<Response>,
) =>
  withPublic<P>(async (request, params) => {
    const lesson = await findPublicLesson(database(), params.workshop, params.lesson);
    const number = numberOfAddress(params.number);
    const mark = lesson?.revisions.find((revision) => revision.number === number);
    if (!mark) return fault(404, 'not-found');
    const latest = lesson?.revisions[0]?.number ?? mark.number;
    return handle(request, await getRevision(database(), mark.id), params, mark.id, latest);
  });
