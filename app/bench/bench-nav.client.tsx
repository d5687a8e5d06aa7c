'use client';
import Link from 'next/link';
import { usePathname } from 'next/navigation';
import styles from './bench-header.module.css';

interface Place {
  readonly href: string;
  readonly label: string;
  /** Screens below this path belong to the place too. */
  readonly below?: string;
}

/** The places of a workshop; the one that is open is marked. */
export function BenchNav({ places }: { places: readonly Place[] }) {
  const path = usePathname();
  return (
    <nav aria-label="Workshop" className={styles['nav']}>
      <ul>
        {places.map(({ href, label, below }) => {
          const open = path === href ? 'page' : below && path.startsWith(`${below}/`) ? 'true' : undefined;
          return (
            <li key={href}>
              <Link href={href} aria-current={open}>
                {label}
              </Link>
            </li>
          );
        })}
      </ul>
    </nav>
  );
}
