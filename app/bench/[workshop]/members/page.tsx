import type { Metadata } from 'next';
import { memberPage } from '#app/http/member-page.ts';
import { dayOf } from '#app/words/days.ts';
import { ROLE_WORDS } from '#app/words/roles.ts';
import { openBench } from '#lib/bench/bench.ts';
import { findMembers, findOpenInvitations } from '#lib/data/member-list.ts';
import { InviteForm } from './invite-form.client.tsx';
import { MemberDoings, WithdrawInvitation } from './member-doings.client.tsx';
import styles from './members.module.css';

export const metadata: Metadata = { title: 'Members' };

export default async function MembersPage({ params }: PageProps<'/bench/[workshop]/members'>) {
  const { workshop: slug } = await params;
  const { workshop, caller } = await memberPage(slug, 'owner');
  const { db, now } = openBench();
  const members = await findMembers(db, workshop.id);
  const invitations = await findOpenInvitations(db, workshop.id, now());
  return (
    <main className="page">
      <h1>Members of {workshop.name}</h1>
      <ul className={styles['members']}>
        {members.map((member) => (
          <li key={member.id} className={styles['member']}>
            <div className={styles['who']}>
              <h2>
                {member.name}
                {member.userId === caller.userId && <span className={styles['you']}> (you)</span>}
              </h2>
              <p>{member.email}</p>
              <p className="soft">
                Since <time dateTime={member.since.toISOString()}>{dayOf(member.since)}</time>
              </p>
            </div>
            <MemberDoings
              workshop={slug}
              id={member.id}
              name={member.name}
              role={member.role}
              isCaller={member.userId === caller.userId}
            />
          </li>
        ))}
      </ul>
      <div className={styles['halves']}>
        <section aria-labelledby="invite">
          <h2 id="invite">Invite somebody</h2>
          <p>
            Makes an address that works once, for seven days. Hand it to the person yourself, by e-mail or
            message; whoever opens it joins.
          </p>
          <InviteForm workshop={slug} />
        </section>
        <section aria-labelledby="open-invitations">
          <h2 id="open-invitations">Addresses not used yet</h2>
          {invitations.length === 0 ? (
            <p className="soft">None.</p>
          ) : (
            <ul className={styles['open']}>
              {invitations.map((invitation) => (
                <li key={invitation.id}>
                  <span>
                    <strong>{invitation.note || 'For nobody named'}</strong>, as{' '}
                    {ROLE_WORDS[invitation.role].name.toLowerCase()}, until{' '}
                    <time dateTime={invitation.expiresAt.toISOString()}>{dayOf(invitation.expiresAt)}</time>
                  </span>
                  <WithdrawInvitation workshop={slug} id={invitation.id} note={invitation.note} />
                </li>
              ))}
            </ul>
          )}
        </section>
      </div>
    </main>
  );
}
