'use client';
/** Measured pieces of the same weave: what they differ by is repeats alone, so the ends fall out. */
import { useState } from 'react';
import { figure } from '#app/words/ring-words.ts';
import { sampleFaultWords } from '#app/words/sample-words.ts';
import type { Sample, SamplePiece } from '#lib/kit/making.ts';
import { fitSample } from '#lib/kit/sample-fit.ts';
import fieldStyles from './fields/fields.module.css';
import { LengthField, NumberField } from './fields/number-field.client.tsx';
import styles from './making.module.css';
import { useOpened } from './use-opened.ts';

type Typed = { readonly [of in keyof SamplePiece]: SamplePiece[of] | null };
const NOTHING: Typed = { repeats: null, mm: null };

const isWhole = (piece: Typed): piece is SamplePiece => piece.repeats !== null && piece.mm !== null;

export interface SamplePiecesProps {
  readonly lessonId: string;
  readonly sample: Sample | null;
  readonly onTake: (part: Partial<Sample>) => void;
}

export function SamplePieces({ lessonId, sample, onTake }: SamplePiecesProps) {
  const stored = sample?.pieces ?? [];
  const [pieces, setPieces] = useState<readonly Typed[]>(stored.length > 0 ? stored : [NOTHING, NOTHING]);
  const opened = useOpened(stored.length > 0);
  const whole = pieces.filter(isWhole);
  const found = whole.length === 0 ? null : fitSample(whole, sample?.endsMm ?? 0);
  const taken =
    found?.ok &&
    sample?.perRepeatMm === found.value.perRepeatMm &&
    sample.endsMm === found.value.endsMm &&
    JSON.stringify(stored) === JSON.stringify(whole);
  const put = (index: number, part: Partial<Typed>) =>
    setPieces(pieces.map((piece, at) => (at === index ? { ...piece, ...part } : piece)));
  return (
    <details className={styles.more} {...opened}>
      <summary>Reckon it from measured pieces{stored.length > 0 ? ` (${stored.length})` : ''}</summary>
      <p className="hint">
        Weave a short and a longer piece, at least five repeats apart, and measure both without clasp. Their
        difference is repeats alone. More pieces are combined by least squares.
      </p>
      {pieces.map((piece, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a piece is nothing but its numbers, at its place
        <div key={index} className={fieldStyles.grid}>
          <NumberField
            label={`Piece ${index + 1}: repeats`}
            place={`${lessonId}/piece-${index}/repeats`}
            value={piece.repeats}
            places={0}
            least={1}
            most={10_000}
            onTake={(repeats) => put(index, { repeats })}
          />
          <LengthField
            label={`Piece ${index + 1}: length`}
            place={`${lessonId}/piece-${index}/length`}
            mm={piece.mm}
            leastMm={0.1}
            mostMm={10_000}
            onTake={(mm) => put(index, { mm })}
          />
          {pieces.length > 1 && (
            <p>
              <button
                type="button"
                className="bare"
                onClick={() => setPieces(pieces.filter((_, at) => at !== index))}
              >
                Take out<span className="unseen"> piece {index + 1}</span>
              </button>
            </p>
          )}
        </div>
      ))}
      {pieces.length < 20 && (
        <p>
          <button type="button" className="quiet" onClick={() => setPieces([...pieces, NOTHING])}>
            Add a piece
          </button>
        </p>
      )}
      <div role="status">
        {found && !found.ok && <p className="fault">{sampleFaultWords(found.fault)}</p>}
        {found?.ok && (
          <p>
            {whole.length === 1
              ? 'One piece, with the ends as stated above: '
              : whole.length === 2
                ? 'The line through both pieces: '
                : `The line of least squares through ${whole.length} pieces: `}
            <strong>{figure(found.value.perRepeatMm, 4)} mm a repeat</strong>, and the ends add{' '}
            {figure(found.value.endsMm, 4)} mm. {taken ? 'This is what the sample says.' : ''}
          </p>
        )}
      </div>
      {found?.ok && !taken && (
        <button type="button" className="quiet" onClick={() => onTake({ ...found.value, pieces: whole })}>
          Take this into the sample
        </button>
      )}
    </details>
  );
}
