import type { Metadata } from 'next';
import Link from 'next/link';
import { redirect } from 'next/navigation';
import { callerPage } from '#app/http/member-page.ts';
import { ROLE_WORDS } from '#app/words/roles.ts';
import { findWorkshopsOf } from '#lib/access/session.ts';
import { DEMO_WORKSHOP_SLUG } from '#lib/bench/demo-workshop.ts';
import styles from './bench.module.css';
import { BenchHeader } from './bench-header.tsx';
import { CreateWorkshopForm } from './create-workshop-form.client.tsx';

export const metadata: Metadata = { title: 'Your workshops' };

export default async function BenchPage({ searchParams }: PageProps<'/bench'>) {
  const caller = await callerPage('/bench');
  const workshops = await findWorkshopsOf(caller);
  const all = (await searchParams)['all'] !== undefined;
  const only = workshops.length === 1 ? workshops[0] : undefined;
  if (only && !all) redirect(`/bench/${only.slug}`);
  return (
    <>
      <BenchHeader caller={caller} workshops={workshops} />
      <main id="content" tabIndex={-1} className="page">
        <h1>Your workshops</h1>
        {workshops.length === 0 && (
          <p>You belong to no workshop now. Make one, or ask an owner for an address to join by.</p>
        )}
        <ul className={styles['cards']}>
          {workshops.map(({ slug, name, role }) => (
            <li key={slug} className={styles['card']}>
              <h2>
                <Link href={`/bench/${slug}`}>{name}</Link>
              </h2>
              <p>{ROLE_WORDS[role].may}</p>
              {slug === DEMO_WORKSHOP_SLUG && (
                <p className="hint">Holds the demo lesson: look behind it, change it, try what you like.</p>
              )}
            </li>
          ))}
        </ul>
        <section className={styles['further']} aria-labelledby="further">
          <h2 id="further">A further workshop</h2>
          <p className="soft">
            With members, lessons and public pages of its own. For one teacher a single workshop is enough.
          </p>
          <CreateWorkshopForm />
        </section>
      </main>
    </>
  );
}
