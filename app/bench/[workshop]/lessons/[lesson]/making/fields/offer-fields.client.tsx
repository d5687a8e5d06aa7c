'use client';
/** How something is sold: its packs, by count or by mass, and a link to where. All empty: nothing stated. */
import { useState } from 'react';
import type { Offer, Pack } from '#lib/thing.ts';
import { ChoiceField } from './choice-field.client.tsx';
import styles from './fields.module.css';
import { LinkField } from './link-field.client.tsx';
import { MassField } from './mass-field.client.tsx';
import { MoneyField, NumberField } from './number-field.client.tsx';

export interface OfferFieldsProps {
  readonly place: string;
  /** Where other screens lead to mend the link. */
  readonly linkId: string;
  readonly offer: Offer | null;
  readonly currency: string;
  /** What a pack holds, in the plural: `rings`. */
  readonly unit: string;
  readonly onTake: (offer: Offer | null, run: string) => void;
}

const NO_PACK: Pack = { by: 'count', count: 1, priceMinor: null };

/** The most packs that one thing is sold in. */
const MOST = 20;

const saysNothing = ({ packs: [first, ...others], link }: Offer): boolean =>
  link === '' &&
  others.length === 0 &&
  first?.by === 'count' &&
  first.count === 1 &&
  first.priceMinor === null;

export function OfferFields({ place, linkId, offer, currency, unit, onTake }: OfferFieldsProps) {
  const packs = offer?.packs ?? [NO_PACK];
  const put = (part: Partial<Offer>, run: string) => {
    const next = { packs, link: offer?.link ?? '', ...part };
    onTake(saysNothing(next) ? null : next, run);
  };
  return (
    <>
      {packs.map((pack, index) => (
        <PackFields
          // A pack has no id of its own: it is what it holds, at its place.
          // biome-ignore lint/suspicious/noArrayIndexKey: see above
          key={index}
          place={`${place}/${index === 0 ? '' : `${index}/`}`}
          name={index === 0 ? '' : ` ${index + 1}`}
          pack={pack}
          stated={offer !== null}
          currency={currency}
          unit={unit}
          onTake={(next, run) =>
            put({ packs: packs.map((one, at) => (at === index ? next : one)) }, `${run}/${index}`)
          }
          onRemove={
            packs.length === 1
              ? null
              : () => put({ packs: packs.filter((_, at) => at !== index) }, crypto.randomUUID())
          }
        />
      ))}
      {offer !== null && packs.length < MOST && (
        <p>
          <button
            type="button"
            className="quiet"
            onClick={() => put({ packs: [...packs, NO_PACK] }, crypto.randomUUID())}
          >
            Add another pack
          </button>
        </p>
      )}
      <LinkField
        id={linkId}
        place={`${place}/link`}
        label="Where to buy it"
        value={offer?.link ?? ''}
        onTake={(link, run) => put({ link }, run)}
      />
    </>
  );
}

interface PackFieldsProps {
  readonly place: string;
  /** ` 2` for the second; empty for the first. */
  readonly name: string;
  readonly pack: Pack;
  readonly stated: boolean;
  readonly currency: string;
  readonly unit: string;
  readonly onTake: (pack: Pack, run: string) => void;
  readonly onRemove: (() => void) | null;
}

function PackFields({ place, name, pack, stated, currency, unit, onTake, onRemove }: PackFieldsProps) {
  const [by, setBy] = useState(pack.by);
  const { priceMinor } = pack;
  return (
    <div className={styles.grid}>
      <ChoiceField
        label={`Pack${name} is sold by`}
        value={by}
        choices={[
          ['count', `count (${unit})`],
          ['mass', 'mass'],
        ]}
        onTake={setBy}
      />
      {by === 'count' ? (
        <NumberField
          label={name === '' ? 'One pack holds' : `Pack${name} holds`}
          unit={unit}
          place={`${place}pack`}
          value={stated && pack.by === 'count' ? pack.count : null}
          places={0}
          least={1}
          most={100_000}
          mayBeEmpty
          onTake={(count, run) => onTake({ by: 'count', count: count ?? 1, priceMinor }, run)}
        />
      ) : (
        <MassField
          label={name === '' ? 'One pack weighs' : `Pack${name} weighs`}
          place={`${place}mass`}
          value={pack.by === 'mass' ? pack.mass : null}
          hint="How many that is follows from the mass of one."
          onTake={(mass, run) => onTake({ by: 'mass', mass, priceMinor }, run)}
        />
      )}
      <MoneyField
        label={name === '' ? 'Price of a pack' : `Price of pack${name}`}
        place={`${place}price`}
        minor={priceMinor}
        currency={currency}
        onTake={(minor, run) => onTake({ ...pack, priceMinor: minor }, run)}
      />
      {onRemove && (
        <p>
          <button type="button" className="bare" onClick={onRemove}>
            Take out<span className="unseen"> pack{name}</span>
          </button>
        </p>
      )}
    </div>
  );
}
