'use client';
/** The head of a lesson's screens: its title, its stages, whether all is saved, undo and redo. */
import Link from 'next/link';
import { usePathname } from 'next/navigation';
import { useEffect, useState } from 'react';
import { namesInWords, refusalWords, type SaveStateCode, saveStateWords } from '#app/words/draft-words.ts';
import { DECIDE_EVENT } from './collision-dialog.client.tsx';
import { useDraftPart, useDraftStore } from './draft.client.tsx';
import type { DraftNote } from './draft-store.ts';
import styles from './lesson-bar.module.css';

const STAGES = [
  ['bring-in', 'Bring in'],
  ['transcript', 'Transcript'],
  ['making', 'Making'],
  ['kit', 'Kit'],
  ['check', 'Check'],
  ['corrections', 'Corrections'],
] as const;

/** @param base address of the lesson, without a slash at its end. */
export function LessonBar({ base }: { base: string }) {
  const title = useDraftPart((state) => state.content.title);
  return (
    <section aria-labelledby="lesson-title">
      <div className={styles.head}>
        <h1 id="lesson-title" className={styles.title}>
          {title || 'Lesson without a title'}
        </h1>
      </div>
      <div className={styles.bar}>
        <Stages base={base} />
        <div className={styles.state}>
          <SaveStateLine />
          <UndoButtons />
        </div>
      </div>
      <Notes />
    </section>
  );
}

function Stages({ base }: { base: string }) {
  const path = usePathname();
  return (
    <nav aria-label="Stages of the lesson" className={styles.stages}>
      <ul>
        {STAGES.map(([part, label]) => (
          <li key={part}>
            <Link
              href={`${base}/${part}`}
              aria-current={path.startsWith(`${base}/${part}`) ? 'page' : undefined}
            >
              {label}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}

function SaveStateLine() {
  const state = useDraftPart((draft) => draft.saveState);
  // Only where things come to rest is it spoken, and only when that is news.
  const [spoken, setSpoken] = useState('');
  useEffect(() => {
    if (state !== 'saving' && state !== 'unsaved' && state !== 'read-only') setSpoken(saveStateWords(state));
  }, [state]);
  return (
    <span className={styles.save} data-state={state} data-testid="save-state">
      <span aria-hidden="true">{markOf(state)}</span>
      {saveStateWords(state)}
      <span className="unseen" role="status">
        {spoken}
      </span>
    </span>
  );
}

function markOf(state: SaveStateCode): string {
  switch (state) {
    case 'saved':
      return '✓';
    case 'unsaved':
    case 'saving':
      return '…';
    case 'read-only':
      return '◦';
    case 'offline':
    case 'collided':
    case 'refused':
    case 'signed-out':
      return '!';
  }
}

function UndoButtons() {
  const store = useDraftStore();
  const mayEdit = useDraftPart((state) => state.mayEdit);
  const undoLabel = useDraftPart((state) => state.undoLabel);
  const redoLabel = useDraftPart((state) => state.redoLabel);
  if (!mayEdit) return null;
  return (
    <span className={styles.undo}>
      <UndoButton name="Undo" label={undoLabel} act={store.undo} />
      <UndoButton name="Redo" label={redoLabel} act={store.redo} />
    </span>
  );
}

/** Stays focusable when there is nothing to take back, so that the keyboard's place is not lost. */
function UndoButton({ name, label, act }: { name: string; label: string | null; act: () => void }) {
  return (
    <button
      type="button"
      className="quiet"
      aria-disabled={label === null}
      title={label === null ? `Nothing to ${name.toLowerCase()}` : `${name}: ${label}`}
      onClick={act}
    >
      {name}
      {label !== null && <span className={styles.what}>: {label}</span>}
    </button>
  );
}

function Notes() {
  const store = useDraftStore();
  const note = useDraftPart((state) => state.note);
  const refused = useDraftPart((state) => state.refused);
  const saveState = useDraftPart((state) => state.saveState);
  return (
    <div className={styles.notes}>
      <div role="status">
        {note && (
          <div className={`notice ${styles.note}`}>
            <p>{noteWords(note)}</p>
            <button type="button" className="bare" onClick={store.dismissNote}>
              Close this note
            </button>
          </div>
        )}
      </div>
      {saveState === 'collided' && (
        <div className={`notice caution ${styles.note}`}>
          <p>Someone else changed what you changed. Nothing is saved until you have decided.</p>
          <button
            type="button"
            className="quiet"
            onClick={() => window.dispatchEvent(new Event(DECIDE_EVENT))}
          >
            Decide now
          </button>
        </div>
      )}
      {saveState === 'signed-out' && (
        <div className={`notice caution ${styles.note}`} role="alert">
          <p>
            You are signed out. Your changes are kept in this browser.{' '}
            <a href="/sign-in" target="_blank" rel="noreferrer">
              Sign in in a new window
            </a>
            ; saving then goes on by itself.
          </p>
        </div>
      )}
      {refused && (
        <div className="notice alarm" role="alert">
          <p>{refusalWords(refused.code)}</p>
          {refused.faults.length > 0 && (
            <ul>
              {refused.faults.slice(0, 20).map((one) => (
                <li key={`${one.where} ${one.message}`}>
                  {one.where}
                  {one.message && `: ${one.message}`}
                </li>
              ))}
            </ul>
          )}
        </div>
      )}
    </div>
  );
}

function noteWords(note: DraftNote): string {
  switch (note.kind) {
    case 'taken-in':
      return note.ownWindow
        ? 'Changes from another window were taken in.'
        : `Changes by ${namesInWords(note.by)} were taken in.`;
    case 'taken-up':
      return note.count === 1
        ? 'A change that had not been saved was taken up again.'
        : `${note.count} changes that had not been saved were taken up again.`;
  }
}
