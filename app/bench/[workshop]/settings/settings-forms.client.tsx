'use client';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { ChoiceField, LongField, TextField } from '#app/forms/field.client.tsx';
import { JsonForm } from '#app/forms/json-form.client.tsx';

type Choices = readonly { readonly value: string; readonly label: string }[];

interface Props {
  readonly slug: string;
  readonly name: string;
  readonly about: string;
  readonly currency: string;
  readonly language: string;
  readonly currencies: Choices;
  readonly languages: Choices;
}

const api = (slug: string): string => `/api/workshops/${encodeURIComponent(slug)}`;

export function SettingsForm({ slug, name, about, currency, language, currencies, languages }: Props) {
  const router = useRouter();
  const [said, setSaid] = useState('');
  return (
    <>
      <JsonForm
        to={api(slug)}
        method="PATCH"
        submit="Save"
        busy="Saving…"
        done={() => {
          setSaid('Saved.');
          router.refresh();
        }}
      >
        <TextField name="name" label="Name" defaultValue={name} autoComplete="organization" required />
        <LongField
          name="about"
          label="About"
          hint="A few sentences on the workshop’s page: who teaches here, and what."
          defaultValue={about}
          rows={6}
        />
        <ChoiceField
          name="currency"
          label="Currency"
          hint="Of the prices in new lessons; lessons that exist keep theirs."
          defaultValue={currency}
          options={currencies}
        />
        <ChoiceField
          name="language"
          label="Language"
          hint="That new lessons are taught in."
          defaultValue={language}
          options={languages}
        />
      </JsonForm>
      <p role="status">{said}</p>
    </>
  );
}

export function AddressForm({ slug }: { slug: string }) {
  return (
    <JsonForm
      to={api(slug)}
      method="PATCH"
      submit="Change the address"
      busy="Changing…"
      label="Address of the workshop’s pages"
      done={(answer) => {
        const next =
          typeof answer === 'object' && answer !== null && 'workshop' in answer
            ? String(answer.workshop)
            : slug;
        window.location.assign(`/bench/${encodeURIComponent(next)}/settings`);
      }}
    >
      <TextField
        name="slug"
        label="Its last part"
        hint="Small letters a to z, digits, and hyphens between them."
        defaultValue={slug}
        autoComplete="off"
        autoCapitalize="none"
        spellCheck={false}
        required
      />
    </JsonForm>
  );
}
