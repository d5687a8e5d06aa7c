/** What the pages of a lesson answer where nothing is published: that it has ended, or that it never was there. */
import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { cache } from 'react';
import { numberOfAddress } from '#app/http/with-revision.ts';
import { EndedLesson } from '#app/lesson-page/ended-lesson.tsx';
import NothingHere from '#app/not-found.tsx';
import { database } from '#lib/data/database.ts';
import { findEndedLesson } from '#lib/data/ended-lessons.ts';

/** The lesson that stood at the address that is asked for, and the revision where it is that of a kit; Next tells this page no parameters. */
const ended = cache(async () => {
  const path = (await headers()).get('x-benchleaf-path') ?? '';
  const [, workshop, lesson, kit] =
    /^\/workshop\/([a-z0-9-]+)\/lesson\/([a-z0-9-]+)(?:\/kit\/(\w+))?/.exec(path) ?? [];
  const lessonEnded = workshop && lesson ? await findEndedLesson(database(), workshop, lesson) : null;
  return lessonEnded && { lesson: lessonEnded, kitOf: numberOfAddress(kit ?? '') };
});

export async function generateMetadata(): Promise<Metadata> {
  const found = await ended();
  if (!found) return { title: 'Nothing is here' };
  return { title: `${found.kitOf === null ? found.lesson.title : 'Your kit'}: this lesson has ended` };
}

export default async function NoLesson() {
  const found = await ended();
  return found ? <EndedLesson ended={found.lesson} kitOf={found.kitOf} /> : <NothingHere />;
}
