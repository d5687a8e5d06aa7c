'use client';
import { useRouter } from 'next/navigation';
import { TextField } from '#app/forms/field.client.tsx';
import { JsonForm } from '#app/forms/json-form.client.tsx';
import styles from './lesson-list.module.css';

/** A title is enough to begin; the next screen brings in what there is. */
export function CreateLessonForm({ workshop, first }: { workshop: string; first: boolean }) {
  const router = useRouter();
  return (
    <JsonForm
      to={`/api/workshops/${encodeURIComponent(workshop)}/lessons`}
      submit="Begin the lesson"
      busy="Beginning…"
      tone={first ? undefined : 'quiet'}
      label="New lesson"
      className={styles['begin']}
      done={(answer) => {
        const id =
          typeof answer === 'object' && answer !== null && 'lesson' in answer ? String(answer.lesson) : '';
        router.push(`/bench/${workshop}/lessons/${id}/bring-in`);
        router.refresh();
      }}
    >
      <TextField name="title" label="Title of a new lesson" autoComplete="off" required />
    </JsonForm>
  );
}
