'use client';
/**
 * Asked when two people, or two windows, changed the same thing: both states
 * are shown, nothing is chosen beforehand, and nothing is written until it is
 * decided. Closing the dialog decides nothing; the bar leads back to it.
 */
import { useEffect, useId, useRef, useState } from 'react';
import { keyWords, namesInWords } from '#app/words/draft-words.ts';
import type { Draft } from '#lib/lesson/change.ts';
import type { Collision } from '#lib/lesson/pending.ts';
import styles from './collision-dialog.module.css';
import { useDraftPart, useDraftStore } from './draft.client.tsx';
import type { Collided } from './draft-store.ts';
import type { OtherSave } from './send-save.ts';

/** Asks for the dialog to be shown again. */
export const DECIDE_EVENT = 'benchleaf:decide';

export function CollisionDialog() {
  const collided = useDraftPart((state) => state.collided);
  return collided ? <Decide key={collided.theirs.version} collided={collided} /> : null;
}

type Choice = 'mine' | 'theirs';

function Decide({ collided }: { collided: Collided }) {
  const store = useDraftStore();
  const dialog = useRef<HTMLDialogElement>(null);
  const [choices, setChoices] = useState<ReadonlyMap<number, Choice>>(new Map());
  const [asked, setAsked] = useState(false);
  const title = useId();
  const { collisions, mine, theirs, saves } = collided;
  const open = collisions.length - choices.size;

  useEffect(() => {
    const show = () => dialog.current?.open || dialog.current?.showModal();
    show();
    window.addEventListener(DECIDE_EVENT, show);
    return () => window.removeEventListener(DECIDE_EVENT, show);
  }, []);

  const chooseAll = (choice: Choice) => setChoices(new Map(collisions.map((_, at) => [at, choice])));
  const decide = () => {
    setAsked(true);
    if (open > 0) return;
    store.resolve(new Set([...choices].flatMap(([at, choice]) => (choice === 'theirs' ? [at] : []))));
  };

  return (
    <dialog ref={dialog} className={styles.dialog} aria-labelledby={title}>
      <h2 id={title}>{whoChanged(saves)} changed the same thing</h2>
      <p>
        Nothing has been overwritten. For each of these, say which one stays. Everything else that was
        changed, here and there, is kept.
      </p>
      {collisions.length > 1 && (
        <p className="row">
          <button type="button" className="quiet" onClick={() => chooseAll('mine')}>
            Keep all of mine
          </button>
          <button type="button" className="quiet" onClick={() => chooseAll('theirs')}>
            Take all of theirs
          </button>
        </p>
      )}
      <div className={styles.list}>
        {collisions.slice(0, 100).map((collision, at) => (
          <OneCollision
            key={collision.keys.join()}
            collision={collision}
            mine={mine}
            theirs={theirs}
            saves={saves}
            choice={choices.get(at)}
            choose={(choice) => setChoices(new Map(choices).set(at, choice))}
          />
        ))}
        {collisions.length > 100 && (
          <p>And {collisions.length - 100} more: use the buttons above to decide all of them at once.</p>
        )}
      </div>
      {asked && open > 0 && (
        <p className="fault" role="alert">
          {open === 1 ? 'One is still undecided.' : `${open} are still undecided.`}
        </p>
      )}
      <p className="row">
        <button type="button" onClick={decide}>
          Go on with these
        </button>
        <button type="button" className="quiet" onClick={() => dialog.current?.close()}>
          Decide later
        </button>
      </p>
    </dialog>
  );
}

function OneCollision({
  collision,
  mine,
  theirs,
  saves,
  choice,
  choose,
}: {
  collision: Collision;
  mine: Draft;
  theirs: Draft;
  saves: readonly OtherSave[];
  choice: Choice | undefined;
  choose: (choice: Choice) => void;
}) {
  const group = useId();
  const key = collision.met[0] ?? collision.keys[0] ?? '';
  const own = keyWords(mine, key);
  const other = keyWords(theirs, key);
  const save = saves.findLast((one) => one.keys.includes(key)) ?? saves.at(-1);
  const more = collision.keys.length - 1;
  return (
    <fieldset className={styles.one}>
      <legend>
        {own.says === null ? other.what : own.what}
        {more > 0 && ` and ${more} more changed together with it`}
      </legend>
      <label className={styles.side}>
        <span className="tick">
          <input type="radio" name={group} checked={choice === 'mine'} onChange={() => choose('mine')} />
          Keep mine
        </span>
        <span className={styles.says}>{own.says ?? 'Taken out'}</span>
      </label>
      <label className={styles.side}>
        <span className="tick">
          <input type="radio" name={group} checked={choice === 'theirs'} onChange={() => choose('theirs')} />
          Take theirs
        </span>
        <span className={styles.says}>{other.says ?? 'Taken out'}</span>
        {save && (
          <span className="hint">
            {save.own ? 'You, in another window' : save.by}, {new Date(save.at).toLocaleString('en-GB')}
          </span>
        )}
      </label>
    </fieldset>
  );
}

function whoChanged(saves: readonly OtherSave[]): string {
  const others = [...new Set(saves.filter((save) => !save.own).map((save) => save.by))];
  return others.length > 0 ? namesInWords(others) : 'Another window of yours';
}
