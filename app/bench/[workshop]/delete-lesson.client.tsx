'use client';
import { useRouter } from 'next/navigation';
import { SureDialog } from '#app/forms/sure-dialog.client.tsx';
import type { ListedLesson } from '#lib/data/lesson-list.ts';

interface Props {
  readonly workshop: string;
  readonly id: string;
  readonly title: string;
  readonly holds: ListedLesson['holds'];
}

export function DeleteLesson({ workshop, id, title, holds }: Props) {
  const router = useRouter();
  const counted = [
    count(holds.recordings, 'recording', 'recordings'),
    count(holds.cues, 'cue of its transcript', 'cues of its transcript'),
    count(holds.chapters, 'chapter', 'chapters'),
    count(holds.corrections, 'correction', 'corrections'),
    count(holds.revisions, 'published revision', 'published revisions'),
    withPart(
      count(holds.batches, 'batch', 'batches'),
      holds.batches === 0 ? null : count(holds.kits, 'kit made up', 'kits made up'),
    ),
    withPart(
      count(holds.reports, 'report by a pupil', 'reports by pupils'),
      count(holds.reportsOpen, 'not answered yet', 'not answered yet'),
    ),
  ].filter((line) => line !== null);
  return (
    <SureDialog
      opens={
        <>
          Delete…<span className="unseen"> {title}</span>
        </>
      }
      question={`Delete “${title}”?`}
      does="Delete for ever"
      to={`/api/workshops/${encodeURIComponent(workshop)}/lessons/${encodeURIComponent(id)}`}
      method="DELETE"
      done={() => router.refresh()}
    >
      {counted.length === 0 ? (
        <p>There is nothing in it yet.</p>
      ) : (
        <>
          <p>This cannot be undone. With it goes:</p>
          <ul>
            {counted.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </>
      )}
      {holds.revisions > 0 && (
        <p>
          Its public pages end, the older revisions too. Who comes by an address of it, from a kit’s label or
          a printed sheet, reads that you took the lesson away; no other lesson ever gets that address. A
          portable copy that was taken before can be brought in again under it; one that an owner took with
          the draft brings batches and reports back too.
          {holds.kits > 0 &&
            ' Holders of kits are not told any more what to add or exchange, and you no longer see which kits a correction reaches.'}
        </p>
      )}
    </SureDialog>
  );
}

/** `2 batches, 14 kits made up`. */
const withPart = (whole: string | null, part: string | null): string | null =>
  whole === null || part === null ? whole : `${whole}, ${part}`;

const count = (number: number, one: string, many: string): string | null =>
  number === 0 ? null : `${number.toLocaleString('en')} ${number === 1 ? one : many}`;
