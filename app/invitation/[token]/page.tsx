import type { Metadata } from 'next';
import Link from 'next/link';
import { EntryFrame } from '#app/entry-frame.tsx';
import { visitor } from '#app/http/member-page.ts';
import { ROLE_WORDS } from '#app/words/roles.ts';
import { findInvitation } from '#lib/access/invitation.ts';
import { openBench } from '#lib/bench/bench.ts';
import { FoundForm } from './found-form.client.tsx';
import { JoinAsCallerForm } from './join-as-caller-form.client.tsx';
import { JoinForm } from './join-form.client.tsx';

/** The address is a secret: no other site is told of it, and no search engine keeps it. */
export const metadata: Metadata = {
  title: 'Invitation',
  referrer: 'same-origin',
  robots: { index: false, follow: false },
};

export default async function InvitationPage({ params }: PageProps<'/invitation/[token]'>) {
  const { token } = await params;
  const { db, now } = openBench();
  const invitation = await findInvitation(db, token, now());
  if (!invitation) return <Closed />;
  if (invitation.kind === 'founding') {
    return (
      <EntryFrame
        title="Begin your workshop"
        lead="You are the first here. This makes your account and your workshop; you will be its owner. A demo workshop is yours to look behind, too."
      >
        <FoundForm token={token} />
      </EntryFrame>
    );
  }
  const { workshop, role } = invitation;
  const { name, may } = ROLE_WORDS[role];
  const caller = await visitor();
  return (
    <EntryFrame
      title={`Join ${workshop.name}`}
      lead={
        <>
          You are invited as <strong>{name.toLowerCase()}</strong>. {may}
        </>
      }
    >
      {caller ? (
        <JoinAsCallerForm token={token} name={caller.name} email={caller.email} workshop={workshop.name} />
      ) : (
        <>
          <JoinForm token={token} />
          <hr />
          <p>
            Have an account here already?{' '}
            <Link href={`/sign-in?back=${encodeURIComponent(`/invitation/${token}`)}`}>
              Sign in to join with it
            </Link>
          </p>
        </>
      )}
    </EntryFrame>
  );
}

function Closed() {
  return (
    <EntryFrame
      title="This address is no longer open"
      lead="It was used already, was withdrawn, or is too old."
    >
      <p>
        An owner of the workshop can make you a new one. If you are setting this server up: start it again,
        and it prints a new address for its first owner.
      </p>
      <p>
        <Link href="/sign-in">Sign in</Link>
      </p>
    </EntryFrame>
  );
}
