import type { Metadata, Viewport } from 'next';
import { connection } from 'next/server';
import type { ReactNode } from 'react';
import './design.css';

export const metadata: Metadata = { title: { default: 'Benchleaf', template: '%s · Benchleaf' } };
export const viewport: Viewport = { width: 'device-width', initialScale: 1 };

export default async function RootLayout({ children }: { children: ReactNode }) {
  // A page made at build time would carry no nonce, and its scripts would be refused.
  await connection();
  return (
    <html lang="en">
      <body>{children}</body>
    </html>
  );
}
