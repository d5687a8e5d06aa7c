'use client';
/** A transcript of the new recording: words for what is new in it, and for what was said again. */
import { useState } from 'react';
import { transcriptFaultWords } from '#app/words/transcript-words.ts';
import type { Carried } from '#lib/retiming/carry-over.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { DropZone } from '../drop-zone.client.tsx';
import { sendTranscript } from '../send-transcript.ts';

interface HeardProps {
  readonly api: string;
  /** Cues that were read; null before a file was brought. */
  readonly heard: readonly Cue[] | null;
  readonly used: Carried['fromHeard'];
  readonly onHeard: (cues: readonly Cue[] | null) => void;
}

export function Heard({ api, heard, used, onHeard }: HeardProps) {
  const [reading, setReading] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const bring = async (file: File) => {
    setReading(true);
    setFault(null);
    const answer = await sendTranscript(`${api}/transcript-files`, file, file.name);
    setReading(false);
    if (answer.kind === 'read') onHeard(answer.cues);
    else if (answer.kind === 'refused') setFault(transcriptFaultWords(answer.fault));
    else setFault('It cannot be told how this file is encoded. Save it as UTF-8, then bring it again.');
  };
  return (
    <section className="panel" aria-label="A transcript of the new recording">
      {heard === null ? (
        <DropZone
          label="A transcript of the new recording, if you have one"
          accept=".vtt,.srt,.ttml,.dfxp,.xml,.txt,.md,text/vtt,application/ttml+xml,text/plain"
          onFile={(file) => void bring(file)}
        >
          <p className="hint">
            What was said again gets its words and their times from it, and what is new gets its cues. All
            else keeps the words that the lesson has.
          </p>
        </DropZone>
      ) : (
        <>
          <p>{usedWords(used)} All else keeps the words that the lesson has.</p>
          <p>
            <button type="button" className="quiet" onClick={() => onHeard(null)}>
              Do without this transcript
            </button>
          </p>
        </>
      )}
      <p role="status">{reading ? 'Reading it…' : ''}</p>
      {fault !== null && (
        <p className="notice alarm" role="alert">
          {fault}
        </p>
      )}
    </section>
  );
}

function usedWords({ again, added }: Carried['fromHeard']): string {
  const cues = (count: number) => (count === 1 ? 'one cue' : `${count} cues`);
  const told = [
    ...(again > 0 ? [`${cues(again)} of what was said again`] : []),
    ...(added > 0 ? [`${cues(added)} of what is new`] : []),
  ];
  if (told.length === 0)
    return 'Nothing of the transcript is needed: nothing was said again, and nothing is new.';
  return `From the transcript are taken ${told.join(' and ')}.`;
}
