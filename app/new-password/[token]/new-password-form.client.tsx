'use client';
import { PasswordField } from '#app/forms/field.client.tsx';
import { JsonForm } from '#app/forms/json-form.client.tsx';
import { SHORTEST_PASSWORD } from '#lib/access/password.ts';

interface Props {
  readonly token: string;
  readonly email: string;
}

export function NewPasswordForm({ token, email }: Props) {
  return (
    <JsonForm
      to="/api/auth/new-password"
      body={({ password }) => ({ token, password })}
      submit="Take this password and sign in"
      busy="Signing in…"
      done={() => window.location.assign('/bench')}
    >
      {/* So that the browser keeps the password under the right name. */}
      <input type="email" autoComplete="username" value={email} readOnly hidden />
      <PasswordField
        name="password"
        label="New password"
        hint={`At least ${SHORTEST_PASSWORD} characters. Four or five words together are easy to keep in mind.`}
        autoComplete="new-password"
      />
    </JsonForm>
  );
}
