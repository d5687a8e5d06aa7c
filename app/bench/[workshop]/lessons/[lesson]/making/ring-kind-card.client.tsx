'use client';
/** One ring kind: sizes, metal, colour, mass, and what it tells about them at once. */
import { useState } from 'react';
import { colourCodeOf } from '#lib/rings/colour-words.ts';
import { metalNameOf } from '#lib/rings/metals.ts';
import { formatSize } from '#lib/rings/parse-size.ts';
import type { RingKind } from '#lib/rings/ring-kind.ts';
import { useDraft } from '../draft.client.tsx';
import { ChoiceField } from './fields/choice-field.client.tsx';
import fieldStyles from './fields/fields.module.css';
import { LengthField, NumberField } from './fields/number-field.client.tsx';
import { OfferFields } from './fields/offer-fields.client.tsx';
import { SizeField } from './fields/size-field.client.tsx';
import { TextField } from './fields/text-field.client.tsx';
import { HomeMadeFields } from './home-made.client.tsx';
import { ItemButtons } from './item-buttons.client.tsx';
import styles from './making.module.css';
import { metalChoices, metalOf } from './metal-choices.ts';
import { RingFacts } from './ring-facts.client.tsx';
import { RingFigure } from './ring-figure.tsx';
import type { ListDeeds } from './use-list.ts';

export interface RingKindCardProps {
  readonly kind: RingKind;
  readonly index: number;
  readonly lessonId: string;
  readonly kinds: ListDeeds<'ringKinds'>;
}

export function RingKindCard({ kind, index, lessonId, kinds }: RingKindCardProps) {
  const { content } = useDraft();
  const place = `${lessonId}/${kind.id}`;
  const called = kind.name.trim() || `ring kind ${index + 1}`;
  const put = (part: Partial<RingKind>, what: string, run?: string) =>
    kinds.put({ ...kind, ...part }, what, run);
  // Open while it is new; not bound to the colour, or the first letter typed would close it.
  const [isNew] = useState(kind.colour === '');
  const choices = metalChoices(content.ringKinds);
  const known = choices.some(([id]) => id === kind.metal);
  const takeColour = (colour: string, run: string) => {
    // The picture colour follows the words, until it was chosen by hand.
    const follows = colourCodeOf(kind.colour) === kind.colourCode || kind.colour === '';
    put(
      { colour, ...(follows ? { colourCode: colourCodeOf(colour) ?? kind.colourCode } : {}) },
      'colour',
      run,
    );
  };
  return (
    <li className={styles.card} id={kind.id}>
      <div className={styles.cardHead}>
        <RingFigure kind={kind} among={content.ringKinds} />
        <div className={styles.cardTitle}>
          <h3>{called}</h3>
          <p className="soft">
            {formatSize(kind.innerDiameter)} inside, wire {formatSize(kind.wire)},{' '}
            {metalNameOf(kind) || 'metal not named'}
          </p>
        </div>
        <ItemButtons
          name={called}
          index={index}
          count={kinds.items.length}
          onMove={(by) => kinds.move(kind.id, by)}
          onDuplicate={() =>
            kinds.add({ ...kind, id: crypto.randomUUID(), name: `${called}, copy` }, index + 1)
          }
          onRemove={() => kinds.remove(kind.id)}
        />
      </div>
      <RingFacts kind={kind} />
      <details className={styles.more} open={isNew || undefined}>
        <summary>Change {called}</summary>
        <div className={fieldStyles.grid}>
          <TextField
            id={`${kind.id}-name`}
            label="Name"
            value={kind.name}
            onTake={(name, run) => put({ name }, 'name', run)}
          />
          <SizeField
            id={`${kind.id}-inner`}
            label="Inner diameter"
            of="inner diameter"
            place={`${place}/inner`}
            value={kind.innerDiameter}
            onTake={(innerDiameter, run) => put({ innerDiameter }, 'inner diameter', run)}
          />
          <SizeField
            label="Wire"
            of="wire"
            place={`${place}/wire`}
            value={kind.wire}
            onTake={(wire, run) => put({ wire }, 'wire', run)}
          />
          <ChoiceField
            label="Metal"
            value={known ? kind.metal : 'other'}
            choices={choices}
            onTake={(metal) => put(metalOf(metal, content.ringKinds), 'metal')}
          />
          {(kind.metal === 'other' || !known) && (
            <>
              <TextField
                id={`${kind.id}-metal`}
                label="Name of the metal"
                value={kind.metalName}
                onTake={(metalName, run) => put({ metalName }, 'metal', run)}
              />
              <NumberField
                label="Its density"
                unit="g/cm³"
                place={`${place}/density`}
                value={kind.densityGPerCm3 === null ? null : Math.round(kind.densityGPerCm3 * 1000)}
                places={3}
                least={1}
                most={30_000}
                mayBeEmpty
                onTake={(milli, run) =>
                  put({ densityGPerCm3: milli === null ? null : milli / 1000 }, 'density', run)
                }
              />
            </>
          )}
          <TextField
            id={`${kind.id}-colour`}
            label="Colour in words"
            hint="So that it can be followed by ear."
            value={kind.colour}
            onTake={takeColour}
          />
          <div className="field">
            <label htmlFor={`${kind.id}-swatch`}>Colour in pictures</label>
            <input
              id={`${kind.id}-swatch`}
              type="color"
              value={kind.colourCode}
              className={styles.swatch}
              onChange={(event) => put({ colourCode: event.target.value.toLowerCase() }, 'colour', 'swatch')}
            />
          </div>
          <LengthField
            label="Inner diameter measured on a closed ring"
            place={`${place}/measured`}
            mm={kind.measuredInnerMm}
            leastMm={0.3}
            mostMm={300}
            mayBeEmpty
            hint="If you measured it; it wins over the stated one, which is often the mandrel’s."
            onTake={(measuredInnerMm, run) => put({ measuredInnerMm }, 'measured inner diameter', run)}
          />
          <NumberField
            label="A weighed hundred"
            unit="g"
            place={`${place}/weighed`}
            value={kind.weighedHundredG === null ? null : Math.round(kind.weighedHundredG * 1000)}
            places={3}
            least={1}
            most={100_000_000}
            mayBeEmpty
            hint="If you weighed 100 rings; it wins over the reckoned mass."
            onTake={(milli, run) =>
              put({ weighedHundredG: milli === null ? null : milli / 1000 }, 'weighed hundred', run)
            }
          />
        </div>
        <HomeMadeFields
          kind={kind}
          place={place}
          onTake={(made, run) => {
            const { homeMade: _, ...bought } = kind;
            kinds.put(made ? { ...kind, homeMade: made } : bought, 'how they are made', run);
          }}
        />
        <OfferFields
          place={place}
          linkId={`${kind.id}-link`}
          offer={kind.offer}
          currency={content.currency}
          unit="rings"
          onTake={(offer, run) => put({ offer }, 'how it is sold', run)}
        />
      </details>
    </li>
  );
}
