import type { Metadata } from 'next';
import type { ReactNode } from 'react';

/** Drafts are nobody's to find. */
export const metadata: Metadata = { robots: { index: false, follow: false } };

export default function BenchLayout({ children }: { children: ReactNode }) {
  return children;
}
