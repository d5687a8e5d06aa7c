/** The head of every signed-in screen: where one is, where else one can go, who one is. */
import Link from 'next/link';
import { Mark } from '#app/mark.tsx';
import type { Caller, Membership } from '#lib/access/caller.ts';
import type { OwnWorkshop } from '#lib/access/session.ts';
import styles from './bench-header.module.css';
import { BenchNav } from './bench-nav.client.tsx';
import { WorkshopSwitch } from './workshop-switch.client.tsx';

interface Props {
  readonly caller: Caller;
  readonly workshops: readonly OwnWorkshop[];
  /** The workshop that the screen belongs to; left out on screens about the person. */
  readonly at?: Membership;
}

export function BenchHeader({ caller, workshops, at }: Props) {
  return (
    <>
      <a className={`unseen ${styles['skip']}`} href="#content">
        Skip to the content
      </a>
      <header className={styles['head']}>
        <div className={styles['inner']}>
          <Link href="/bench" className={styles['home']} aria-label="Benchleaf, your workshops">
            <Mark />
          </Link>
          <WorkshopSwitch
            current={at ? { slug: at.workshop.slug, name: at.workshop.name } : null}
            workshops={workshops.map(({ slug, name }) => ({ slug, name }))}
          />
          {at && (
            <BenchNav
              places={[
                {
                  href: `/bench/${at.workshop.slug}`,
                  label: 'Lessons',
                  below: `/bench/${at.workshop.slug}/lessons`,
                },
                { href: `/bench/${at.workshop.slug}/glossary`, label: 'Glossary' },
                ...(at.role === 'owner'
                  ? [
                      { href: `/bench/${at.workshop.slug}/members`, label: 'Members' },
                      { href: `/bench/${at.workshop.slug}/description`, label: 'Description texts' },
                      { href: `/bench/${at.workshop.slug}/settings`, label: 'Settings' },
                    ]
                  : []),
              ]}
            />
          )}
          <Link href="/account" className={styles['person']}>
            <span className="unseen">Account of </span>
            {caller.name}
          </Link>
        </div>
      </header>
    </>
  );
}
