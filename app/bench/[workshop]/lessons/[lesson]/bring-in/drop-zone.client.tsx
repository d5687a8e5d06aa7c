'use client';
/** A place for one file: drop it, or choose it. The input is a plain one, so that keys and readers know it. */
import { type ReactNode, useId, useState } from 'react';
import styles from './bring-in.module.css';

interface DropZoneProps {
  readonly label: string;
  /** What the browser offers first when choosing; everything may be dropped. */
  readonly accept?: string;
  readonly onFile: (file: File) => void;
  readonly children?: ReactNode;
}

export function DropZone({ label, accept = 'video/*,audio/*,.mkv', onFile, children }: DropZoneProps) {
  const [isOver, setIsOver] = useState(false);
  const id = useId();
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is an extra; the input inside does the same
    <div
      className={styles.zone}
      data-over={isOver}
      onDragOver={(event) => {
        event.preventDefault();
        setIsOver(true);
      }}
      onDragLeave={() => setIsOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        setIsOver(false);
        const file = event.dataTransfer.files[0];
        if (file) onFile(file);
      }}
    >
      <label htmlFor={id} className={styles.zoneLabel}>
        {label}
      </label>
      {children}
      <p className={styles.zoneChoice}>
        <span>Drop a file here, or choose one:</span>
        <input
          id={id}
          type="file"
          accept={accept}
          onChange={(event) => {
            const file = event.currentTarget.files?.[0];
            if (file) onFile(file);
            // The same file may be chosen again after it was dropped.
            event.currentTarget.value = '';
          }}
        />
      </p>
    </div>
  );
}
