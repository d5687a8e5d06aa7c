'use client';
import Link from 'next/link';
import { usePathname } from 'next/navigation';
import { useEffect, useRef } from 'react';
import styles from './bench-header.module.css';

interface Named {
  readonly slug: string;
  readonly name: string;
}

/** Names the workshop, and opens to the others; closes with Escape, when left, and when something is chosen. */
export function WorkshopSwitch({
  current,
  workshops,
}: {
  current: Named | null;
  workshops: readonly Named[];
}) {
  const box = useRef<HTMLDetailsElement>(null);
  const path = usePathname();
  const close = () => box.current?.removeAttribute('open');

  // biome-ignore lint/correctness/useExhaustiveDependencies: a new path is what closes it.
  useEffect(close, [path]);

  return (
    <details
      ref={box}
      className={styles['switch']}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || !box.current?.open) return;
        close();
        box.current.querySelector('summary')?.focus();
      }}
      onBlur={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget)) close();
      }}
    >
      <summary>
        <span className="unseen">Workshop: </span>
        <span className={styles['name']}>{current?.name ?? 'Your workshops'}</span>
      </summary>
      <ul>
        {workshops.map(({ slug, name }) => (
          <li key={slug}>
            <Link href={`/bench/${slug}`} aria-current={slug === current?.slug ? 'true' : undefined}>
              {name}
            </Link>
          </li>
        ))}
        <li className={styles['all']}>
          <Link href="/bench?all">All workshops, or a new one</Link>
        </li>
      </ul>
    </details>
  );
}
