import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { EntryFrame } from '#app/entry-frame.tsx';
import { visitor } from '#app/http/member-page.ts';
import { wayBack } from '#lib/access/way-back.ts';
import { SignInForm } from './sign-in-form.client.tsx';

export const metadata: Metadata = { title: 'Sign in' };

export default async function SignInPage({ searchParams }: PageProps<'/sign-in'>) {
  const { back } = await searchParams;
  const leadsTo = wayBack(typeof back === 'string' ? back : undefined, '/bench');
  if (await visitor()) redirect(leadsTo);
  return (
    <EntryFrame title="Sign in" lead="To the bench: your workshop’s lessons and what belongs to them.">
      <SignInForm leadsTo={leadsTo} />
      <hr />
      <p className="hint">
        Accounts are made by invitation. An owner of your workshop can make you an address to join by; if you
        forgot your password, whoever keeps this server can make you an address to choose a new one.
      </p>
    </EntryFrame>
  );
}
