'use client';
/** What the lesson is, before any ring: title, weave, difficulty, time. */
import { DIFFICULTIES, type ScalarField } from '#lib/lesson/content.ts';
import { failed, ok } from '#lib/result.ts';
import { useDraft } from '../draft.client.tsx';
import { ChoiceField } from './fields/choice-field.client.tsx';
import styles from './fields/fields.module.css';
import { NumberField } from './fields/number-field.client.tsx';
import { TextField } from './fields/text-field.client.tsx';
import { TypedField } from './fields/typed-field.client.tsx';

export function LessonFacts({ lessonId }: { lessonId: string }) {
  const { content, change } = useDraft();
  const set = (field: ScalarField, value: unknown, label: string, run?: string) =>
    change([{ kind: 'set', field, value }], label, run);
  return (
    <>
      <TextField
        id="title"
        label="Title of the lesson"
        value={content.title}
        onTake={(value, run) => set('title', value, 'title', run)}
      />
      <TextField
        id="summary"
        label="Summary"
        rows={3}
        hint="Two or three sentences: what is made, for whom, what it needs."
        value={content.summary}
        onTake={(value, run) => set('summary', value, 'summary', run)}
      />
      <div className={styles.grid}>
        <TextField
          id="weave"
          label="Weave or technique"
          value={content.weave}
          onTake={(value, run) => set('weave', value, 'weave', run)}
        />
        <TextField
          label="Other names it goes by"
          value={content.otherNames}
          onTake={(value, run) => set('otherNames', value, 'other names', run)}
        />
        <ChoiceField
          label="For whom"
          value={content.difficulty}
          choices={DIFFICULTIES.map((one) => [one, one] as const)}
          onTake={(value) => set('difficulty', value, 'difficulty')}
        />
        <NumberField
          id="minutes"
          label="Preparing takes"
          unit="minutes"
          place={`${lessonId}/prepare`}
          value={content.prepareMinutes}
          places={0}
          least={0}
          most={100_000}
          mayBeEmpty
          onTake={(value, run) => set('prepareMinutes', value, 'minutes', run)}
        />
        <NumberField
          label="Making takes"
          unit="minutes"
          place={`${lessonId}/make`}
          value={content.makeMinutes}
          places={0}
          least={0}
          most={100_000}
          mayBeEmpty
          onTake={(value, run) => set('makeMinutes', value, 'minutes', run)}
        />
        <TypedField<string, 'currency'>
          label="Currency of all prices"
          place={`${lessonId}/currency`}
          shown={content.currency}
          hint="Three letters, such as EUR, GBP or USD."
          read={(text) =>
            /^[a-z]{3}$/i.test(text.trim()) ? ok(text.trim().toUpperCase()) : failed('currency')
          }
          take={(value, run) => set('currency', value, 'currency', run)}
          faultWords={() => 'A currency is three letters, such as EUR.'}
        />
        <TextField
          id="licence"
          label="Who may use this lesson, and how"
          hint="A licence or a sentence: for private use only."
          value={content.licence}
          onTake={(value, run) => set('licence', value, 'licence', run)}
        />
      </div>
    </>
  );
}
