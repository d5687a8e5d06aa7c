'use client';
import { PasswordField, TextField } from '#app/forms/field.client.tsx';
import { JsonForm } from '#app/forms/json-form.client.tsx';

/** A whole new page after signing in, so that nothing shown to a stranger stays in memory. */
export function SignInForm({ leadsTo }: { leadsTo: string }) {
  return (
    <JsonForm
      to="/api/auth/sign-in"
      submit="Sign in"
      busy="Signing in…"
      done={() => window.location.assign(leadsTo)}
    >
      <TextField name="email" label="E-mail address" type="email" autoComplete="username" required />
      <PasswordField name="password" label="Password" autoComplete="current-password" />
    </JsonForm>
  );
}
