'use client';
/** An address that was just made and cannot be read again: shown once, selected, to be copied. */
import { useEffect, useId, useRef, useState } from 'react';
import styles from './forms.module.css';

export function MadeAddress({ address }: { address: string }) {
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const [said, setSaid] = useState('');

  useEffect(() => {
    field.current?.focus();
    field.current?.select();
  }, []);

  async function copy() {
    try {
      await navigator.clipboard.writeText(address);
      setSaid('Copied.');
    } catch {
      field.current?.select();
      setSaid('The browser did not allow copying. The address is selected: copy it from there.');
    }
  }

  return (
    <div className={`notice ${styles['made']}`}>
      <label htmlFor={id}>
        <strong>The address. It is shown only this once.</strong>
      </label>
      <div className={styles['copy']}>
        <input id={id} ref={field} readOnly value={address} onFocus={(event) => event.target.select()} />
        <button type="button" onClick={() => void copy()}>
          Copy
        </button>
      </div>
      <p role="status">{said}</p>
    </div>
  );
}
