'use client';
/** What was understood of a transcript file, for the teacher to look at before it is taken. */
import { useMemo, useState } from 'react';
import { formatWords } from '#app/words/transcript-words.ts';
import type { EditList } from '#lib/retiming/edit-list.ts';
import { placeTranscript } from '#lib/retiming/place-transcript.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { ENCODINGS } from '#lib/transcript/encoding.ts';
import { LossList } from './loss-list.client.tsx';
import type { Understood } from './send-transcript.ts';
import styles from './transcript-file.module.css';

/** How many cues are shown before they are taken. */
const SHOWN = 6;

interface UnderstoodTranscriptProps {
  readonly understood: Understood;
  /** How many cues the lesson has now. */
  readonly present: number;
  /** What was done to the former recording to make the present one; null where there was none, or nothing is known. */
  readonly edited: EditList | null;
  readonly onTake: (cues: readonly Cue[]) => void;
  readonly onPutAside: () => void;
}

export function UnderstoodTranscript(props: UnderstoodTranscriptProps) {
  const { understood, present, edited, onTake, onPutAside } = props;
  const { losses } = understood;
  const [ofFormer, setOfFormer] = useState(false);
  const placed = useMemo(
    () =>
      edited && ofFormer ? placeTranscript(understood.cues, edited) : { cues: understood.cues, gone: 0 },
    [understood.cues, edited, ofFormer],
  );
  const { cues } = placed;
  const endMs = cues.reduce((latest, cue) => Math.max(latest, cue.endMs), 0);
  const count = cues.length.toLocaleString('en');
  return (
    <>
      <h3>What was understood of {understood.name}</h3>
      <dl className={styles.facts}>
        <div>
          <dt>Kind</dt>
          <dd>{formatWords(understood.format)}</dd>
        </div>
        <div>
          <dt>Encoding</dt>
          <dd>{ENCODINGS[understood.encoding]}</dd>
        </div>
        <div>
          <dt>Cues</dt>
          <dd>{count}</dd>
        </div>
        <div>
          <dt>From, to</dt>
          <dd>
            {formatTimeCode(cues[0]?.startMs ?? 0)} – {formatTimeCode(endMs)}
          </dd>
        </div>
      </dl>
      {understood.format === 'script' && (
        <p className="notice caution">
          There are no times in it. It was spread over the speech in the recording, or over the time that
          reading takes where there is no recording yet: the times below are a rough draft. On the transcript
          screen you bring them right by ear, with a press at about one sentence in eight.
        </p>
      )}
      <LossList losses={losses} />
      {edited && understood.format !== 'script' && (
        <>
          <label className="tick">
            <input
              type="checkbox"
              checked={ofFormer}
              onChange={(event) => setOfFormer(event.target.checked)}
            />
            Its times are those of the former recording: place it on the present one by its sound
          </label>
          {placed.gone > 0 && (
            <p className="hint">
              {placed.gone === 1 ? 'One cue is' : `${placed.gone} cues are`} of what was cut, and left out.
            </p>
          )}
        </>
      )}
      <div className="table-frame">
        <table>
          <caption>
            {cues.length > SHOWN ? `The first ${SHOWN} of ${count} cues` : `All ${count} cues`}
          </caption>
          <thead>
            <tr>
              <th scope="col">From</th>
              <th scope="col">To</th>
              <th scope="col">Text</th>
            </tr>
          </thead>
          <tbody>
            {cues.slice(0, SHOWN).map((cue) => (
              <tr key={cue.id}>
                <td>{formatTimeCode(cue.startMs)}</td>
                <td>{formatTimeCode(cue.endMs)}</td>
                <td className={styles.text} dir="auto">
                  {cue.text}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {present > 0 && (
        <p className="notice caution">
          The lesson has {present.toLocaleString('en')} {present === 1 ? 'cue' : 'cues'} now, with what you
          mended in them. Taking these replaces them all; undo brings them back.
        </p>
      )}
      <div className="row">
        <button type="button" disabled={cues.length === 0} onClick={() => onTake(cues)}>
          {present > 0 ? 'Replace with' : 'Take'} {cues.length === 1 ? 'this cue' : `these ${count} cues`}
        </button>
        <button type="button" className="quiet" onClick={onPutAside}>
          Put the file aside
        </button>
      </div>
    </>
  );
}
