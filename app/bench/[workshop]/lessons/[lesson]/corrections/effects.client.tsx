'use client';
/** What the program found to be put right with a correction; each is taken or left by a tick. */
import { useDeferredValue, useId, useMemo, useRef, useState } from 'react';
import { effectPlaceWords } from '#app/words/effect-words.ts';
import { applyChange, type Change } from '#lib/lesson/change.ts';
import type { Correction } from '#lib/lesson/content.ts';
import {
  type ProposedEffect,
  proposeEffects,
  takeBackEffect,
  takeEffect,
  takenEffects,
} from '#lib/lesson/correction-effects.ts';
import { wordDifference } from '#lib/lesson/word-difference.ts';
import { useDraft } from '../draft.client.tsx';
import styles from './corrections.module.css';
import { WordParts } from './word-parts.tsx';

interface EffectsProps {
  readonly correction: Correction;
  readonly bench: string;
}

/** More are a sign that the wrong value is too short a word. */
const MOST_SHOWN = 40;

interface Row {
  readonly effect: ProposedEffect;
  readonly isTaken: boolean;
}

const keyOf = ({ of, field }: ProposedEffect): string => `${of} ${field}`;

export function Effects({ correction, bench }: EffectsProps) {
  const { content, cues, mayEdit, change } = useDraft();
  const [told, setTold] = useState('');
  const title = useId();
  const draft = useMemo(() => ({ content, cues }), [content, cues]);
  // While she types, what was found last stays on the screen.
  const sought = useDeferredValue(correction);
  const rows = useRowsInPlace(
    useMemo(() => {
      const taken = takenEffects(draft, sought);
      const known = new Set(taken.map(keyOf));
      return [
        ...taken.map((effect): Row => ({ effect, isTaken: true })),
        ...proposeEffects(draft, sought)
          .filter((effect) => !known.has(keyOf(effect)))
          .map((effect): Row => ({ effect, isTaken: false })),
      ];
    }, [draft, sought]),
  );
  const near = rows.filter(({ effect }) => effect.isNear);
  const elsewhere = rows.filter(({ effect }) => !effect.isNear);

  const take = (wanted: readonly ProposedEffect[]) => {
    let [now, made] = [draft, [] as Change[]];
    for (const effect of wanted) {
      const current = now.content.corrections.find(({ id }) => id === correction.id);
      const changes = current && takeEffect(now, current, effect);
      if (!changes) continue;
      made = [...made, ...changes];
      now = changes.reduce(applyChange, now);
    }
    if (made.length > 0) change(made, 'put right what a correction is about');
    setTold(made.length > 0 ? 'Changed in the draft.' : 'It was changed meanwhile; look at it there.');
  };
  const leave = (effect: ProposedEffect) => {
    const changes = takeBackEffect(draft, correction, effect);
    change(changes, 'leave what a correction put right');
    setTold(
      changes.length > 1 ? 'As it was before.' : 'It was changed since then, so it stays as it is now.',
    );
  };
  const open = rows.filter(({ isTaken }) => !isTaken).map(({ effect }) => effect);
  if (correction.wrong.trim() === '' || correction.right.trim() === '') return null;
  return (
    <section className={styles.proposals} aria-labelledby={title}>
      <h3 id={title}>Put the lesson itself right</h3>
      <p className="hint">
        {rows.length === 0
          ? 'Nothing in the lesson holds the wrong value in these words.'
          : 'What you tick is changed in the draft at once; without the tick it is as it was.'}
      </p>
      {near.length > 0 && elsewhere.length > 0 && <h4>Where the correction is</h4>}
      <Rows rows={near} mayEdit={mayEdit} take={take} leave={leave} />
      {near.length > 0 && elsewhere.length > 0 && <h4>Elsewhere in the lesson</h4>}
      <Rows rows={elsewhere} mayEdit={mayEdit} take={take} leave={leave} />
      {mayEdit && open.length > 1 && (
        <p>
          <button type="button" className="quiet" onClick={() => take(open)}>
            Put right all {open.length} that are left
          </button>
        </p>
      )}
      <p role="status" className="hint">
        {told}
      </p>
      <p>
        What is not found here is changed by hand: <a href={`${bench}/transcript`}>transcript</a>,{' '}
        <a href={`${bench}/making`}>making</a>.
      </p>
    </section>
  );
}

/** Rows stay where they were first shown, so that a tick does not make its row jump. */
function useRowsInPlace(rows: readonly Row[]): readonly Row[] {
  const places = useRef(new Map<string, number>());
  for (const { effect } of rows) {
    const key = keyOf(effect);
    if (!places.current.has(key)) places.current.set(key, places.current.size);
  }
  const placeOf = ({ effect }: Row): number => places.current.get(keyOf(effect)) ?? 0;
  return rows.toSorted((one, other) => placeOf(one) - placeOf(other));
}

interface RowsProps {
  readonly rows: readonly Row[];
  readonly mayEdit: boolean;
  readonly take: (wanted: readonly ProposedEffect[]) => void;
  readonly leave: (effect: ProposedEffect) => void;
}

const Rows = ({ rows, mayEdit, take, leave }: RowsProps) =>
  rows.length === 0 ? null : (
    <>
      <ul className={styles.effects}>
        {rows.slice(0, MOST_SHOWN).map(({ effect, isTaken }) => (
          <li key={keyOf(effect)}>
            <label className="tick">
              <input
                type="checkbox"
                checked={isTaken}
                disabled={!mayEdit}
                onChange={() => (isTaken ? leave(effect) : take([effect]))}
              />
              <span>
                <strong>{effectPlaceWords(effect)}:</strong>{' '}
                <WordParts parts={wordDifference(effect.before, effect.after)} />
              </span>
            </label>
          </li>
        ))}
      </ul>
      {rows.length > MOST_SHOWN && (
        <p className="hint">{rows.length - MOST_SHOWN} more; write more of the wrong words to find fewer.</p>
      )}
    </>
  );
