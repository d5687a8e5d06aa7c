/**
 * What is answered below `/workshop/…` where nothing stands. A workshop's
 * former address leads on to the one it has now, with all that follows; a
 * published lesson that was deleted is told to have ended.
 */
import { headers } from 'next/headers';
import { permanentRedirect } from 'next/navigation';
import { shelfPath } from '#app/lesson-page/page-addresses.ts';
import { database } from '#lib/data/database.ts';
import { findEndedLesson } from '#lib/data/ended-lessons.ts';
import { slugSince } from '#lib/data/workshop-slugs.ts';
import { fault, withAnyone } from './with-member.ts';

interface Place {
  /** Slugs. */
  readonly workshop: string;
  readonly lesson?: string;
}

/** The address with the workshop's slug of now, its query kept; null where it never had another. */
export async function movedTo(path: string, query: string): Promise<string | null> {
  const [, former, rest = ''] = /^\/workshop\/([a-z0-9-]+)((?:\/.*)?)$/.exec(path) ?? [];
  const slug = former === undefined ? null : await slugSince(database(), former);
  return slug === null ? null : `${shelfPath(slug)}${rest}${query}`;
}

/** Wraps a public route below `/workshop/[workshop]`: where it finds nothing, this says why. */
export const withPublic = <P extends Place>(handle: (request: Request, params: P) => Promise<Response>) =>
  withAnyone<P>(async (request, params) => {
    const answer = await handle(request, params);
    if (answer.status !== 404) return answer;
    const { pathname, search } = new URL(request.url);
    const location = await movedTo(pathname, search);
    // A permanent move that is asked for anew each time: an owner may take a former address back.
    if (location !== null)
      return new Response(null, { status: 308, headers: { location, 'cache-control': 'no-cache' } });
    const { workshop, lesson } = params;
    const ended = lesson !== undefined && (await findEndedLesson(database(), workshop, lesson));
    return ended ? fault(410, 'ended') : answer;
  });

/** Ends a public page whose workshop has another address by now; comes back where it has not. */
export async function leadOn(): Promise<void> {
  const asked = await headers();
  const location = await movedTo(asked.get('x-benchleaf-path') ?? '', asked.get('x-benchleaf-query') ?? '');
  if (location !== null) permanentRedirect(location);
}
