import type { Metadata } from 'next';
import Link from 'next/link';
import { EntryFrame } from '#app/entry-frame.tsx';
import { findNewPassword } from '#lib/access/new-password.ts';
import { openBench } from '#lib/bench/bench.ts';
import { NewPasswordForm } from './new-password-form.client.tsx';

/** The address is a secret: no other site is told of it, and no search engine keeps it. */
export const metadata: Metadata = {
  title: 'New password',
  referrer: 'same-origin',
  robots: { index: false, follow: false },
};

export default async function NewPasswordPage({ params }: PageProps<'/new-password/[token]'>) {
  const { token } = await params;
  const { db, now } = openBench();
  const person = await findNewPassword(db, token, now());
  if (!person) {
    return (
      <EntryFrame title="This address is no longer open" lead="It was used already, or is too old.">
        <p>Whoever keeps this server can make you a new one.</p>
        <p>
          <Link href="/sign-in">Sign in</Link>
        </p>
      </EntryFrame>
    );
  }
  return (
    <EntryFrame
      title="Choose a new password"
      lead={
        <>
          For <strong>{person.name}</strong> ({person.email}). Wherever you are signed in now, you will be
          signed out.
        </>
      }
    >
      <NewPasswordForm token={token} email={person.email} />
    </EntryFrame>
  );
}
