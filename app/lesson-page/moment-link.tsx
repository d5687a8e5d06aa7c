import { formatTimeCode } from '#lib/time/time-code.ts';
import { momentLink } from './page-addresses.ts';

interface MomentLinkProps {
  readonly page: string;
  readonly atMs: number;
  /** Read aloud before the time: `said here`. */
  readonly label?: string;
  /** Where the link stands, so that a pupil can come back: an element's id and its name. */
  readonly from?: { readonly id: string; readonly name: string };
  readonly className?: string | undefined;
}

/** A time that plays from there: by address without script, at once with it (see player.client.tsx). */
export const MomentLink = ({ page, atMs, label, from, className }: MomentLinkProps) => (
  <a
    className={className}
    href={momentLink(page, atMs)}
    data-at={atMs}
    data-from={from?.id}
    data-from-name={from?.name}
  >
    {label === undefined ? null : `${label} `}
    {formatTimeCode(atMs)}
  </a>
);
