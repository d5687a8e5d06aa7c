'use client';

import { useRef, useState } from 'react';
import { lengthsOf } from '#lib/lesson/description-text.ts';
import styles from './check.module.css';

const grouped = new Intl.NumberFormat('en-GB');

/** A text to take along, with its length as places count it. */
export function CopyText({ text }: { readonly text: string }) {
  const area = useRef<HTMLTextAreaElement>(null);
  const [told, setTold] = useState('');
  const { characters, bytes } = lengthsOf(text);
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text);
      setTold('Copied.');
    } catch {
      // Without leave to write the clipboard the text is at least marked.
      area.current?.select();
      setTold('Your browser did not allow copying. The text is marked: press Ctrl+C.');
    }
  };
  return (
    <>
      <textarea
        ref={area}
        className={styles.text}
        readOnly
        value={text}
        aria-label="Description text"
        rows={14}
        onCopy={() => setTold('')}
      />
      <p className="row apart">
        <button type="button" className="quiet" onClick={() => void copy()}>
          Copy the text
        </button>
        <span className="soft">
          {grouped.format(characters)} characters, {grouped.format(bytes)} bytes
        </span>
      </p>
      <p role="status" className="hint">
        {told}
      </p>
    </>
  );
}
