'use client';
/** The transcript files that were brought in: each is kept as it came, can be saved again, and read again. */
import { useEffect, useState } from 'react';
import { z } from 'zod';
import { dayOf } from '#app/words/days.ts';
import { sizeWords } from '#app/words/recording-words.ts';
import { formatWords } from '#app/words/transcript-words.ts';
import { TRANSCRIPT_FORMATS } from '#lib/transcript/detect-format.ts';
import { loss } from '#lib/transcript/loss.ts';
import { LossList } from './loss-list.client.tsx';
import styles from './transcript-file.module.css';

const listed = z.object({
  files: z.array(
    z.object({
      id: z.string(),
      name: z.string(),
      sizeBytes: z.number(),
      format: z.string(),
      losses: z.array(loss),
      createdAt: z.coerce.date(),
    }),
  ),
});
type KeptFile = z.infer<typeof listed>['files'][number];

interface KeptFilesProps {
  /** Address of the lesson's transcript files. */
  readonly address: string;
  /** Changes when a file was brought in, so that the list is asked for again. */
  readonly asOf: unknown;
  readonly mayEdit: boolean;
  readonly onReadAgain: (file: { readonly fileId: string; readonly name: string }) => void;
}

export function KeptFiles({ address, asOf, mayEdit, onReadAgain }: KeptFilesProps) {
  const [files, setFiles] = useState<readonly KeptFile[]>([]);
  const [unreachable, setUnreachable] = useState(false);

  // biome-ignore lint/correctness/useExhaustiveDependencies: asked again when something was brought in
  useEffect(() => {
    const gone = new AbortController();
    const load = async () => {
      try {
        const answer = await fetch(address, { signal: gone.signal });
        if (!answer.ok) throw new Error(String(answer.status));
        setFiles(listed.parse(await answer.json()).files);
        setUnreachable(false);
      } catch {
        if (!gone.signal.aborted) setUnreachable(true);
      }
    };
    void load();
    return () => gone.abort();
  }, [address, asOf]);

  // A list that is there stays, with what is open in it.
  if (unreachable && files.length === 0)
    return <p className="fault">The files that were brought in cannot be listed just now.</p>;
  if (files.length === 0) return null;
  return (
    <details className={styles.paste}>
      <summary>
        {files.length === 1 ? 'The file that was' : `The ${files.length} files that were`} brought in
      </summary>
      <ul className={styles.files}>
        {files.map((file) => (
          <li key={file.id}>
            <p className={styles.state}>
              <a href={`${address}/${encodeURIComponent(file.id)}`} download>
                {file.name}
              </a>{' '}
              <span className="hint">
                {dayOf(file.createdAt)}, {sizeWords(file.sizeBytes)}, {formatOf(file.format)}
              </span>
            </p>
            {file.losses.length > 0 && (
              <details>
                <summary>What of it is not in the cues as it stood ({file.losses.length})</summary>
                <LossList losses={file.losses} />
              </details>
            )}
            {mayEdit && (
              <button
                type="button"
                className="quiet"
                onClick={() => onReadAgain({ fileId: file.id, name: file.name })}
              >
                Read it again
              </button>
            )}
          </li>
        ))}
      </ul>
    </details>
  );
}

function formatOf(format: string): string {
  const known = TRANSCRIPT_FORMATS.find((one) => one === format);
  return known ? formatWords(known) : 'not read';
}
