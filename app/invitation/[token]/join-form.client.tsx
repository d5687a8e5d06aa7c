'use client';
import { enterWorkshop } from '#app/forms/enter-workshop.ts';
import { JsonForm } from '#app/forms/json-form.client.tsx';
import { AccountFields } from './account-fields.client.tsx';

export function JoinForm({ token }: { token: string }) {
  return (
    <JsonForm
      to="/api/invitation/join"
      body={(values) => ({ ...values, as: 'new person', token })}
      submit="Make my account and join"
      busy="Joining…"
      done={enterWorkshop}
    >
      <AccountFields />
    </JsonForm>
  );
}
