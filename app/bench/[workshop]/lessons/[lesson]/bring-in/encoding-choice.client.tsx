'use client';
/** Asks in which encoding a file was written, with the same line of it read in each. */
import { type FormEvent, useId, useState } from 'react';
import type { EncodingQuestion } from './send-transcript.ts';
import styles from './transcript-file.module.css';

interface EncodingChoiceProps {
  readonly question: EncodingQuestion;
  readonly onChoose: (encoding: string) => void;
  readonly onPutAside: () => void;
}

export function EncodingChoice({ question, onChoose, onPutAside }: EncodingChoiceProps) {
  const [chosen, setChosen] = useState('');
  const [unanswered, setUnanswered] = useState(false);
  const name = useId();
  const answer = (event: FormEvent) => {
    event.preventDefault();
    if (chosen === '') setUnanswered(true);
    else onChoose(chosen);
  };
  return (
    <form onSubmit={answer}>
      <fieldset aria-describedby={`${name}-why`}>
        <legend>Which line reads right?</legend>
        <p className="hint" id={`${name}-why`}>
          {question.name} does not say how its letters are written down. This is one line of it, read in each
          way that fits. Choose the one that reads right.
        </p>
        {question.candidates.map(({ encoding, label, sample }) => (
          <label key={encoding} className={styles.candidate}>
            <input
              type="radio"
              name={name}
              value={encoding}
              checked={chosen === encoding}
              onChange={() => setChosen(encoding)}
            />
            <span>
              <span className={styles.sample} dir="auto">
                {sample}
              </span>
              <span className="hint">{label}</span>
            </span>
          </label>
        ))}
      </fieldset>
      {unanswered && chosen === '' && (
        <p className="fault" role="alert">
          Choose the line that reads right first.
        </p>
      )}
      <div className="row">
        <button type="submit">Read the file this way</button>
        <button type="button" className="quiet" onClick={onPutAside}>
          Put the file aside
        </button>
      </div>
    </form>
  );
}
