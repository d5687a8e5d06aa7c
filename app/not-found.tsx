import Link from 'next/link';
import { EntryFrame } from './entry-frame.tsx';

export default function NotFound() {
  return (
    <EntryFrame
      title="Nothing is here"
      lead="The address may be mistyped, or what stood here is gone or not yours to see."
    >
      <p>
        <Link href="/">To the front page</Link>
      </p>
      <p>
        <Link href="/bench">To your workshops</Link>
      </p>
    </EntryFrame>
  );
}
