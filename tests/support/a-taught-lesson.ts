/** A complete lesson with a recording, and its publication without walking through the screens. */
import { randomUUID } from 'node:crypto';
import { publishLesson } from '#lib/bench/publish-lesson.ts';
import { aContent, aTranscript } from './a-content.ts';
import { aLesson, type LessonRows } from './a-lesson.ts';
import { aReadyRecording } from './a-ready-recording.ts';
import type { TestApp } from './app.ts';

export interface Taught extends LessonRows {
  readonly page: string;
  readonly bench: string;
}

/** A complete lesson with a recording, whose owner can sign in; nothing of it is published. */
export async function aTaughtLesson(app: TestApp, content = aContent(), cues = aTranscript): Promise<Taught> {
  const rows = await aLesson(app.db, { content });
  await aReadyRecording(app.db, app.files, rows.lessonId, 90_000);
  await app.db.cue.createMany({
    data: cues.map((cue) => ({ ...cue, timing: cue.timing ?? null, lessonId: rows.lessonId })),
  });
  return {
    ...rows,
    page: `${app.address}/workshop/w-${rows.workshopId}/lesson/l-${rows.lessonId}`,
    bench: `${app.address}/bench/w-${rows.workshopId}/lessons/${rows.lessonId}`,
  };
}

/** Publishes without a browser, and without pictures. */
export async function publishBehindTheScenes(app: TestApp, taught: Taught): Promise<void> {
  const { recordingId, version } = await app.db.lesson.findUniqueOrThrow({ where: { id: taught.lessonId } });
  const bench = { db: app.db, now: () => new Date(), newId: randomUUID };
  const recording = await app.db.recording.findUniqueOrThrow({ where: { id: recordingId ?? '' } });
  const published = await publishLesson(
    bench,
    {
      current: async () => ({
        id: recording.id,
        durationMs: 90_000,
        hasVideo: true,
        hasAudio: true,
        width: 160,
        height: 90,
        mediaType: 'video/mp4',
        mediaKey: recording.playableKey ?? '',
        posterKey: recording.posterKey,
      }),
      takeStill: async () => recording.posterKey,
      makeLater: async () => {},
    },
    {
      ...taught,
      requestId: randomUUID(),
      version,
      workshop: { name: 'Kettle Row Rings', slug: `w-${taught.workshopId}` },
    },
  );
  if (!published.ok) throw new Error(JSON.stringify(published.fault));
}
