import type { Metadata } from 'next';
import { BenchHeader } from '#app/bench/bench-header.tsx';
import { SignOutButton } from '#app/forms/sign-out-button.client.tsx';
import { callerPage } from '#app/http/member-page.ts';
import { findWorkshopsOf } from '#lib/access/session.ts';
import { NameForm, PasswordForm, SignOutEverywhere } from './account-forms.client.tsx';

export const metadata: Metadata = { title: 'Your account', robots: { index: false, follow: false } };

export default async function AccountPage() {
  const caller = await callerPage('/account');
  return (
    <>
      <BenchHeader caller={caller} workshops={await findWorkshopsOf(caller)} />
      <main id="content" tabIndex={-1} className="page">
        <div className="row apart">
          <h1>Your account</h1>
          <SignOutButton leadsTo="/sign-in">Sign out</SignOutButton>
        </div>
        <div className="columns">
          <section className="panel" aria-labelledby="name">
            <h2 id="name">Name</h2>
            <NameForm name={caller.name} email={caller.email} />
          </section>
          <section className="panel" aria-labelledby="password">
            <h2 id="password">Password</h2>
            <PasswordForm email={caller.email} />
          </section>
          <section className="panel" aria-labelledby="elsewhere">
            <h2 id="elsewhere">Signed in elsewhere?</h2>
            <p>
              A lost phone, or a computer that others use: this ends every sign-in of yours, here too. Drafts
              keep what was saved.
            </p>
            <SignOutEverywhere />
          </section>
        </div>
      </main>
    </>
  );
}
