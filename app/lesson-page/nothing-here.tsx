/** What a public page says where it finds nothing, readable without script and with the right status. */
import type { Metadata } from 'next';
import { leadOn } from '#app/http/moved-or-ended.ts';
import { tellStatus } from '#app/http/told-status.ts';
import { numberOfAddress } from '#app/http/with-revision.ts';
import NotFound from '#app/not-found.tsx';
import { database } from '#lib/data/database.ts';
import { findEndedLesson } from '#lib/data/ended-lessons.ts';
import { EndedLesson } from './ended-lesson.tsx';

interface Wanted {
  readonly workshop: string;
  readonly lesson: string;
  /** The revision by which a kit was packed, as the address has it. */
  readonly kit?: string;
}

const NOT_KEPT = { robots: { index: false } } as const;

/** The head of such a page; of a former address it leads on. @param wanted null where no lesson was asked for */
export async function headOfNothing(wanted: Wanted | null): Promise<Metadata> {
  await leadOn();
  const ended = wanted && (await findEndedLesson(database(), wanted.workshop, wanted.lesson));
  if (!ended) return { title: 'Nothing is here', ...NOT_KEPT };
  return {
    title: `${wanted.kit === undefined ? ended.title : 'Your kit'}: this lesson has ended`,
    ...NOT_KEPT,
  };
}

/** Leads on from a former address, tells that a lesson has ended, or that there never was anything. */
export async function NothingHere({ wanted }: { readonly wanted: Wanted | null }) {
  await leadOn();
  const ended = wanted && (await findEndedLesson(database(), wanted.workshop, wanted.lesson));
  tellStatus(ended ? 410 : 404);
  return ended ? <EndedLesson ended={ended} kitOf={numberOfAddress(wanted.kit ?? '')} /> : <NotFound />;
}
