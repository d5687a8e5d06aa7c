'use client';
/** What may be misheard, one place at a time: heard, seen in its sentence, taken or left. Nothing changes by itself. */
import Link from 'next/link';
import { useCallback, useEffect, useId, useMemo, useState } from 'react';
import { alike, type LookedAt, leftKey, placeOf } from '#lib/glossary/decide.ts';
import type { Suggestion } from '#lib/glossary/suggestion.ts';
import { offsetToMs } from '#lib/transcript/word-times.ts';
import { useDraftPart } from '../../draft.client.tsx';
import type { Mark } from '../cue-row.client.tsx';
import type { MarkUp } from '../mark-up.ts';
import type { Player } from '../player.ts';
import { DecisionCard } from './decision-card.client.tsx';
import { NumbersToHear } from './numbers-to-hear.client.tsx';
import styles from './to-decide.module.css';
import { useGlossary } from './use-glossary.ts';
import { useMisheard } from './use-misheard.ts';

interface ToDecideProps {
  readonly markUp: MarkUp;
  /** Null where there is no recording to listen to. */
  readonly player: Player | null;
  /** Address of the workshop's glossary routes, and of its screen. */
  readonly api: string;
  readonly glossaryAddress: string;
  /** Brings a cue into view without taking the keyboard. */
  readonly show: (cueId: string) => void;
  readonly onMarks: (marks: ReadonlyMap<string, readonly Mark[]>) => void;
}

/** Heard before the place itself, ms. */
const LEAD_MS = 1_500;
const NO_MARKS: ReadonlyMap<string, readonly Mark[]> = new Map();

export function ToDecide({ markUp, player, api, glossaryAddress, show, onMarks }: ToDecideProps) {
  const id = useId();
  const cues = useDraftPart((state) => state.cues);
  const mayEdit = useDraftPart((state) => state.mayEdit);
  const { glossary, decide, fault } = useGlossary(api);
  const { state, suggestions, toHear } = useMisheard(glossary);
  const [open, setOpen] = useState(false);
  const [looked, setLooked] = useState<LookedAt>({ id: '', at: 0 });
  const [told, setTold] = useState('');
  const here = placeOf(suggestions, looked);
  const one = suggestions[here];
  if (one && (one.id !== looked.id || here !== looked.at)) setLooked({ id: one.id, at: here });
  const group = useMemo(
    () => (one ? (alike(suggestions).find((some) => some.includes(one)) ?? [one]) : []),
    [suggestions, one],
  );

  useEffect(() => {
    if (!open || !one) return;
    onMarks(marksOf(one));
    return () => onMarks(NO_MARKS);
  }, [open, one, onMarks]);

  const play = useCallback(
    (cueId: string, offset: number) => {
      const cue = cues.find((each) => each.id === cueId);
      if (cue) player?.playFrom(Math.max(0, offsetToMs(cue, offset) - LEAD_MS));
    },
    [cues, player],
  );
  const take = (some: readonly Suggestion[]) => {
    markUp.take(some);
    const [first] = some;
    if (first) decide(first, 'taken', some.length);
    setTold(
      some.length === 1
        ? 'Taken. Undo takes it back.'
        : `Taken in ${some.length} places. Undo takes it back.`,
    );
  };
  const leave = (some: readonly Suggestion[], where: 'here' | 'everywhere') => {
    markUp.leave(
      where === 'here'
        ? some.map((each) => leftKey(each, where))
        : some.slice(0, 1).map((each) => leftKey(each, where)),
    );
    setTold(where === 'here' ? 'Left as it is.' : 'Left as it is in all places of this lesson.');
  };
  const never = (some: Suggestion) => {
    decide(some, 'never', 1);
    setTold(`“${some.heard}” will not be offered as “${some.instead}” again, in any lesson.`);
  };

  // Its line is there from the beginning, so that the transcript does not move when the search is done.
  if (state === 'failed')
    return <p className="hint">Misheard words could not be looked for. Load the page to try again.</p>;
  if (cues.length === 0) return null;
  const count = suggestions.length;
  const isEmpty = count === 0 && toHear.length === 0 && told === '';
  return (
    <section className={styles.place} aria-labelledby={`${id}-title`}>
      <div className={styles.bar}>
        <h3 id={`${id}-title`}>To decide</h3>
        <p className={styles.count}>
          {state === 'searching'
            ? 'Looking for words that may be misheard…'
            : countWords(count, toHear.length)}
        </p>
        {(open || !isEmpty) && (
          <button type="button" className="quiet" aria-expanded={open} onClick={() => setOpen(!open)}>
            {open ? 'Close' : 'Look'}
          </button>
        )}
      </div>
      {open && (
        <>
          {one && (
            <DecisionCard
              one={one}
              alike={group}
              cues={cues}
              mayEdit={mayEdit}
              play={player && play}
              show={show}
              take={take}
              leave={leave}
              never={never}
            />
          )}
          <Turn here={here} count={count} turnTo={(at) => setLooked({ id: suggestions[at]?.id ?? '', at })} />
          <p className="hint" role="status">
            {fault ?? told}
          </p>
          <NumbersToHear
            show={show}
            numbers={toHear}
            cues={cues}
            mayEdit={mayEdit}
            markUp={markUp}
            play={player && play}
          />
          <p className={styles.foot}>
            <Link href={glossaryAddress}>The workshop’s glossary</Link>
          </p>
        </>
      )}
    </section>
  );
}

/** Which of how many is looked at, and the way to the ones beside it. */
function Turn({ here, count, turnTo }: { here: number; count: number; turnTo: (at: number) => void }) {
  if (count < 2) return null;
  return (
    <div className={styles.turn}>
      <button type="button" className="quiet" onClick={() => turnTo((here - 1 + count) % count)}>
        Former
      </button>
      <span>
        {here + 1} of {count}
      </span>
      <button type="button" className="quiet" onClick={() => turnTo((here + 1) % count)}>
        Next
      </button>
    </div>
  );
}

function countWords(places: number, numbers: number): string {
  const words = places === 0 ? 'No words' : places === 1 ? 'One place' : `${places} places`;
  const toHear = numbers === 0 ? '' : `, ${numbers} ${numbers === 1 ? 'number' : 'numbers'} to listen to`;
  return `${words} that may be misheard${toHear}.`;
}

function marksOf(one: Suggestion): ReadonlyMap<string, readonly Mark[]> {
  return new Map(one.parts.map(({ cueId, start, end }) => [cueId, [{ start, end, current: true }]]));
}
