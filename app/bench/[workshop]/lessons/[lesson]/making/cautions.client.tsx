'use client';
/** Cautions: those that fit what the lesson uses are offered, the teacher decides and may reword. */
import { cautionWords, offeredCautions } from '#lib/lesson/cautions.ts';
import { useDraft } from '../draft.client.tsx';
import { TextField } from './fields/text-field.client.tsx';
import { focusAdded } from './focus-added.ts';
import { ItemButtons } from './item-buttons.client.tsx';
import styles from './making.module.css';
import { useList } from './use-list.ts';

export function Cautions() {
  const { content, mayEdit } = useDraft();
  const cautions = useList('cautions', 'caution');
  const offered = offeredCautions(content);
  const add = (of: string | null) => {
    const id = crypto.randomUUID();
    cautions.add({ id, of, text: '' });
    // Her own, empty or offered for rewording: the keyboard goes where its words are.
    focusAdded(id);
  };
  return (
    <>
      <ul className={styles.cards}>
        {cautions.items.map((caution, index) => {
          const { title, text } = cautionWords(caution);
          return (
            <li key={caution.id} id={caution.id} className={styles.card}>
              <TextField
                label={title || `Caution ${index + 1}`}
                rows={3}
                value={text}
                onTake={(value, run) => cautions.put({ ...caution, text: value }, 'words', run)}
              />
              <ItemButtons
                name={title || `caution ${index + 1}`}
                index={index}
                count={cautions.items.length}
                onMove={(by) => cautions.move(caution.id, by)}
                onRemove={() => cautions.remove(caution.id)}
              />
            </li>
          );
        })}
      </ul>
      {mayEdit && offered.length > 0 && (
        <>
          <h3>Offered, by what the lesson uses</h3>
          <p className="soft">Common practice, no legal advice: check the rules where you teach and sell.</p>
          <ul className={styles.cards}>
            {offered.map((one) => (
              <li key={one.id} id={one.id} className={styles.offered}>
                <div>
                  <strong>{one.title}</strong>
                  <p>{one.text}</p>
                </div>
                <button type="button" className="quiet" onClick={() => add(one.id)}>
                  Add<span className="unseen"> the caution {one.title}</span>
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
      {mayEdit && (
        <button type="button" className="quiet" onClick={() => add(null)}>
          Write one of my own
        </button>
      )}
    </>
  );
}
