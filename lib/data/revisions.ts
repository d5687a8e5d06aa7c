/** Queries of published revisions. What is public is read here and nowhere else. */
import { LRUCache } from 'lru-cache';
import { type Revision, revision } from '#lib/lesson/revision.ts';
import type { Queries } from './database.ts';

/** One revision of a public lesson, without its document. */
export interface RevisionMark {
  readonly id: string;
  readonly number: number;
  readonly publishedAt: Date;
}

export interface PublicLesson {
  readonly lessonId: string;
  readonly slug: string;
  readonly workshop: { readonly slug: string; readonly name: string };
  /** Newest first; never empty. */
  readonly revisions: readonly RevisionMark[];
}

/** A lesson that has been published; null where there is none, or nothing of it is public. */
export async function findPublicLesson(
  db: Queries,
  workshopSlug: string,
  lessonSlug: string,
): Promise<PublicLesson | null> {
  const lesson = await db.lesson.findFirst({
    where: { slug: lessonSlug, workshop: { slug: workshopSlug }, revisions: { some: {} } },
    select: {
      id: true,
      slug: true,
      workshop: { select: { slug: true, name: true } },
      revisions: { select: { id: true, number: true, publishedAt: true }, orderBy: { number: 'desc' } },
    },
  });
  return (
    lesson && {
      lessonId: lesson.id,
      slug: lesson.slug,
      workshop: lesson.workshop,
      revisions: lesson.revisions,
    }
  );
}

/** The document of a public lesson's latest revision; null where nothing of it is public. */
export async function findLatestRevision(
  db: Queries,
  workshopSlug: string,
  lessonSlug: string,
): Promise<Revision | null> {
  const [latest] = (await findPublicLesson(db, workshopSlug, lessonSlug))?.revisions ?? [];
  return latest ? getRevision(db, latest.id) : null;
}

export interface PublicWorkshop {
  readonly name: string;
  readonly about: string;
  /** BCP 47. */
  readonly language: string;
  /** Last published first. */
  readonly lessons: readonly Pick<PublicLesson, 'slug' | 'revisions'>[];
}

/** A workshop with its published lessons and all their revisions; null where there is no such workshop. */
export async function findPublicWorkshop(db: Queries, slug: string): Promise<PublicWorkshop | null> {
  const workshop = await db.workshop.findUnique({
    where: { slug },
    select: {
      name: true,
      about: true,
      language: true,
      lessons: {
        where: { revisions: { some: {} } },
        select: {
          slug: true,
          revisions: { select: { id: true, number: true, publishedAt: true }, orderBy: { number: 'desc' } },
        },
      },
    },
  });
  if (!workshop) return null;
  const newest = ({ revisions }: Pick<PublicLesson, 'revisions'>): number =>
    revisions[0]?.publishedAt.getTime() ?? 0;
  return { ...workshop, lessons: workshop.lessons.toSorted((one, other) => newest(other) - newest(one)) };
}

/** Numbers and times of a lesson's revisions, newest first. */
export const listRevisions = (db: Queries, lessonId: string): Promise<readonly RevisionMark[]> =>
  db.revision.findMany({
    where: { lessonId },
    select: { id: true, number: true, publishedAt: true },
    orderBy: { number: 'desc' },
  });

/** Documents read lately by id. A revision never changes, so what was read stays right; one with 5,000 cues takes about 2 MB. */
const readLately = new LRUCache<string, Revision>({ max: 24 });

/** The frozen document of a revision that is known to exist. */
export async function getRevision(db: Queries, id: string): Promise<Revision> {
  const known = readLately.get(id);
  if (known) return known;
  const row = await db.revision.findUniqueOrThrow({ where: { id }, select: { document: true } });
  const document = revision.parse(row.document);
  readLately.set(id, document);
  return document;
}

/** A lesson as its workshop's page lists it. */
export interface ShelfLesson {
  readonly slug: string;
  readonly number: number;
  readonly publishedAt: Date;
  readonly title: string;
  readonly summary: string;
  readonly weave: string;
  readonly difficulty: string;
  readonly prepareMinutes: number | null;
  readonly makeMinutes: number | null;
  readonly hasPoster: boolean;
}

export interface Shelf {
  readonly name: string;
  readonly about: string;
  /** Last published first. */
  readonly lessons: readonly ShelfLesson[];
}

/** A workshop's published lessons; null where there is no such workshop. */
export async function findShelf(db: Queries, workshopSlug: string): Promise<Shelf | null> {
  const workshop = await db.workshop.findUnique({
    where: { slug: workshopSlug },
    select: { id: true, name: true, about: true },
  });
  if (!workshop) return null;
  // Fields are picked in the database: documents hold whole transcripts.
  const lessons = await db.$queryRaw<ShelfLesson[]>`
    SELECT * FROM (
      SELECT DISTINCT ON (lesson."id") lesson."slug", revision."number", revision."publishedAt",
        revision."document"->'content'->>'title' AS "title",
        revision."document"->'content'->>'summary' AS "summary",
        revision."document"->'content'->>'weave' AS "weave",
        revision."document"->'content'->>'difficulty' AS "difficulty",
        (revision."document"->'content'->>'prepareMinutes')::int AS "prepareMinutes",
        (revision."document"->'content'->>'makeMinutes')::int AS "makeMinutes",
        (revision."document"->'recording'->>'posterKey') IS NOT NULL AS "hasPoster"
      FROM "lesson" JOIN "revision" ON revision."lessonId" = lesson."id"
      WHERE lesson."workshopId" = ${workshop.id}
      ORDER BY lesson."id", revision."number" DESC
    ) AS latest
    ORDER BY "publishedAt" DESC, "slug"`;
  return { name: workshop.name, about: workshop.about, lessons };
}
