'use client';
/** Says on “Bring in” that a new recording waits for a decision. */
import Link from 'next/link';
import type { ShownRecording } from '#app/http/present-recording.ts';
import type { ComparisonFeed } from './comparison-feed.ts';
import { TakeBack } from './take-back.client.tsx';

interface NoticeProps {
  readonly api: string;
  readonly bench: string;
  readonly recordings: readonly ShownRecording[];
  readonly feed: ComparisonFeed;
  /** The lesson has its former recording again. */
  readonly onTakenBack: () => void;
}

export function NewRecordingNotice({ api, bench, recordings, feed, onTakenBack }: NoticeProps) {
  const { comparison, accepted } = feed;
  const nameOf = (id: string, otherwise: string) =>
    recordings.find((one) => one.id === id)?.name ?? otherwise;
  if (comparison === undefined) return null;
  if (comparison === null) {
    return accepted ? (
      <TakeBack
        address={`${api}/comparison/${accepted.id}/take-back`}
        old={nameOf(accepted.oldRecordingId, 'the former recording')}
        onDone={onTakenBack}
      />
    ) : null;
  }
  const isPlacing = comparison.fromLessonId !== null;
  const name = isPlacing
    ? 'The transcript of another lesson'
    : nameOf(comparison.newRecordingId, 'The new recording');
  const isReady = comparison.state === 'ready' || comparison.state === 'failed';
  return (
    <div className="notice caution" role="status">
      <p>
        <strong>{name}</strong>{' '}
        {isReady
          ? 'waits for your decision.'
          : isPlacing
            ? 'is being placed by the sound of both recordings.'
            : 'is being compared with the recording below.'}{' '}
        Until you have decided, the lesson keeps the {isPlacing ? 'transcript' : 'recording'} it has.
      </p>
      <p>
        <Link className="button" href={`${bench}/bring-in/new-recording`}>
          {isReady ? 'Look at both and decide' : 'Watch the comparison'}
        </Link>
      </p>
    </div>
  );
}
