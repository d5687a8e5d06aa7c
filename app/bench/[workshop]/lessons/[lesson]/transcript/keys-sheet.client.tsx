'use client';
/** The keys of the screen, to look up and to switch off. */
import { useId, useRef } from 'react';
import { KEYS } from './keys.ts';
import styles from './keys-sheet.module.css';

const PLAIN = [
  ['Enter', 'On a cue: edit its text. In the text: done'],
  ['↑ ↓', 'On a cue: the former or next one; with Shift choose several'],
  ['Space', 'On a cue: play it'],
  ['Shift Enter', 'In the text: a new line'],
  ['Ctrl Enter', 'In the text: split the cue at the caret'],
  ['Backspace', 'At the start of the text: join with the former cue'],
  ['Esc', 'In the text: done'],
  ['Ctrl Z', 'Undo; with Shift, or Ctrl Y, redo'],
  ['Ctrl F', 'Find in the transcript'],
] as const;

export function KeysSheet({ on, setOn }: { on: boolean; setOn: (on: boolean) => void }) {
  const sheet = useRef<HTMLDialogElement>(null);
  const title = useId();
  return (
    <>
      <button type="button" className="quiet" onClick={() => sheet.current?.showModal()}>
        Keys
      </button>
      <dialog ref={sheet} className={styles.sheet} aria-labelledby={title}>
        <h2 id={title}>Keys</h2>
        <p>Everything can be done with buttons too. On a Mac, Alt is Option and Ctrl is Command.</p>
        <label className="tick">
          <input type="checkbox" checked={on} onChange={(event) => setOn(event.target.checked)} />
          Use the keys with Alt
        </label>
        <div className="table-frame">
          <table>
            <tbody>
              {KEYS.map((row) => (
                <tr key={row.act}>
                  <th scope="row">
                    <kbd>Alt</kbd> <kbd>{row.shown}</kbd>
                  </th>
                  <td>{row.does}</td>
                </tr>
              ))}
              {PLAIN.map(([keys, does]) => (
                <tr key={keys}>
                  <th scope="row">
                    <kbd>{keys}</kbd>
                  </th>
                  <td>{does}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
        <button type="button" onClick={() => sheet.current?.close()}>
          Close
        </button>
      </dialog>
    </>
  );
}
