/** Routes below a lesson's recordings: the lesson must be the workshop's, the recording the lesson's. */
import type { Role } from '#lib/access/caller.ts';
import { type OpenLesson, openLesson } from '#lib/bench/open-lesson.ts';
import { database } from '#lib/data/database.ts';
import {
  type CurrentRecording,
  findRecording,
  type Recording,
  readyRecording,
} from '#lib/data/recordings.ts';
import { fault, withMember } from './with-member.ts';

export type LessonParams = { workshop: string; lesson: string };
export type RecordingParams = LessonParams & { recording: string };

/** Wraps a route below one lesson. */
export const withLesson = <P extends LessonParams>(
  needed: Role,
  handle: (request: Request, lesson: OpenLesson, params: P) => Promise<Response>,
) =>
  withMember<P>(needed, async (request, at, params) => {
    const lesson = await openLesson(at, params.lesson);
    return lesson ? handle(request, lesson, params) : fault(404, 'not-found');
  });

/** Wraps a route of one recording, in whatever state. */
export const withRecording = <P extends RecordingParams>(
  needed: Role,
  handle: (request: Request, recording: Recording, params: P) => Promise<Response>,
) =>
  withLesson<P>(needed, async (request, lesson, params) => {
    const recording = await findRecording(database(), lesson.id, params.recording);
    return recording ? handle(request, recording, params) : fault(404, 'not-found');
  });

/** Wraps a route of what was made of a recording that was taken in. */
export const withReadyRecording = <P extends RecordingParams>(
  needed: Role,
  handle: (request: Request, recording: CurrentRecording, params: P) => Promise<Response>,
) =>
  withLesson<P>(needed, async (request, lesson, params) => {
    const recording = await readyRecording(database(), lesson.id, params.recording);
    return recording ? handle(request, recording, params) : fault(404, 'not-found');
  });
