import type { Metadata } from 'next';
import { cache } from 'react';
import { numberOfAddress } from '#app/http/with-revision.ts';
import { HeldKit } from '#app/lesson-page/held-kit.tsx';
import { headOfNothing, NothingHere } from '#app/lesson-page/nothing-here.tsx';
import { lessonPath } from '#app/lesson-page/page-addresses.ts';
import type { Query } from '#app/lesson-page/show-lesson.tsx';
import { readHeldKit } from '#lib/bench/read-held-kit.ts';
import { database } from '#lib/data/database.ts';
import { measureOfQuery } from '#lib/lesson/asked-measure.ts';

interface KitPageProps {
  readonly params: Promise<{ workshop: string; lesson: string; number: string }>;
  readonly searchParams: Promise<Query>;
}

const heldKit = cache(async (workshop: string, lesson: string, number: string) => {
  const wanted = numberOfAddress(number);
  return wanted === null ? null : readHeldKit(database(), workshop, lesson, wanted);
});

export async function generateMetadata({ params }: KitPageProps): Promise<Metadata> {
  const { workshop, lesson, number } = await params;
  const read = await heldKit(workshop, lesson, number);
  if (!read) return headOfNothing({ workshop, lesson, kit: number });
  return { title: `Your kit: ${read.latest.content.title}`, robots: { index: false } };
}

/** Where the code on a kit leads: what the kit is, and what differs by now. */
export default async function KitPage({ params, searchParams }: KitPageProps) {
  const { workshop, lesson, number } = await params;
  const read = await heldKit(workshop, lesson, number);
  if (!read) return <NothingHere wanted={{ workshop, lesson, kit: number }} />;
  const query = await searchParams;
  return (
    <HeldKit
      {...read}
      lesson={lessonPath(workshop, lesson)}
      asked={'measure' in query ? measureOfQuery(query, read.held.content) : null}
    />
  );
}
