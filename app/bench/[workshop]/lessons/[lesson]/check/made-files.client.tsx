'use client';
/** What is made of the published revision, while it is being made and after. */
import { useCallback, useEffect, useState } from 'react';
import { fileSizeWords, madeFileFaultWords, madeFileTitle } from '#app/words/made-file-words.ts';
import { MADE_FILES, type MadeFileFault, type MadeFileName } from '#lib/lesson/made-files.ts';
import styles from './check.module.css';
import { useTaken } from './place-buttons.client.tsx';

/** How often it is looked at while something is being made, ms. */
const BUSY_MS = 1_500;

interface ShownFile {
  readonly name: MadeFileName;
  readonly state: 'waiting' | 'making' | 'ready' | 'failed';
  readonly percent?: number;
  readonly sizeBytes?: number;
  readonly fault?: MadeFileFault;
}

interface MadeFilesProps {
  /** Address of the lesson's routes. */
  readonly api: string;
  /** Address below which the revision's files are. */
  readonly revisionPath: string;
  readonly number: number;
  readonly mayEdit: boolean;
}

export function MadeFiles({ api, revisionPath, number, mayEdit }: MadeFilesProps) {
  const noteTaken = useTaken(api);
  const address = `${api}/revisions/${number}/files`;
  const [answer, setFiles] = useState<readonly ShownFile[] | null>(null);
  const load = useCallback(
    async (method: 'GET' | 'POST') => {
      try {
        const response = await fetch(address, { method });
        if (response.ok) setFiles(((await response.json()) as { files: readonly ShownFile[] }).files);
        // Refused for good: asking again would change nothing.
        else if (response.status < 500) setFiles((former) => former ?? []);
      } catch {
        // The next look may go through.
      }
    },
    [address],
  );
  const files = answer ?? [];
  const busy = answer === null || files.some(({ state }) => state === 'waiting' || state === 'making');
  useEffect(() => {
    void load('GET');
  }, [load]);
  useEffect(() => {
    if (!busy) return;
    const timer = setInterval(() => void load('GET'), BUSY_MS);
    return () => clearInterval(timer);
  }, [busy, load]);
  if (files.length === 0) return null;
  return (
    <>
      <h3>Made of revision {number}</h3>
      <ul className={styles.files}>
        {files.map((file) => (
          <li key={file.name}>
            <File
              file={file}
              address={`${revisionPath}/${file.name}`}
              onTake={() => {
                const isRecording = MADE_FILES[file.name].startsWith('video/');
                if (mayEdit && isRecording) noteTaken('recording', { revision: number });
              }}
            />
          </li>
        ))}
      </ul>
      {mayEdit && files.some(({ state }) => state === 'failed') ? (
        <p>
          <button type="button" className="quiet" onClick={() => void load('POST')}>
            Try again
          </button>
        </p>
      ) : null}
    </>
  );
}

interface FileProps {
  readonly file: ShownFile;
  readonly address: string;
  readonly onTake: () => void;
}

const File = ({ file, address, onTake }: FileProps) => {
  const title = madeFileTitle(file.name);
  switch (file.state) {
    case 'waiting':
      return <span className="soft">{title}: waits to be made</span>;
    case 'making':
      return (
        <>
          <span className="soft">{title}: being made</span>
          <progress max={100} value={file.percent} aria-label={title} />
        </>
      );
    case 'failed':
      return (
        <span className="fault">
          {title} {madeFileFaultWords(file.fault ?? 'gave-up')}
        </span>
      );
    case 'ready':
      return (
        <>
          <a href={address} download onClick={onTake}>
            {title}
          </a>{' '}
          <span className="hint">{fileSizeWords(file.sizeBytes ?? 0)}</span>
        </>
      );
  }
};
