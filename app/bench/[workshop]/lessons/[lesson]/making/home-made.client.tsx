'use client';
/** For who winds and cuts her own rings: springback, saw cut and wire to buy, all of them estimates. */
import { useState } from 'react';
import { figure } from '#app/words/ring-words.ts';
import { estimateHomeMade, type HomeMade, TEMPERS, wireToBuyMm } from '#lib/rings/home-made.ts';
import type { RingKind } from '#lib/rings/ring-kind.ts';
import { ChoiceField } from './fields/choice-field.client.tsx';
import fieldStyles from './fields/fields.module.css';
import { LengthField, NumberField } from './fields/number-field.client.tsx';
import styles from './making.module.css';
import { useOpened } from './use-opened.ts';

export interface HomeMadeFieldsProps {
  readonly kind: RingKind;
  readonly place: string;
  readonly onTake: (made: HomeMade | null, run?: string) => void;
}

export function HomeMadeFields({ kind, place, onTake }: HomeMadeFieldsProps) {
  const made = kind.homeMade;
  const opened = useOpened(made !== undefined);
  return (
    <details className={styles.more} {...opened}>
      <summary>Rings that I wind and cut myself</summary>
      {made ? (
        <Fields kind={kind} made={made} place={place} onTake={onTake} />
      ) : (
        <>
          <p className="soft">
            A coil springs open when it leaves the mandrel, and a saw takes its cut away. Estimates of both,
            and of the wire to buy.
          </p>
          <button
            type="button"
            className="quiet"
            onClick={() =>
              onTake({ temper: likelyTemper(kind.metal), kerfMm: 0.3, tailMm: 80, ringsPerCoil: 50 })
            }
          >
            I wind them myself
          </button>
        </>
      )}
    </details>
  );
}

function Fields({ kind, made, place, onTake }: HomeMadeFieldsProps & { made: HomeMade }) {
  const [rings, setRings] = useState(100);
  const mandrelMm = kind.innerDiameter.mm;
  const wireMm = kind.wire.mm;
  const estimate = estimateHomeMade(mandrelMm, wireMm, made);
  return (
    <>
      <div className={fieldStyles.grid}>
        <ChoiceField
          label="Temper of the wire"
          value={made.temper}
          choices={TEMPERS.map(({ id, name }) => [id, name] as const)}
          onTake={(temper) => onTake({ ...made, temper })}
        />
        <LengthField
          label="The saw takes"
          place={`${place}/kerf`}
          mm={made.kerfMm}
          leastMm={0}
          mostMm={3}
          hint="Blades take about 0.2 to 0.4 mm, discs 0.25 to 0.5 mm; snips nothing."
          onTake={(kerfMm, run) => onTake({ ...made, kerfMm: kerfMm ?? 0 }, run)}
        />
        <NumberField
          label="Rings from one coil"
          place={`${place}/coil`}
          value={made.ringsPerCoil}
          places={0}
          least={1}
          most={10_000}
          onTake={(count, run) => onTake({ ...made, ringsPerCoil: count ?? 1 }, run)}
        />
        <LengthField
          label="Lost at the ends of a coil"
          place={`${place}/tail`}
          mm={made.tailMm}
          leastMm={0}
          mostMm={1_000}
          onTake={(tailMm, run) => onTake({ ...made, tailMm: tailMm ?? 0 }, run)}
        />
        <NumberField
          label="Wire to buy for"
          unit="rings"
          place={`${place}/wire-for`}
          value={rings}
          places={0}
          least={1}
          most={100_000}
          onTake={(count) => setRings(count ?? 1)}
        />
      </div>
      {estimate ? (
        <p className="notice caution">
          Estimate: on a mandrel of {figure(mandrelMm, 2)} mm the coil springs open to about{' '}
          {figure(estimate.sprungMm, 2)} mm; cut and closed, a ring measures about{' '}
          <strong>{figure(estimate.closedMm, 2)} mm</strong> inside. At the bench{' '}
          {figure(estimate.closedFromMm, 2)} to {figure(estimate.closedToMm, 2)} mm are met with{' '}
          {estimate.temper.name}. {figure(estimate.lost * 100, 1)} % of the wire becomes swarf. Measure a
          closed ring and enter it above; that is what counts.
        </p>
      ) : (
        <p className="fault">
          Wire as springy as this does not stay on so wide a mandrel; the estimate ends here. Wind one and
          measure it.
        </p>
      )}
      <p>
        For {rings} rings: about{' '}
        <strong>{figure(wireToBuyMm(rings, mandrelMm, wireMm, made) / 1000, 2)} m of wire</strong>{' '}
        <span className="soft">
          ({rings} turns of √((π × {figure(mandrelMm + wireMm, 4)})² + {figure(wireMm, 4)}²) mm, and{' '}
          {Math.ceil(rings / made.ringsPerCoil)} × {figure(made.tailMm, 1)} mm for the ends)
        </span>
      </p>
      <button type="button" className="bare" onClick={() => onTake(null)}>
        They are bought, not made
      </button>
    </>
  );
}

const METAL_TEMPERS: Readonly<Record<string, string>> = {
  copper: 'copper-half-hard',
  'sterling-silver': 'sterling-half-hard',
  'aluminium-1100': 'aluminium-1100',
  'aluminium-5356': 'aluminium-5356',
  'stainless-304': 'stainless-soft',
  'stainless-316': 'stainless-soft',
  'titanium-grade-2': 'titanium',
  niobium: 'niobium-soft',
  steel: 'steel',
  'steel-galvanised': 'steel',
};

const likelyTemper = (metal: string): string => METAL_TEMPERS[metal] ?? 'brass-half-hard';
