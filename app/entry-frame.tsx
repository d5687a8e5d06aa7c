/** The frame of screens that stand before or beside the bench: one sheet, with the mark above it. */
import Link from 'next/link';
import type { ReactNode } from 'react';
import styles from './entry-frame.module.css';
import { Mark } from './mark.tsx';

export function EntryFrame({
  title,
  lead,
  children,
}: {
  title: string;
  lead?: ReactNode;
  children?: ReactNode;
}) {
  return (
    <div className={styles['ground']}>
      <header className={styles['head']}>
        <Link href="/" className={styles['home']}>
          <Mark size={40} />
          <span>Benchleaf</span>
        </Link>
      </header>
      <main className={styles['sheet']}>
        <h1>{title}</h1>
        {lead && <p className={styles['lead']}>{lead}</p>}
        {children}
      </main>
    </div>
  );
}
