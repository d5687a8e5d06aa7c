'use client';
/** The measured sample, and the rules by which a kit follows from it. */
import { ROUNDINGS, type Sample } from '#lib/kit/making.ts';
import { useDraft } from '../draft.client.tsx';
import { ChainForm } from './chain-form.client.tsx';
import { ChoiceField } from './fields/choice-field.client.tsx';
import fieldStyles from './fields/fields.module.css';
import { LengthField, NumberField } from './fields/number-field.client.tsx';
import { TextField } from './fields/text-field.client.tsx';
import { RunLengths } from './run-lengths.client.tsx';
import { SamplePieces } from './sample-pieces.client.tsx';

export function SampleAndRules({ lessonId }: { lessonId: string }) {
  const { content, change, mayEdit } = useDraft();
  const { sample, kitRules } = content;
  const put = (part: Partial<Sample>, run?: string) => {
    const before: Partial<Sample> = sample ?? {
      endsMm: 0,
      claspMm: 0,
      measured: 'pulled taut',
      pieces: [],
      runs: [],
      readingMm: null,
      note: '',
    };
    const next = { ...before, ...part };
    if (next.perRepeatMm !== undefined)
      change([{ kind: 'set', field: 'sample', value: next }], 'sample', run);
  };
  const rule = (part: Partial<typeof kitRules>, run?: string) =>
    change([{ kind: 'set', field: 'kitRules', value: { ...kitRules, ...part } }], 'kit rules', run);
  return (
    <>
      <p className="soft">
        {content.ringKinds.length > 0
          ? 'Weave a piece with the very rings'
          : 'Make a piece of the very materials'}
        , lay it flat and measure. This is what tells how many repeats a length takes.
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
              hint="Measured closed, under tension, with what ties it on."
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
            <LengthField
              label="Lengths were read to ±"
              place={`${lessonId}/reading`}
              mm={sample.readingMm}
              leastMm={0.01}
              mostMm={100}
              mayBeEmpty
              hint="With measured pieces below, kits tell how sure their length is."
              onTake={(mm, run) => put({ readingMm: mm }, run)}
            />
            <TextField
              label="How the sample was made"
              hint="What of, how hard it was pulled, when, by whom."
              value={sample.note}
              onTake={(note, run) => put({ note }, run)}
            />
          </>
        )}
      </div>
      <ChainForm onTake={(part) => put(part)} />
      {sample && <RunLengths lessonId={lessonId} sample={sample} onTake={put} />}
      {mayEdit && <SamplePieces lessonId={lessonId} sample={sample} onTake={(part) => put(part)} />}
      <h3>Rules for every kit</h3>
      <div className={fieldStyles.grid}>
        <LengthField
          label="Ease"
          place={`${lessonId}/ease`}
          mm={kitRules.easeMm}
          leastMm={0}
          mostMm={1000}
          hint={
            kitRules.thicknessMm === null
              ? 'Added to wrist or neck, the thickness of the piece included. Stated once, added once.'
              : 'Added to wrist or neck; the thickness is added beside it.'
          }
          onTake={(mm, run) => mm !== null && rule({ easeMm: mm }, run)}
        />
        <LengthField
          label="Thickness, if the ease leaves it out"
          place={`${lessonId}/thickness`}
          mm={kitRules.thicknessMm}
          leastMm={0.01}
          mostMm={100}
          mayBeEmpty
          hint="Once round the wrist it adds π times as much. Empty: the ease includes it."
          onTake={(mm, run) => rule({ thicknessMm: mm }, run)}
        />
        <ChoiceField
          label="Repeats are rounded"
          value={kitRules.rounding}
          choices={ROUNDINGS.map((one) => [one, one === 'nearest' ? 'to the nearest' : one] as const)}
          onTake={(rounding) => rule({ rounding })}
        />
        {content.ringKinds.length > 0 && (
          <>
            <NumberField
              label="Spare rings"
              unit="%"
              place={`${lessonId}/spare`}
              value={kitRules.sparePercent}
              places={0}
              least={0}
              most={100}
              hint="Common practice: 10; 15 to 20 for beginners."
              onTake={(percent, run) => percent !== null && rule({ sparePercent: percent }, run)}
            />
            <ChoiceField
              label="Spare is rounded up"
              value={kitRules.spareBy}
              choices={[
                ['line', 'on each ring kind'],
                ['kit', 'once for the kit, then shared out'],
              ]}
              onTake={(spareBy) => rule({ spareBy })}
            />
            <NumberField
              label="Of each ring kind at least"
              unit="spare"
              place={`${lessonId}/spare-least`}
              value={kitRules.spareLeast}
              places={0}
              least={0}
              most={1000}
              onTake={(spareLeast, run) => spareLeast !== null && rule({ spareLeast }, run)}
            />
          </>
        )}
      </div>
    </>
  );
}
