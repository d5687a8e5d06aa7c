import type { Metadata, Viewport } from 'next';
import type { ReactNode } from 'react';
import './design.css';

export const metadata: Metadata = { title: { default: 'Benchleaf', template: '%s · Benchleaf' } };
export const viewport: Viewport = { width: 'device-width', initialScale: 1 };

export default function RootLayout({ children }: { children: ReactNode }) {
  return (
    <html lang="en">
      <body>{children}</body>
    </html>
  );
}
