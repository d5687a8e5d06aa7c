'use client';
/** One edit point: what was done there, what it does to the lesson, how it sounds, and moving it. */
import { useId } from 'react';
import { editPointWords, type RecordingNames } from '#app/words/recording-change-words.ts';
import type { CutItem } from '#lib/retiming/carry-over.ts';
import type { EditPointSeen } from '#lib/retiming/edit-points.ts';
import { formatPreciseTimeCode } from '#lib/time/time-code.ts';
import styles from './new-recording.module.css';

interface EditPointProps {
  readonly number: number;
  readonly point: EditPointSeen;
  /** What of the lesson fell into its cuts. */
  readonly lost: readonly CutItem[];
  /** Whether a transcript tells what is said in the new part here. */
  readonly isHeard: boolean;
  /** Whether something new here has no words yet. */
  readonly needsWords: boolean;
  readonly wordsStay: boolean;
  readonly mayEdit: boolean;
  readonly names: RecordingNames;
  readonly lostWords: (item: CutItem) => string;
  /** Whether shared sound stands before it and after it. */
  readonly sides: { readonly before: boolean; readonly after: boolean };
  readonly hear: (which: 'old' | 'new', fromMs: number, toMs: number) => void;
  readonly onWordsStay: (stay: boolean) => void;
  readonly onMove: (side: 'end' | 'start' | 'both', byMs: number) => void;
}

/** So many lines of what was lost are shown at once. */
const SHOWN = 3;

export function EditPointCard(props: EditPointProps) {
  const { number, point, lost, mayEdit, hear, sides, names } = props;
  const title = useId();
  const { inserted, cuts, atMs } = point;
  const newEndMs = inserted?.new.endMs ?? atMs;
  return (
    <li className="panel" aria-labelledby={title}>
      <h4 id={title}>
        Edit point {number}, at {formatPreciseTimeCode(atMs)} of {names.new}
      </h4>
      <ul>
        {editPointWords(point, names).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <Lost lost={lost} wordsOf={props.lostWords} />
      {point.retake && mayEdit && (
        <WordsStay stay={props.wordsStay} isHeard={props.isHeard} onChange={props.onWordsStay} />
      )}
      {props.needsWords && <p>The new part has no words yet; write them in the transcript.</p>}
      <div className="row">
        <button type="button" className="quiet" onClick={() => hear('new', atMs - 3_000, newEndMs + 3_000)}>
          Hear {names.new} here
        </button>
        {cuts.map(({ edit }, k) => (
          <button
            key={edit.old.startMs}
            type="button"
            className="quiet"
            onClick={() => hear('old', edit.old.startMs, edit.old.endMs)}
          >
            Hear what was cut{cuts.length > 1 ? ` (${k + 1})` : ''}
          </button>
        ))}
      </div>
      {mayEdit && (
        <details>
          <summary>Move this edit point</summary>
          {inserted && sides.before && (
            <Shift
              label="The old sound ends"
              at={inserted.new.startMs}
              onShift={(by) => props.onMove('end', by)}
            />
          )}
          {inserted && sides.after && (
            <Shift
              label="The old sound goes on"
              at={inserted.new.endMs}
              onShift={(by) => props.onMove('start', by)}
            />
          )}
          {!inserted && <Shift label="The edit point" at={atMs} onShift={(by) => props.onMove('both', by)} />}
        </details>
      )}
    </li>
  );
}

function Lost({ lost, wordsOf }: { lost: readonly CutItem[]; wordsOf: EditPointProps['lostWords'] }) {
  if (lost.length === 0) return null;
  // A chapter or a step must not be overlooked among hundreds of cues.
  const sentences = lost
    .toSorted((one, other) => rank(one) - rank(other))
    .map((item, k) => ({ key: `${item.of} ${k}`, words: wordsOf(item) }));
  return (
    <>
      <ul className={styles.lost}>
        {sentences.slice(0, SHOWN).map(({ key, words }) => (
          <li key={key}>{words}</li>
        ))}
      </ul>
      {sentences.length > SHOWN && (
        <details>
          <summary>{sentences.length - SHOWN} more that fell into the cut</summary>
          <ul className={styles.lost}>
            {sentences.slice(SHOWN).map(({ key, words }) => (
              <li key={key}>{words}</li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

const rank = ({ of }: CutItem): number => (of === 'cue' ? 1 : 0);

interface WordsStayProps {
  readonly stay: boolean;
  /** Whether a transcript tells what is said now. */
  readonly isHeard: boolean;
  readonly onChange: (stay: boolean) => void;
}

function WordsStay({ stay, isHeard, onChange }: WordsStayProps) {
  const name = useId();
  return (
    <fieldset>
      <legend>Was it said again?</legend>
      <label className="tick">
        <input type="radio" name={name} checked={stay} onChange={() => onChange(true)} />
        {isHeard
          ? 'Yes: its cues stay, with the words and times of the transcript'
          : 'Yes: its words stay, spread over the new part, marked as approximate'}
      </label>
      <label className="tick">
        <input type="radio" name={name} checked={!stay} onChange={() => onChange(false)} />
        {isHeard
          ? 'No: the old cues are taken out, the new part gets those of the transcript'
          : 'No: the old words are taken out, the new part needs its own'}
      </label>
    </fieldset>
  );
}

const STEPS = [
  [-1_000, '1 s earlier'],
  [-100, '0.1 s earlier'],
  [100, '0.1 s later'],
  [1_000, '1 s later'],
] as const;

function Shift({ label, at, onShift }: { label: string; at: number; onShift: (byMs: number) => void }) {
  return (
    <div className="row">
      <span className={styles.shifted}>
        {label}: <output>{formatPreciseTimeCode(at)}</output>
      </span>
      {STEPS.map(([by, words]) => (
        <button
          key={by}
          type="button"
          className="quiet"
          aria-label={`${label}, ${words}`}
          onClick={() => onShift(by)}
        >
          {words}
        </button>
      ))}
    </div>
  );
}
