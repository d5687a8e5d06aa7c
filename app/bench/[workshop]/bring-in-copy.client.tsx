'use client';
/** Bringing in a portable copy: a file is sent, read by the worker, and gives lessons; or a sentence why not. */
import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { useCallback, useEffect, useId, useRef, useState } from 'react';
import { copyFaultWords, copyStateWords } from '#app/words/copy-words.ts';
import { sizeWords } from '#app/words/recording-words.ts';
import type { SentCopy } from '#lib/data/portable-copies.ts';
import styles from './bring-in-copy.module.css';
import { type Sending, type StopReason, sendRecording } from './lessons/[lesson]/bring-in/send-recording.ts';

type Shown = Omit<SentCopy, 'createdAt'>;

const LOOK_MS = 1_000;

const STOP_WORDS: Readonly<Record<StopReason, string>> = {
  'signed-out': 'You are signed out. Sign in again, then choose the same file: it goes on where it stopped.',
  refused: 'The server does not take this file here. Reload the page and look whether you may still edit.',
  'too-large': 'This file is larger than the server takes.',
  'disk-full': 'The server’s disk has no room for this file. Make room there, then choose it again.',
  unreachable:
    'The server cannot be reached. Choose the same file again once it can: it goes on where it stopped.',
};

export function BringInCopy({ workshop }: { readonly workshop: string }) {
  const api = `/api/workshops/${encodeURIComponent(workshop)}/portable-copies`;
  const [file, setFile] = useState<File | null>(null);
  const [sent, setSent] = useState(0);
  const [said, setSaid] = useState('');
  const tellRead = useCallback(() => setSaid('It is read; what came of it stands below.'), []);
  const { copies, refresh } = useCopies(api, tellRead);
  const [trouble, setTrouble] = useState('');
  const sending = useRef<Sending | null>(null);
  const id = useId();

  const begin = async (chosen: File): Promise<void> => {
    setFile(chosen);
    setSent(0);
    setTrouble('');
    setSaid(`Sending ${chosen.name}.`);
    const end = (isThere: boolean): void => {
      sending.current = null;
      setFile(null);
      void refresh(isThere);
    };
    sending.current = await sendRecording(
      chosen,
      { workshop, lesson: null },
      {
        onProgress: setSent,
        onDone: () => {
          setSaid(`${chosen.name} is there. It is being read.`);
          end(true);
        },
        onStop: (why) => {
          setSaid('');
          setTrouble(STOP_WORDS[why]);
          end(false);
        },
      },
    );
  };
  const cancel = async (): Promise<void> => {
    await sending.current?.cancel().catch(() => {});
    sending.current = null;
    setFile(null);
    setSaid('Cancelled; nothing was kept.');
    void refresh();
  };
  const takeOff = async (copy: Shown): Promise<void> => {
    await fetch(`${api}/${copy.id}`, { method: 'DELETE' }).catch(() => {});
    setSaid(`${copy.name} is off the list.`);
    void refresh();
  };

  return (
    <details className={`panel ${styles.part}`}>
      <summary>
        <h2>Bring in a portable copy</h2>
      </summary>
      <p>
        A zip that was taken out of this program, here or elsewhere: of one lesson, or of a whole workshop.
        What is published in it is published here too. Nothing that you have is overwritten.
      </p>
      {file ? (
        <div>
          <label className={styles.progress}>
            <span>
              {file.name}: {sizeWords(sent)} of {sizeWords(file.size)} sent
            </span>
            <progress max={Math.max(1, file.size)} value={sent} />
          </label>
          <button type="button" className="alarm" onClick={() => void cancel()}>
            Cancel sending
          </button>
        </div>
      ) : (
        <p className={styles.choice}>
          <label htmlFor={id}>Zip file</label>
          <input
            id={id}
            type="file"
            accept=".zip,application/zip"
            onChange={(event) => {
              const chosen = event.currentTarget.files?.[0];
              event.currentTarget.value = '';
              if (chosen) void begin(chosen);
            }}
          />
        </p>
      )}
      <p role="status">{said}</p>
      {trouble === '' ? null : (
        <p className="notice alarm" role="alert">
          {trouble}
        </p>
      )}
      {copies.length === 0 ? null : (
        <ul className={styles.copies}>
          {copies.map((copy) => (
            <li key={copy.id}>
              <CopyLine copy={copy} workshop={workshop} onTakeOff={() => void takeOff(copy)} />
            </li>
          ))}
        </ul>
      )}
    </details>
  );
}

interface CopyLineProps {
  readonly copy: Shown;
  readonly workshop: string;
  readonly onTakeOff: () => void;
}

const CopyLine = ({ copy, workshop, onTakeOff }: CopyLineProps) => {
  const { name, state, step, fault, lessons } = copy;
  const isOver = state === 'ready' || state === 'refused';
  return (
    <>
      <div>
        <strong className={styles.name}>{name}</strong>
        {state === 'refused' && fault ? <p className="fault">Not taken. {copyFaultWords(fault)}</p> : null}
        {state === 'ready' ? (
          <p>
            {lessons.length === 0 ? 'Brought in.' : 'Brought in: '}
            {lessons.map((lesson, index) => (
              <span key={lesson.id}>
                {index === 0 ? '' : ', '}
                <Link href={`/bench/${encodeURIComponent(workshop)}/lessons/${lesson.id}/transcript`}>
                  {lesson.title.trim() || 'Lesson without a title'}
                </Link>
              </span>
            ))}
          </p>
        ) : null}
        {state === 'ready' || state === 'refused' ? null : <p>{copyStateWords(state, step)}</p>}
      </div>
      {isOver ? (
        <button type="button" className="bare" onClick={onTakeOff}>
          Take off this list<span className="unseen">: {name}</span>
        </button>
      ) : null}
    </>
  );
};

/** The workshop's copies, looked at again while one is read; the page is read anew once it is. */
function useCopies(
  api: string,
  onRead: () => void,
): {
  readonly copies: readonly Shown[];
  readonly refresh: (somethingCame?: boolean) => Promise<void>;
} {
  const router = useRouter();
  const [answer, setCopies] = useState<readonly Shown[] | null>(null);
  const copies = answer ?? [];
  const wasBusy = useRef(false);
  const refresh = useCallback(
    async (somethingCame = false) => {
      wasBusy.current ||= somethingCame;
      const response = await fetch(api).catch(() => null);
      // Refused for good: asking again would change nothing.
      if (response && !response.ok && response.status < 500) setCopies((former) => former ?? []);
      if (!response?.ok) return;
      const now = ((await response.json()) as { copies: readonly Shown[] }).copies;
      setCopies(now);
      const busy = now.some(isBeingRead);
      if (wasBusy.current && !busy) {
        onRead();
        router.refresh();
      }
      wasBusy.current = busy;
    },
    [api, router, onRead],
  );
  // Asked again, too, while no answer came at all.
  const busy = answer === null || copies.some(isBeingRead);
  useEffect(() => {
    void refresh();
  }, [refresh]);
  useEffect(() => {
    if (!busy) return;
    const timer = setInterval(() => void refresh(), LOOK_MS);
    return () => clearInterval(timer);
  }, [busy, refresh]);
  return { copies, refresh };
}

const isBeingRead = ({ state }: Shown): boolean => state === 'waiting' || state === 'reading';
