'use client';
import { enterWorkshop } from '#app/forms/enter-workshop.ts';
import { JsonForm } from '#app/forms/json-form.client.tsx';
import { SignOutButton } from '#app/forms/sign-out-button.client.tsx';

interface Props {
  readonly token: string;
  readonly name: string;
  readonly email: string;
  readonly workshop: string;
}

export function JoinAsCallerForm({ token, name, email, workshop }: Props) {
  return (
    <>
      <p>
        You are signed in as <strong>{name}</strong> ({email}).
      </p>
      <JsonForm
        to="/api/invitation/join"
        body={() => ({ as: 'caller', token })}
        submit={`Join ${workshop}`}
        busy="Joining…"
        done={enterWorkshop}
      />
      <hr />
      <p>
        Somebody else?{' '}
        <SignOutButton leadsTo={`/invitation/${encodeURIComponent(token)}`}>Sign out first</SignOutButton>
      </p>
    </>
  );
}
