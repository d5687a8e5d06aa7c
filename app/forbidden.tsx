import Link from 'next/link';
import { EntryFrame } from './entry-frame.tsx';

export default function Forbidden() {
  return (
    <EntryFrame
      title="Not with your role"
      lead="You are a member of this workshop, but this screen is for another role."
    >
      <p>An owner of the workshop can change your role, or do for you what you came for.</p>
      <p>
        <Link href="/bench">To your workshops</Link>
      </p>
    </EntryFrame>
  );
}
