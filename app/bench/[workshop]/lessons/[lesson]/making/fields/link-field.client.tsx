'use client';
/** A field for an address that pupils may follow. */
import { failed, ok } from '#lib/result.ts';
import { linkAddress } from '#lib/thing.ts';
import { TypedField } from './typed-field.client.tsx';

export function LinkField(props: {
  readonly id: string;
  readonly place: string;
  readonly label: string;
  readonly value: string;
  readonly onTake: (link: string, run: string) => void;
}) {
  return (
    <TypedField<string, 'link-not-valid'>
      id={props.id}
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
