import type { ReactNode } from 'react';

interface TableFrameProps {
  readonly name: string;
  readonly children: ReactNode;
}

/** A wide table scrolls in its own frame; the keyboard has to reach the frame to scroll it. */
export const TableFrame = ({ name, children }: TableFrameProps) => (
  // biome-ignore lint/a11y/noNoninteractiveTabindex: scrolls by key
  <section className="table-frame" aria-label={name} tabIndex={0}>
    {children}
  </section>
);
