'use client';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { PasswordField, TextField } from '#app/forms/field.client.tsx';
import { JsonForm } from '#app/forms/json-form.client.tsx';
import { SureDialog } from '#app/forms/sure-dialog.client.tsx';
import { SHORTEST_PASSWORD } from '#lib/access/password.ts';

export function NameForm({ name, email }: { name: string; email: string }) {
  const router = useRouter();
  const [said, setSaid] = useState('');
  return (
    <>
      <JsonForm
        to="/api/account"
        method="PATCH"
        submit="Save name"
        busy="Saving…"
        done={() => {
          setSaid('Saved.');
          router.refresh();
        }}
      >
        <TextField
          name="name"
          label="Your name"
          hint={`You sign in as ${email}.`}
          defaultValue={name}
          autoComplete="name"
          required
        />
      </JsonForm>
      <p role="status">{said}</p>
    </>
  );
}

export function PasswordForm({ email }: { email: string }) {
  const [said, setSaid] = useState('');
  return (
    <>
      <JsonForm
        to="/api/account/password"
        body={({ current, next }) => ({ current, next })}
        fieldOf={{ password: 'next' }}
        submit="Change password"
        busy="Changing…"
        done={(_answer, form) => {
          form.reset();
          setSaid('Changed. Wherever else you were signed in, you are not any more.');
        }}
      >
        {/* So that a password keeper knows whose password this is. */}
        <input type="email" name="email" autoComplete="username" defaultValue={email} readOnly hidden />
        <PasswordField name="current" label="Present password" autoComplete="current-password" />
        <PasswordField
          name="next"
          label="New password"
          hint={`At least ${SHORTEST_PASSWORD} characters. Four or five words together are easy to keep in mind.`}
          autoComplete="new-password"
        />
      </JsonForm>
      <p role="status">{said}</p>
    </>
  );
}

export function SignOutEverywhere() {
  return (
    <SureDialog
      opens="Sign out everywhere…"
      question="Sign out everywhere?"
      does="Sign out everywhere"
      keep="Stay signed in"
      to="/api/account/sign-out-everywhere"
      method="POST"
      done={() => window.location.assign('/sign-in')}
    >
      <p>You will need your password to come back.</p>
    </SureDialog>
  );
}
