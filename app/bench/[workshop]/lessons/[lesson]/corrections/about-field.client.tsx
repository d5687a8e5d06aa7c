'use client';
import { type Content, type Correction, SEQUENCE_PARTS } from '#lib/lesson/content.ts';
/** What a correction is about, where that is a thing of the lesson. */
import { PART_TITLES } from '#lib/lesson/page-steps.ts';
import { useDraft } from '../draft.client.tsx';

interface AboutFieldProps {
  readonly correction: Correction;
  readonly onChange: (correction: Correction) => void;
}

interface Choice {
  readonly id: string;
  readonly words: string;
}

export function AboutField({ correction, onChange }: AboutFieldProps) {
  const { content } = useDraft();
  const choices = choicesOf(content);
  const id = `of-${correction.id}`;
  // A thing that was taken out since is still named, so that choosing is not lost in silence.
  const isGone = correction.of !== null && !choices.some((choice) => choice.id === correction.of);
  return (
    <div className="field">
      <label htmlFor={id}>Thing that it is about</label>
      <select
        id={id}
        value={correction.of ?? ''}
        onChange={(event) => onChange({ ...correction, of: event.target.value || null })}
      >
        <option value="">nothing in particular</option>
        {isGone && <option value={correction.of ?? ''}>something that is not in the lesson any more</option>}
        {choices.map((choice) => (
          <option key={choice.id} value={choice.id}>
            {choice.words}
          </option>
        ))}
      </select>
    </div>
  );
}

const short = (text: string): string => (text.length > 60 ? `${text.slice(0, 59)}…` : text);

const choicesOf = (content: Content): readonly Choice[] => [
  ...content.ringKinds.map(({ id, name }) => ({ id, words: `ring kind: ${name}` })),
  ...SEQUENCE_PARTS.flatMap((part) =>
    content[part].map(({ id, sentence }, k) => ({
      id,
      words: short(`${PART_TITLES[part].toLowerCase()}, ${k + 1}: ${sentence}`),
    })),
  ),
  ...content.steps.map(({ id, sentence }) => ({ id, words: short(`step: ${sentence}`) })),
  ...content.materials.map(({ id, name }) => ({ id, words: `material: ${name}` })),
  ...content.cautions.map(({ id, text, of }) => ({ id, words: short(`caution: ${text || of}`) })),
  ...content.links.map(({ id, label, address }) => ({ id, words: short(`link: ${label || address}`) })),
];
