'use client';
/** The measured sample, and the rules by which a kit follows from it. */
import { useState } from 'react';
import { figure } from '#app/words/ring-words.ts';
import { sampleOfTwo } from '#lib/kit/length.ts';
import { ROUNDINGS, type Sample } from '#lib/kit/making.ts';
import { useDraft } from '../draft.client.tsx';
import { ChoiceField } from './fields/choice-field.client.tsx';
import fieldStyles from './fields/fields.module.css';
import { LengthField, NumberField } from './fields/number-field.client.tsx';
import styles from './making.module.css';

export function SampleAndRules({ lessonId }: { lessonId: string }) {
  const { content, change, mayEdit } = useDraft();
  const { sample, kitRules } = content;
  const put = (part: Partial<Sample>, run?: string) => {
    const before: Partial<Sample> = sample ?? { endsMm: 0, claspMm: 0, measured: 'pulled taut' };
    const next = { ...before, ...part };
    if (next.perRepeatMm !== undefined)
      change([{ kind: 'set', field: 'sample', value: next }], 'sample', run);
  };
  const rule = (part: Partial<typeof kitRules>, run?: string) =>
    change([{ kind: 'set', field: 'kitRules', value: { ...kitRules, ...part } }], 'kit rules', run);
  return (
    <>
      <p className="soft">
        Weave a piece with the very rings, lay it flat and measure. This is what tells how many repeats a
        length takes.
      </p>
      <div className={fieldStyles.grid}>
        <LengthField
          id="per-repeat"
          label="One repeat adds"
          place={`${lessonId}/per-repeat`}
          mm={sample?.perRepeatMm ?? null}
          leastMm={0.01}
          mostMm={10_000}
          onTake={(mm, run) => mm !== null && put({ perRepeatMm: mm }, run)}
        />
        {sample && (
          <>
            <LengthField
              label="Both ends add"
              place={`${lessonId}/ends`}
              mm={sample.endsMm}
              leastMm={0}
              mostMm={10_000}
              hint="What is there besides the repeats."
              onTake={(mm, run) => mm !== null && put({ endsMm: mm }, run)}
            />
            <LengthField
              label="The closed clasp adds"
              place={`${lessonId}/clasp`}
              mm={sample.claspMm}
              leastMm={0}
              mostMm={10_000}
              hint="Measured closed, under tension, with its rings."
              onTake={(mm, run) => mm !== null && put({ claspMm: mm }, run)}
            />
            <ChoiceField
              label="Measured"
              value={sample.measured}
              choices={[
                ['pulled taut', 'pulled taut'],
                ['at rest', 'at rest'],
              ]}
              hint="The two differ much; say which."
              onTake={(measured) => put({ measured })}
            />
          </>
        )}
      </div>
      {mayEdit && <TwoPieces lessonId={lessonId} onTake={(part) => put(part)} />}
      <h3>Rules for every kit</h3>
      <div className={fieldStyles.grid}>
        <LengthField
          label="Ease"
          place={`${lessonId}/ease`}
          mm={kitRules.easeMm}
          leastMm={0}
          mostMm={1000}
          hint="Added to wrist or neck, the thickness of the piece included. Stated once, added once."
          onTake={(mm, run) => mm !== null && rule({ easeMm: mm }, run)}
        />
        <ChoiceField
          label="Repeats are rounded"
          value={kitRules.rounding}
          choices={ROUNDINGS.map((one) => [one, one === 'nearest' ? 'to the nearest' : one] as const)}
          onTake={(rounding) => rule({ rounding })}
        />
        <NumberField
          label="Spare rings"
          unit="%"
          place={`${lessonId}/spare`}
          value={kitRules.sparePercent}
          places={0}
          least={0}
          most={100}
          hint="Of each ring kind, rounded up. Common practice: 10, more for beginners."
          onTake={(percent, run) => percent !== null && rule({ sparePercent: percent }, run)}
        />
      </div>
    </>
  );
}

const NOTHING = { repeats: null, mm: null };

/** Two pieces measured: what they differ by is repeats alone, so the ends fall out. */
function TwoPieces({ lessonId, onTake }: { lessonId: string; onTake: (part: Partial<Sample>) => void }) {
  const [short, setShort] = useState<{ repeats: number | null; mm: number | null }>(NOTHING);
  const [long, setLong] = useState<{ repeats: number | null; mm: number | null }>(NOTHING);
  const complete =
    short.repeats !== null && short.mm !== null && long.repeats !== null && long.mm !== null
      ? { a: { repeats: short.repeats, mm: short.mm }, b: { repeats: long.repeats, mm: long.mm } }
      : null;
  const found = complete && sampleOfTwo(complete.a, complete.b);
  return (
    <details className={styles.more}>
      <summary>Reckon it from two pieces</summary>
      <p className="hint">
        Weave a short and a longer piece, at least five repeats apart, without clasp. Their difference is
        repeats alone.
      </p>
      <div className={fieldStyles.grid}>
        {(
          [
            ['Shorter piece', short, setShort],
            ['Longer piece', long, setLong],
          ] as const
        ).map(([name, piece, set]) => (
          <div key={name}>
            <NumberField
              label={`${name}: repeats`}
              place={`${lessonId}/${name}/repeats`}
              value={piece.repeats}
              places={0}
              least={1}
              most={10_000}
              onTake={(repeats) => set({ ...piece, repeats })}
            />
            <LengthField
              label={`${name}: length`}
              place={`${lessonId}/${name}/length`}
              mm={piece.mm}
              leastMm={0.1}
              mostMm={10_000}
              onTake={(mm) => set({ ...piece, mm })}
            />
          </div>
        ))}
      </div>
      <div role="status">
        {complete && found && (
          <p>
            ({figure(complete.b.mm, 2)} − {figure(complete.a.mm, 2)}) ÷ ({complete.b.repeats} −{' '}
            {complete.a.repeats}) = <strong>{figure(found.perRepeatMm, 4)} mm a repeat</strong>, and the ends
            add {figure(found.endsMm, 4)} mm.
          </p>
        )}
        {complete && !found && (
          <p className="fault">
            The longer piece must have more repeats and be longer, and the ends cannot come out below nothing.
          </p>
        )}
      </div>
      {found && (
        <button type="button" className="quiet" onClick={() => onTake(found)}>
          Take both into the sample
        </button>
      )}
    </details>
  );
}
