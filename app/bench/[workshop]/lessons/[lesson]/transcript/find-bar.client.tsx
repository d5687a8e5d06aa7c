'use client';
/** Finds words in the whole transcript and puts others in their place, one by one or all. */
import { useEffect, useId, useMemo, useRef, useState } from 'react';
import type { Cue } from '#lib/transcript/cue.ts';
import { type Found, findText } from '#lib/transcript/find-text.ts';
import { useDraftPart } from '../draft.client.tsx';
import type { Mark } from './cue-row.client.tsx';
import styles from './find-bar.module.css';
import type { MarkUp } from './mark-up.ts';

export function FindBar({
  markUp,
  show,
  onMarks,
  close,
}: {
  markUp: MarkUp;
  /** Brings a cue into view without taking the keyboard. */
  show: (cueId: string) => void;
  onMarks: (marks: ReadonlyMap<string, readonly Mark[]>) => void;
  /** Told the cue of the place that was found, or null. */
  close: (foundId: string | null) => void;
}) {
  const id = useId();
  const words = useRef<HTMLInputElement>(null);
  const cues = useDraftPart((state) => state.cues);
  const mayEdit = useDraftPart((state) => state.mayEdit);
  const [sought, setSought] = useState('');
  const [exact, setExact] = useState(false);
  const [instead, setInstead] = useState('');
  const [at, setAt] = useState(0);
  const [told, setTold] = useState('');
  const found = useMemo(() => findText(cues, sought, exact), [cues, sought, exact]);
  const here = Math.min(at, Math.max(0, found.length - 1));

  useEffect(() => words.current?.focus(), []);
  useEffect(() => {
    onMarks(marksOf(found, here));
    return () => onMarks(new Map());
  }, [found, here, onMarks]);

  const seek = (text: string) => {
    setSought(text);
    setAt(0);
    setTold('');
    const first = findText(cues, text, exact)[0];
    if (first) show(first.cueId);
  };
  const go = (by: number) => {
    if (found.length === 0) return;
    const next = (here + by + found.length) % found.length;
    setAt(next);
    const one = found[next];
    if (one) show(one.cueId);
  };
  const leave = () => close(found[here]?.cueId ?? null);
  const replaceOne = () => {
    const one = found[here];
    if (!one) return;
    markUp.replace([one], instead);
    setTold('Replaced in one place.');
    const next = nextAfter(found, here, cues);
    if (next) show(next);
  };
  const replaceAll = () => {
    markUp.replace(found, instead);
    setTold(`Replaced in ${found.length} places. Undo takes it back.`);
  };

  return (
    <search className={styles.find}>
      <div className={styles.findRow}>
        <label htmlFor={`${id}-words`}>Find</label>
        <input
          ref={words}
          id={`${id}-words`}
          value={sought}
          autoComplete="off"
          onChange={(event) => seek(event.target.value)}
          onKeyDown={(event) => {
            if (event.key === 'Enter') go(event.shiftKey ? -1 : 1);
            if (event.key === 'Escape') leave();
          }}
        />
        <button type="button" className="quiet" onClick={() => go(-1)}>
          Former
        </button>
        <button type="button" className="quiet" onClick={() => go(1)}>
          Next
        </button>
        <label className={styles.exact}>
          <input type="checkbox" checked={exact} onChange={(event) => setExact(event.target.checked)} />
          Large and small letters as written
        </label>
      </div>
      {mayEdit && (
        <div className={styles.findRow}>
          <label htmlFor={`${id}-instead`}>Put instead</label>
          <input
            id={`${id}-instead`}
            value={instead}
            autoComplete="off"
            onChange={(event) => setInstead(event.target.value)}
            onKeyDown={(event) => {
              if (event.key === 'Enter') replaceOne();
              if (event.key === 'Escape') leave();
            }}
          />
          <button type="button" className="quiet" disabled={found.length === 0} onClick={replaceOne}>
            Replace this one
          </button>
          <button type="button" className="quiet" disabled={found.length === 0} onClick={replaceAll}>
            Replace all{found.length > 0 ? ` ${found.length}` : ''}
          </button>
        </div>
      )}
      <p className="hint" role="status">
        {told} {sought.trim() === '' ? '' : countWords(found.length, here)}
      </p>
      <button type="button" className="bare" onClick={leave}>
        Close the search
      </button>
    </search>
  );
}

const countWords = (count: number, here: number): string =>
  count === 0 ? 'Found nowhere.' : count === 1 ? 'Found in one place.' : `Place ${here + 1} of ${count}.`;

/** The cue of the place behind this one. */
const nextAfter = (found: readonly Found[], here: number, cues: readonly Cue[]): string | null => {
  const next = found[here + 1] ?? found[0];
  return next && cues.some((cue) => cue.id === next.cueId) ? next.cueId : null;
};

function marksOf(found: readonly Found[], here: number): ReadonlyMap<string, readonly Mark[]> {
  const marks = new Map<string, Mark[]>();
  found.forEach(({ cueId, start, end }, place) => {
    const mark = { start, end, current: place === here };
    const list = marks.get(cueId);
    if (list) list.push(mark);
    else marks.set(cueId, [mark]);
  });
  return marks;
}
