/** What differs between any two revisions, and the way back to an earlier one. */
import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { memberPage } from '#app/http/member-page.ts';
import { dayOf } from '#app/words/days.ts';
import { openLesson } from '#lib/bench/open-lesson.ts';
import { readPreview } from '#lib/bench/read-preview.ts';
import { database } from '#lib/data/database.ts';
import { findDescriptionSetup } from '#lib/data/description-texts.ts';
import { getRevision, listRevisions, type RevisionMark } from '#lib/data/revisions.ts';
import type { Revision } from '#lib/lesson/revision.ts';
import { BringBack } from './bring-back.client.tsx';
import styles from './revisions.module.css';
import { WhatChanges } from './what-changes.tsx';

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
  const numbers = marks.map(({ number }) => number);
  const newer = asked.newer === DRAFT ? DRAFT : (chosen(numbers, asked.newer) ?? numbers[0]);
  const before = newer === DRAFT ? numbers[0] : numbers.find((number) => number < (newer ?? 0));
  const older = chosen(numbers, asked.older) ?? before ?? numbers[0];
  const days = marks.map(
    ({ number, publishedAt }) => [String(number), `${number}, ${dayOf(publishedAt)}`] as const,
  );
  return (
    <main className="page">
      <h2>Compare revisions</h2>
      <p>
        <Link href={`/bench/${at}/corrections`}>Back to the corrections</Link>
      </p>
      {older === undefined || newer === undefined ? (
        <p>There is nothing to compare before a revision is published.</p>
      ) : (
        <>
          <form method="get" className={`row ${styles.choice}`}>
            <Choice label="From revision" name="older" choices={days} value={String(older)} />
            <Choice
              label="to"
              name="newer"
              choices={[[DRAFT, 'the draft as it is now'], ...days]}
              value={String(newer)}
            />
            <button type="submit" className="quiet">
              Compare
            </button>
          </form>
          <section className="panel" aria-labelledby="differs">
            <h3 id="differs">
              From revision {older} to {newer === DRAFT ? 'the draft' : `revision ${newer}`}
            </h3>
            {newer === DRAFT && (
              <p>All that would change if the draft were published now. Nothing is published yet.</p>
            )}
            <Difference
              older={await revisionOf(marks, older)}
              newer={
                newer === DRAFT
                  ? await readPreview(database(), {
                      workshop: membership.workshop,
                      lessonId: opened.id,
                      number: (numbers[0] ?? 0) + 1,
                    })
                  : await revisionOf(marks, newer)
              }
              lessonSlug={opened.slug}
            />
          </section>
          <BringBack api={`/api/workshops/${at}`} bench={`/bench/${at}`} numbers={numbers} />
        </>
      )}
    </main>
  );
}

/** Chosen in place of a number: what would be published now. */
const DRAFT = 'draft';

const chosen = (numbers: readonly number[], asked: string | string[] | undefined): number | undefined =>
  numbers.find((number) => String(number) === asked);

async function revisionOf(marks: readonly RevisionMark[], number: number): Promise<Revision | null> {
  const mark = marks.find((one) => one.number === number);
  return mark ? getRevision(database(), mark.id) : null;
}

interface ChoiceProps {
  readonly label: string;
  readonly name: string;
  /** Value and words. */
  readonly choices: readonly (readonly [string, string])[];
  readonly value: string;
}

const Choice = ({ label, name, choices, value }: ChoiceProps) => (
  <label className="row">
    {label}
    <select name={name} defaultValue={value}>
      {choices.map(([each, words]) => (
        <option key={each} value={each}>
          {words}
        </option>
      ))}
    </select>
  </label>
);

interface DifferenceProps {
  readonly older: Revision | null;
  readonly newer: Revision | null;
  readonly lessonSlug: string;
}

async function Difference({ older, newer, lessonSlug }: DifferenceProps) {
  if (!older || !newer) return <p>This revision is not there.</p>;
  const setup = await findDescriptionSetup(database(), newer.workshop.slug);
  return <WhatChanges older={older} newer={newer} setup={setup} lessonSlug={lessonSlug} />;
}
