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
          Its public pages end, the older revisions too: pupils who hold a kit or a printed sheet will find
          nothing under its address.
        </p>
      )}
    </SureDialog>
  );
}

const count = (number: number, one: string, many: string): string | null =>
  number === 0 ? null : `${number.toLocaleString('en')} ${number === 1 ? one : many}`;
