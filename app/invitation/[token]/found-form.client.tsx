'use client';
import { enterWorkshop } from '#app/forms/enter-workshop.ts';
import { TextField } from '#app/forms/field.client.tsx';
import { JsonForm } from '#app/forms/json-form.client.tsx';
import { AccountFields } from './account-fields.client.tsx';

export function FoundForm({ token }: { token: string }) {
  return (
    <JsonForm
      to="/api/invitation/found"
      body={(values) => ({ ...values, token })}
      submit="Begin"
      busy="Making your workshop…"
      done={enterWorkshop}
    >
      <TextField
        name="workshopName"
        label="Name of your workshop"
        hint="Pupils see it on every lesson. You can change it later."
        autoComplete="organization"
        required
      />
      <AccountFields />
    </JsonForm>
  );
}
