'use client';
import { PasswordField, TextField } from '#app/forms/field.client.tsx';
import { SHORTEST_PASSWORD } from '#lib/access/password.ts';

/** What a new account is asked for. */
export function AccountFields() {
  return (
    <>
      <TextField
        name="name"
        label="Your name"
        hint="As the other members will see it."
        autoComplete="name"
        required
      />
      <TextField
        name="email"
        label="Your e-mail address"
        hint="To sign in with. It is shown to members only."
        type="email"
        autoComplete="username"
        required
      />
      <PasswordField
        name="password"
        label="Password"
        hint={`At least ${SHORTEST_PASSWORD} characters. Four or five words together are easy to keep in mind.`}
        autoComplete="new-password"
      />
    </>
  );
}
