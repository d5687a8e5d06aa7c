/** What differs between any two revisions, and the way back to an earlier one. */
import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { memberPage } from '#app/http/member-page.ts';
import { dayOf } from '#app/words/days.ts';
import { revisionChangeWords } from '#app/words/revision-change.ts';
import { openLesson } from '#lib/bench/open-lesson.ts';
import { database } from '#lib/data/database.ts';
import { getRevision, listRevisions, type RevisionMark } from '#lib/data/revisions.ts';
import { revisionDifference } from '#lib/lesson/revision-difference.ts';
import { cuesMoved, kitChanges, textChanges } from '#lib/lesson/revision-texts.ts';
import { BringBack } from './bring-back.client.tsx';
import { KitChanges, TextChanges } from './difference.tsx';
import styles from './revisions.module.css';

interface RevisionsProps {
  readonly params: Promise<{ workshop: string; lesson: string }>;
  readonly searchParams: Promise<{ older?: string | string[]; newer?: string | string[] }>;
}

export const metadata: Metadata = { title: 'Compare revisions' };

export default async function RevisionsScreen({ params, searchParams }: RevisionsProps) {
  const { workshop, lesson } = await params;
  const membership = await memberPage(workshop, 'viewer');
  const opened = await openLesson(membership, lesson);
  if (!opened) notFound();
  const marks = await listRevisions(database(), opened.id);
  const asked = await searchParams;
  const at = `${encodeURIComponent(membership.workshop.slug)}/lessons/${encodeURIComponent(opened.id)}`;
  const newer = chosen(marks, asked.newer) ?? marks[0];
  const older = chosen(marks, asked.older) ?? marks.find(({ number }) => number < (newer?.number ?? 0));
  return (
    <main className="page">
      <h2>Compare revisions</h2>
      <p>
        <Link href={`/bench/${at}/corrections`}>Back to the corrections</Link>
      </p>
      {!older || !newer ? (
        <p>There is nothing to compare before two revisions are published.</p>
      ) : (
        <>
          <form method="get" className={`row ${styles.choice}`}>
            <Choice label="From revision" name="older" marks={marks} value={older.number} />
            <Choice label="to revision" name="newer" marks={marks} value={newer.number} />
            <button type="submit" className="quiet">
              Compare
            </button>
          </form>
          <Difference olderId={older.id} newerId={newer.id} />
        </>
      )}
      {newer && (
        <BringBack
          api={`/api/workshops/${at}`}
          bench={`/bench/${at}`}
          numbers={marks.map(({ number }) => number)}
        />
      )}
    </main>
  );
}

const chosen = (
  marks: readonly RevisionMark[],
  asked: string | string[] | undefined,
): RevisionMark | undefined => marks.find(({ number }) => String(number) === asked);

function Choice({
  label,
  name,
  marks,
  value,
}: {
  label: string;
  name: string;
  marks: readonly RevisionMark[];
  value: number;
}) {
  return (
    <label className="row">
      {label}
      <select name={name} defaultValue={value}>
        {marks.map(({ number, publishedAt }) => (
          <option key={number} value={number}>
            {number}, {dayOf(publishedAt)}
          </option>
        ))}
      </select>
    </label>
  );
}

async function Difference({ olderId, newerId }: { olderId: string; newerId: string }) {
  const [older, newer] = await Promise.all([
    getRevision(database(), olderId),
    getRevision(database(), newerId),
  ]);
  const changes = revisionDifference(older, newer);
  const moved = cuesMoved(older, newer);
  return (
    <section className="panel" aria-labelledby="differs">
      <h3 id="differs">
        From revision {older.number} to revision {newer.number}
      </h3>
      {changes.length === 0 ? <p>Nothing differs.</p> : null}
      <ul>
        {changes.map((change) => (
          <li key={`${change.part} ${change.how}`}>{revisionChangeWords(change)}</li>
        ))}
        {moved > 0 && (
          <li>
            {moved === 1 ? 'one line of the transcript' : `${moved} lines of the transcript`} at another time,
            word for word the same
          </li>
        )}
      </ul>
      <TextChanges changes={textChanges(older, newer)} />
      <KitChanges
        changes={kitChanges(older, newer)}
        before={older.content.currency}
        now={newer.content.currency}
      />
    </section>
  );
}
