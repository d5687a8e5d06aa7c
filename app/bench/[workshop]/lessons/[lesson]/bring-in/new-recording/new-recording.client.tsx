'use client';
/** A new recording that waits for a decision: compared, shown, adjusted, taken or not. */
import Link from 'next/link';
import { useEffect, useState } from 'react';
import { comparingWords } from '#app/words/recording-change-words.ts';
import { useComparison } from './comparison-feed.ts';
import { Decide, type Decided } from './decide.client.tsx';
import { Place } from './place.client.tsx';

export interface Addresses {
  readonly api: string;
  readonly bench: string;
}

export function NewRecording({ api, bench }: Addresses) {
  const { comparison, unreachable } = useComparison(api);
  const [decided, setDecided] = useState<Decided | null>(null);
  // Once it is decided there is none to ask any more.
  const [isPlacing, setIsPlacing] = useState(false);
  const from = comparison?.fromLessonId;
  useEffect(() => {
    if (from !== undefined) setIsPlacing(from !== null);
  }, [from]);
  const back = <Link href={`${bench}/bring-in`}>Back to “Bring in”</Link>;
  if (decided) {
    return (
      <div className="notice" role="status">
        <p>{doneWords(decided, isPlacing)}</p>
        <p className="row">
          {decided !== 'refuse' && <Link href={`${bench}/transcript`}>Look at the transcript</Link>}
          {back}
        </p>
      </div>
    );
  }
  if (unreachable && comparison === undefined) {
    return <p className="fault">The server cannot be reached at the moment. Trying again…</p>;
  }
  if (comparison === undefined) return <p>Looking what is there…</p>;
  if (comparison === null) {
    return (
      <>
        <p>There is nothing to decide about.</p>
        <p>{back}</p>
      </>
    );
  }
  if (comparison.fromLessonId !== null && (comparison.state === 'ready' || comparison.state === 'failed')) {
    const of = { ...comparison, fromLessonId: comparison.fromLessonId };
    return (
      <Place key={comparison.id} comparison={of} list={comparison.list} api={api} onDecided={setDecided} />
    );
  }
  if (comparison.state === 'ready' && comparison.list) {
    return (
      <Decide
        key={comparison.id}
        comparison={comparison}
        list={comparison.list}
        api={api}
        onDecided={setDecided}
      />
    );
  }
  if (comparison.state === 'failed') {
    return (
      <>
        <p className="notice caution">
          The sounds of the two recordings could not be compared. You can keep the old recording, or take the
          new one and move chapters, cues and steps yourself.
        </p>
        <Decide comparison={comparison} list={null} api={api} onDecided={setDecided} />
      </>
    );
  }
  return (
    <div className="panel" role="status">
      <p>
        {comparingWords(comparison.step)}
        {comparison.step ? `, ${comparison.percent} %` : ''}. You may leave this page; it goes on by itself.
      </p>
      <progress max={100} value={comparison.percent} aria-label="Comparing the recordings" />
      <p>{back}</p>
    </div>
  );
}

function doneWords(decided: Decided, isPlacing: boolean): string {
  switch (decided) {
    case 'move':
      return 'The new recording is the lesson’s now, and everything moved with it. Published revisions keep the old one. On “Bring in” you can go back to it.';
    case 'leave':
      return 'The new recording is the lesson’s now. All times stand where they were. On “Bring in” you can go back to the old one.';
    case 'placed':
      return 'The transcript stands in this lesson now, at the times of its own recording. Undo takes it out again.';
    case 'refuse':
      return isPlacing ? 'The lesson stays as it was.' : 'The old recording stays.';
  }
}
