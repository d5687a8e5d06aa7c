/** Wraps what is seen under a secret address: a withdrawn one is answered as one that never was. */
import { findPreviewable, type Previewable } from '#lib/access/preview-address.ts';
import { frozenRecordingOf } from '#lib/bench/frozen-recording.ts';
import { readPreview } from '#lib/bench/read-preview.ts';
import { database } from '#lib/data/database.ts';
import type { FrozenRecording, Revision } from '#lib/lesson/revision.ts';
import { fault, withAnyone } from './with-member.ts';

export type PreviewParams = { token: string };

/** The draft that an address leads to, as it would be published; null for an unknown address. */
export async function previewOf(
  token: string,
): Promise<{ readonly of: Previewable; readonly revision: Revision } | null> {
  const of = await findPreviewable(database(), token);
  const revision =
    of &&
    (await readPreview(database(), {
      workshop: of.workshop,
      lessonId: of.lessonId,
      number: (of.published ?? 0) + 1,
    }));
  return of && revision ? { of, revision } : null;
}

/** For files that no draft need be read for: players ask for a recording in many parts. */
export const withPreviewRecording = (
  handle: (request: Request, recording: FrozenRecording) => Response | Promise<Response>,
) =>
  withAnyone<PreviewParams>(async (request, { token }) => {
    const of = await findPreviewable(database(), token);
    const recording = of && (await frozenRecordingOf(database(), of.lessonId));
    return recording ? handle(request, recording) : fault(404, 'not-found');
  });

export const withPreview = <P extends PreviewParams>(
  handle: (request: Request, revision: Revision, params: P) => Response | Promise<Response>,
) =>
  withAnyone<P>(async (request, params) => {
    const found = await previewOf(params.token);
    return found ? handle(request, found.revision, params) : fault(404, 'not-found');
  });

/** Nobody keeps what a secret address showed. */
export const NEVER_KEPT = 'no-store';
