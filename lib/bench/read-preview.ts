/** The draft as the document that publishing it now would freeze. Nothing is written, no picture is taken. */
import type { Database } from '#lib/data/database.ts';
import { findExplainedTerms } from '#lib/data/glossary.ts';
import { findDraft } from '#lib/data/lessons.ts';
import { getRevision, listRevisions } from '#lib/data/revisions.ts';
import { pageSteps } from '#lib/lesson/page-steps.ts';
import { freezeRevision, type Revision } from '#lib/lesson/revision.ts';
import { frozenRecordingOf } from './frozen-recording.ts';

interface Previewed {
  readonly workshop: { readonly id: string; readonly name: string; readonly slug: string };
  readonly lessonId: string;
  /** The number that it would get. */
  readonly number: number;
  /** When it would be published; now where nobody says. */
  readonly at?: Date;
}

/** Null where the workshop has no such lesson. Still keys stand for moments; the bench serves stills by moment. */
export async function readPreview(db: Database, at: Previewed): Promise<Revision | null> {
  const draft = await findDraft(db, { workshopId: at.workshop.id, lessonId: at.lessonId });
  if (!draft) return null;
  const recording = await frozenRecordingOf(db, at.lessonId);
  const [last] = await listRevisions(db, at.lessonId);
  const moments = pageSteps(draft.content).flatMap(({ atMs }) =>
    atMs !== null && recording?.hasVideo && atMs < recording.durationMs ? [atMs] : [],
  );
  return freezeRevision({
    number: at.number,
    publishedAt: at.at ?? new Date(),
    workshop: at.workshop,
    content: draft.content,
    cues: draft.cues,
    recording,
    stillKeys: new Map(moments.map((atMs) => [atMs, `moment/${atMs}`])),
    terms: await findExplainedTerms(db, at.workshop.id),
    published: last ? (await getRevision(db, last.id)).content.corrections : [],
  });
}
