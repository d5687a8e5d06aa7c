'use client';
/**
 * Brings a transcript in: choose, drop or paste; look at what was understood
 * and what was not; take the cues into the draft. Until they are taken the
 * lesson is as it was, and afterwards undo takes them out again.
 */
import { type FormEvent, useEffect, useId, useRef, useState } from 'react';
import { transcriptFaultWords } from '#app/words/transcript-words.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { useDraft } from '../draft.client.tsx';
import { DropZone } from './drop-zone.client.tsx';
import { EncodingChoice } from './encoding-choice.client.tsx';
import { KeptFiles } from './kept-files.client.tsx';
import { LossList } from './loss-list.client.tsx';
import { useComparison } from './new-recording/comparison-feed.ts';
import { chooseEncoding, readAgain, sendTranscript, type TranscriptAnswer } from './send-transcript.ts';
import styles from './transcript-file.module.css';
import { UnderstoodTranscript } from './understood-transcript.client.tsx';

interface TranscriptFileProps {
  /** Address of the lesson's transcript files. */
  readonly address: string;
  /** The lesson's transcript screen. */
  readonly transcriptPage: string;
}

export function TranscriptFile({ address, transcriptPage }: TranscriptFileProps) {
  const { cues, change, mayEdit, undoLabel, undo } = useDraft();
  const [answer, setAnswer] = useState<TranscriptAnswer | null>(null);
  // With each file anew: meanwhile the former recording may have been taken back.
  const { accepted } = useComparison(address.replace(/\/transcript-files$/, ''), answer?.name);
  const [reading, setReading] = useState('');
  const [taken, setTaken] = useState<number | null>(null);
  const result = useRef<HTMLDivElement>(null);
  const heading = useId();

  // What comes back stands below the fold on a small screen: go there, so that it is read out too.
  useEffect(() => {
    if (answer) result.current?.focus();
  }, [answer]);

  const follow = async (name: string, asked: Promise<TranscriptAnswer>) => {
    setTaken(null);
    setReading(name);
    setAnswer(await asked);
    setReading('');
  };
  const bring = (file: Blob, name: string) => void follow(name, sendTranscript(address, file, name));

  const take = (name: string, put: readonly Cue[]) => {
    const removed = cues.map((cue) => cue.id);
    change([{ kind: 'cues', put: [...put], remove: removed }], `bringing in ${name}`);
    setAnswer(null);
    setTaken(put.length);
  };

  return (
    <section id="transcript" className="panel" aria-labelledby={heading}>
      <h2 id={heading}>Transcript</h2>
      <p className={styles.state}>
        {cues.length === 0 ? 'The lesson has no transcript yet.' : `The lesson has ${inCues(cues.length)}.`}{' '}
        {cues.length > 0 && <a href={transcriptPage}>Read and mend the transcript</a>}
      </p>
      {mayEdit && <Intake onFile={bring} />}
      <KeptFiles
        address={address}
        asOf={answer}
        mayEdit={mayEdit}
        onReadAgain={(file) => void follow(file.name, readAgain(address, file))}
      />
      <div role="status">
        {reading !== '' && <p className={styles.state}>Reading {reading}…</p>}
        {taken !== null && (
          <div className="notice">
            <p>
              {inCues(taken)} taken into the lesson. <a href={transcriptPage}>Go on to the transcript</a>
              {undoLabel !== null && (
                <>
                  {' or '}
                  <button
                    type="button"
                    className="quiet"
                    onClick={() => {
                      undo();
                      setTaken(null);
                    }}
                  >
                    Undo {undoLabel}
                  </button>
                </>
              )}
            </p>
          </div>
        )}
      </div>
      <div ref={result} tabIndex={-1} className={styles.result}>
        {answer?.kind === 'read' && (
          <UnderstoodTranscript
            understood={answer}
            present={cues.length}
            edited={accepted?.list ?? null}
            onTake={(put) => take(answer.name, put)}
            onPutAside={() => setAnswer(null)}
          />
        )}
        {answer?.kind === 'which-encoding' && (
          <EncodingChoice
            question={answer}
            onChoose={(chosen) => void follow(answer.name, chooseEncoding(address, answer, chosen))}
            onPutAside={() => setAnswer(null)}
          />
        )}
        {answer?.kind === 'refused' && (
          <div className="notice alarm" role="alert">
            <p>
              <strong>{answer.name} was not taken.</strong> {transcriptFaultWords(answer.fault)}
            </p>
            {answer.fault.losses && <LossList losses={answer.fault.losses} />}
          </div>
        )}
      </div>
    </section>
  );
}

function Intake({ onFile }: { readonly onFile: (file: Blob, name: string) => void }) {
  const [pasted, setPasted] = useState('');
  const pasteId = useId();

  const paste = (event: FormEvent) => {
    event.preventDefault();
    if (pasted.trim() !== '') onFile(new Blob([pasted]), 'pasted text.txt');
  };

  return (
    <>
      <DropZone
        label="A transcript file"
        accept=".vtt,.srt,.ttml,.dfxp,.xml,.txt,.md,text/vtt,application/ttml+xml,text/plain"
        onFile={(file) => onFile(file, file.name)}
      >
        <p className="hint">
          WebVTT, SRT, TTML, plain text whose lines or paragraphs begin with a time such as [1:02], or a
          script without times: that is spread over the speech in the recording, to be brought right by ear.
        </p>
      </DropZone>
      <details className={styles.paste}>
        <summary>Paste the text instead</summary>
        <form onSubmit={paste}>
          <div className="field">
            <label htmlFor={pasteId}>Text, with times or without</label>
            <textarea
              id={pasteId}
              rows={8}
              value={pasted}
              placeholder={'[0:00] Today we make a bracelet.\n[0:06] You need two sizes of rings.'}
              onChange={(event) => setPasted(event.target.value)}
            />
          </div>
          <button type="submit" className="quiet" disabled={pasted.trim() === ''}>
            Read this text
          </button>
        </form>
      </details>
    </>
  );
}

const inCues = (count: number): string => (count === 1 ? '1 cue' : `${count.toLocaleString('en')} cues`);
