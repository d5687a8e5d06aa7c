'use client';
/** The sizes that the lesson gives kits for. */
import { useDraft } from '../draft.client.tsx';
import { LengthField } from './fields/number-field.client.tsx';
import { TextField } from './fields/text-field.client.tsx';
import { focusAdded } from './focus-added.ts';
import { ItemButtons } from './item-buttons.client.tsx';
import styles from './making.module.css';
import { useList } from './use-list.ts';

export function Sizes({ lessonId }: { lessonId: string }) {
  const sizes = useList('sizes', 'size');
  const { mayEdit } = useDraft();
  const last = sizes.items.at(-1);
  return (
    <>
      <p className="soft">
        What the tape shows on wrist, ankle or neck; the ease is added by the rule above.
      </p>
      <ul className={styles.lines}>
        {sizes.items.map((size, index) => (
          <li key={size.id} id={size.id} className={styles.line}>
            <TextField
              id={`${size.id}-name`}
              label="Name"
              placeholder="medium"
              value={size.name}
              onTake={(name, run) => sizes.put({ ...size, name }, 'name', run)}
            />
            <LengthField
              label="Body measure"
              place={`${lessonId}/${size.id}`}
              mm={size.bodyMm}
              leastMm={1}
              mostMm={10_000}
              onTake={(mm, run) => mm !== null && sizes.put({ ...size, bodyMm: mm }, 'measure', run)}
            />
            <ItemButtons
              name={`size ${size.name || index + 1}`}
              index={index}
              count={sizes.items.length}
              onMove={(by) => sizes.move(size.id, by)}
              onRemove={() => sizes.remove(size.id)}
            />
          </li>
        ))}
      </ul>
      {mayEdit && (
        <button
          type="button"
          className="quiet"
          onClick={() => {
            const id = crypto.randomUUID();
            sizes.add({
              id,
              name: '',
              bodyMm: Math.min(10_000, (last?.bodyMm ?? 150) + (last ? 15 : 0)),
            });
            focusAdded(`${id}-name`);
          }}
        >
          Add a size
        </button>
      )}
    </>
  );
}
