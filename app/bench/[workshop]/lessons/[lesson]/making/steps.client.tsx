'use client';
/** Steps that add no rings, and links: plain lists of a few fields each. */
import { useDraft } from '../draft.client.tsx';
import { LinkField } from './fields/link-field.client.tsx';
import { TextField } from './fields/text-field.client.tsx';
import { focusAdded } from './focus-added.ts';
import { ItemButtons } from './item-buttons.client.tsx';
import styles from './making.module.css';
import { MomentField } from './moment-field.client.tsx';
import { useList } from './use-list.ts';

export function Steps({ lessonId }: { lessonId: string }) {
  const steps = useList('steps', 'step');
  const { content, mayEdit } = useDraft();
  const places = content.start.length + content.repeat.length + content.finishing.length > 0;
  const add = () => {
    const id = crypto.randomUUID();
    steps.add({ id, sentence: '', atMs: null, pictureText: '' });
    focusAdded(id);
  };
  return (
    <>
      <p className="soft">
        {places
          ? 'Cleaning, sorting, fastening the clasp: each stands at its moment between the placements.'
          : 'What the hands do, one step after another. With its moment, each shows its picture and stands in its chapter.'}
      </p>
      <ol className={styles.cards}>
        {steps.items.map((step, index) => (
          <li key={step.id} id={step.id} className={styles.card}>
            <TextField
              id={`${step.id}-sentence`}
              label={`Step ${index + 1}`}
              rows={2}
              value={step.sentence}
              onTake={(sentence, run) => steps.put({ ...step, sentence }, 'sentence', run)}
            />
            <MomentField
              id={`${step.id}-moment`}
              pictureId={`${step.id}-picture`}
              addsRings={false}
              place={`${lessonId}/${step.id}`}
              called={`step ${index + 1}`}
              atMs={step.atMs}
              pictureText={step.pictureText}
              onMoment={(atMs, run) => steps.put({ ...step, atMs }, 'moment', run)}
              onPictureText={(pictureText, run) => steps.put({ ...step, pictureText }, 'picture', run)}
            />
            <ItemButtons
              name={`step ${index + 1}`}
              index={index}
              count={steps.items.length}
              onMove={(by) => steps.move(step.id, by)}
              onRemove={() => steps.remove(step.id)}
            />
          </li>
        ))}
      </ol>
      {mayEdit && (
        <button type="button" className="quiet" onClick={add}>
          Add a step
        </button>
      )}
    </>
  );
}

export function Links({ lessonId }: { lessonId: string }) {
  const links = useList('links', 'link');
  const { mayEdit } = useDraft();
  const add = () => {
    const id = crypto.randomUUID();
    links.add({ id, label: '', address: '' });
    focusAdded(id);
  };
  return (
    <>
      <ul className={styles.lines}>
        {links.items.map((link, index) => (
          <li key={link.id} id={link.id} className={styles.line}>
            <TextField
              label="What it leads to"
              value={link.label}
              onTake={(label, run) => links.put({ ...link, label }, 'words', run)}
            />
            <LinkField
              id={`${link.id}-link`}
              label="Address"
              place={`${lessonId}/${link.id}`}
              value={link.address}
              onTake={(address, run) => links.put({ ...link, address }, 'address', run)}
            />
            <ItemButtons
              name={`link ${link.label || index + 1}`}
              index={index}
              count={links.items.length}
              onMove={(by) => links.move(link.id, by)}
              onRemove={() => links.remove(link.id)}
            />
          </li>
        ))}
      </ul>
      {mayEdit && (
        <button type="button" className="quiet" onClick={add}>
          Add a link
        </button>
      )}
    </>
  );
}
