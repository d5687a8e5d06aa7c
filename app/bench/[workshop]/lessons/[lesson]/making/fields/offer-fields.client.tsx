'use client';
/** How something is sold: pack, price and a link to where. All empty: nothing stated. */
import { failed, ok } from '#lib/result.ts';
import { linkAddress, type Offer } from '#lib/thing.ts';
import styles from './fields.module.css';
import { MoneyField, NumberField } from './number-field.client.tsx';
import { TypedField } from './typed-field.client.tsx';

export interface OfferFieldsProps {
  readonly place: string;
  readonly offer: Offer | null;
  readonly currency: string;
  /** What a pack holds, in the plural: `rings`. */
  readonly unit: string;
  readonly onTake: (offer: Offer | null, run: string) => void;
}

export function OfferFields({ place, offer, currency, unit, onTake }: OfferFieldsProps) {
  const put = (part: Partial<Offer>, run: string) => {
    const next = { packCount: 1, priceMinor: null, link: '', ...offer, ...part };
    onTake(next.packCount === 1 && next.priceMinor === null && next.link === '' ? null : next, run);
  };
  return (
    <div className={styles.grid}>
      <NumberField
        label="One pack holds"
        unit={unit}
        place={`${place}/pack`}
        value={offer?.packCount ?? null}
        places={0}
        least={1}
        most={100_000}
        mayBeEmpty
        onTake={(packCount, run) => put({ packCount: packCount ?? 1 }, run)}
      />
      <MoneyField
        label="Price of a pack"
        place={`${place}/price`}
        minor={offer?.priceMinor ?? null}
        currency={currency}
        onTake={(priceMinor, run) => put({ priceMinor }, run)}
      />
      <LinkField
        place={`${place}/link`}
        label="Where to buy it"
        value={offer?.link ?? ''}
        onTake={(link, run) => put({ link }, run)}
      />
    </div>
  );
}

export function LinkField(props: {
  readonly place: string;
  readonly label: string;
  readonly value: string;
  readonly onTake: (link: string, run: string) => void;
}) {
  return (
    <TypedField<string, 'link-not-valid'>
      label={props.label}
      place={props.place}
      shown={props.value}
      inputMode="url"
      wide
      read={(text) =>
        linkAddress.safeParse(text.trim()).success ? ok(text.trim()) : failed('link-not-valid')
      }
      take={props.onTake}
      faultWords={() => 'A link starts with https:// (or http:// or mailto:) and holds no space.'}
    />
  );
}
