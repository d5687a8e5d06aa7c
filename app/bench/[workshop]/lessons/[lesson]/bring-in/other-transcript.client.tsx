'use client';
/** Begins placing the transcript of another lesson on this one's recording. */
import { useRouter } from 'next/navigation';
import { type FormEvent, useId, useState } from 'react';
import { sendJson } from '#app/forms/send-json.ts';
import { decideFaultWords } from '#app/words/recording-change-words.ts';
import type { PlaceableLesson } from '#lib/data/comparisons.ts';

interface OtherTranscriptProps {
  /** Of the lesson's comparison. */
  readonly address: string;
  /** Where the comparison is looked at. */
  readonly screen: string;
  readonly lessons: readonly PlaceableLesson[];
}

export function OtherTranscript({ address, screen, lessons }: OtherTranscriptProps) {
  const router = useRouter();
  const id = useId();
  const [from, setFrom] = useState(lessons[0]?.id ?? '');
  const [busy, setBusy] = useState(false);
  const [fault, setFault] = useState<string | null>(null);

  const compare = async (event: FormEvent) => {
    event.preventDefault();
    if (busy) return;
    setBusy(true);
    const sent = await sendJson(address, 'POST', { from });
    if (sent.ok) return router.push(screen);
    setBusy(false);
    setFault(decideFaultWords(sent.code));
  };

  return (
    <section className="panel" aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>Transcript of another lesson</h2>
      <p>
        Another lesson’s recording may hold the same sound: an earlier cut of this one, or a longer film that
        it was taken from. Its transcript is then placed here by comparing the two recordings. You look at the
        pairing before anything is taken; the other lesson stays as it is.
      </p>
      <form className="row" onSubmit={(event) => void compare(event)}>
        <label htmlFor={id}>Lesson</label>
        <select id={id} value={from} onChange={(event) => setFrom(event.target.value)}>
          {lessons.map((lesson) => (
            <option key={lesson.id} value={lesson.id}>
              {lesson.title || 'Lesson without a title'}, {lesson.cues.toLocaleString('en')}{' '}
              {lesson.cues === 1 ? 'cue' : 'cues'}
            </option>
          ))}
        </select>
        <button type="submit" className="quiet" aria-disabled={busy}>
          {busy ? 'Beginning…' : 'Compare the recordings'}
        </button>
      </form>
      {fault !== null && (
        <p className="notice alarm" role="alert">
          {fault}
        </p>
      )}
    </section>
  );
}
