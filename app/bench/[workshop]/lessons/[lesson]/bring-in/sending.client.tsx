'use client';
/** A file on its way: checked, sent with its true progress, paused, taken up again. */
import { useEffect, useRef, useState } from 'react';
import { codecWords, recordingFaultWords, sizeWords, timeLeftWords } from '#app/words/recording-words.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';
import styles from './bring-in.module.css';
import { type FileFacts, inspectFile } from './inspect-file.ts';
import { type Sending, type SendTo, sendRecording } from './send-recording.ts';

interface SendingFileProps {
  readonly file: File;
  readonly to: SendTo;
  readonly largestBytes: number;
  /** Called when all bytes are there. */
  readonly onSent: () => void;
  /** Called when the file is given up; the other one may be chosen. */
  readonly onDropped: () => void;
  readonly announce: (text: string) => void;
}

type Phase = 'looking' | 'sending' | 'paused' | 'stopped' | 'refused';

export function SendingFile({ file, to, largestBytes, onSent, onDropped, announce }: SendingFileProps) {
  const [phase, setPhase] = useState<Phase>('looking');
  const [facts, setFacts] = useState<FileFacts | null>(null);
  const [trouble, setTrouble] = useState('');
  const [sent, setSent] = useState(0);
  const [rate, setRate] = useState<number | null>(null);
  const sending = useRef<Sending | null>(null);
  const begun = useRef(false);

  useEffect(() => {
    // React may run this twice while developing; a file is sent once.
    if (begun.current) return;
    begun.current = true;
    const pace = paceOf();
    const refuse = (words: string): void => {
      setPhase('refused');
      setTrouble(words);
      announce(words);
    };
    const begin = async (): Promise<void> => {
      if (file.size > largestBytes) {
        return refuse(`This file is ${sizeWords(file.size)}; ${sizeWords(largestBytes)} is the most.`);
      }
      const inspected = await inspectFile(file);
      if (!inspected.ok) return refuse(recordingFaultWords(inspected.fault));
      setFacts(inspected.value);
      setPhase('sending');
      announce(`Sending ${file.name}.`);
      let told = 0;
      sending.current = await sendRecording(file, to, {
        onProgress: (bytes) => {
          setSent(bytes);
          setRate(pace(bytes, performance.now()));
          const quarter = Math.floor((bytes * 4) / file.size);
          if (quarter > told && quarter < 4) announce(`${quarter * 25} percent sent.`);
          told = Math.max(told, quarter);
        },
        onDone: () => {
          announce('All of it is there. It is now being looked through.');
          onSent();
        },
        onStop: (why) => {
          setPhase('stopped');
          setTrouble(STOP_WORDS[why]);
          announce(STOP_WORDS[why]);
        },
      });
    };
    begin().catch((error: unknown) => refuse(`This file could not be read: ${String(error)}`));
  }, [file, to, largestBytes, onSent, announce]);

  const percent = Math.floor((sent * 100) / Math.max(1, file.size));
  const pauseOrGoOn = async (): Promise<void> => {
    if (phase === 'sending') {
      await sending.current?.pause();
      setPhase('paused');
      setRate(null);
      announce('Paused.');
    } else {
      setPhase('sending');
      setTrouble('');
      sending.current?.goOn();
      announce('Going on.');
    }
  };
  const cancel = async (): Promise<void> => {
    await sending.current?.cancel().catch(() => {});
    announce('Cancelled; nothing was kept.');
    onDropped();
  };

  if (phase === 'refused') {
    return (
      <section className="notice alarm" aria-label="File not taken">
        <p>
          <strong className={styles.name}>{file.name}</strong> was not sent. {trouble}
        </p>
        <button type="button" className="quiet" onClick={onDropped}>
          Choose another file
        </button>
      </section>
    );
  }
  return (
    <section className="panel" aria-label="Sending the recording">
      <h3 className={styles.name}>{file.name}</h3>
      {facts && <FileFactsLine size={file.size} facts={facts} />}
      {phase === 'looking' ? (
        <p>Looking into the file…</p>
      ) : (
        <>
          <label className={styles.progress}>
            <span>
              {sizeWords(sent)} of {sizeWords(file.size)} sent, {percent} %
            </span>
            <progress max={file.size} value={sent} />
          </label>
          <p className="hint">{paceLine(phase, rate, file.size - sent)}</p>
          {trouble && <p className="fault">{trouble}</p>}
          <div className="row">
            <button type="button" className="quiet" onClick={() => void pauseOrGoOn()}>
              {phase === 'sending' ? 'Pause' : 'Go on sending'}
            </button>
            <button type="button" className="alarm" onClick={() => void cancel()}>
              Cancel sending
            </button>
          </div>
        </>
      )}
    </section>
  );
}

const STOP_WORDS = {
  'signed-out': 'You are signed out. Sign in again in another window, then go on; what was sent is kept.',
  refused:
    'The server does not take this file here. Reload the page and look whether you may still edit this lesson.',
  'disk-full':
    'The server’s disk has no room for this file. What was sent is kept; make room there, then go on.',
  'too-large': 'The server does not take a file as large as this.',
  unreachable: 'The server cannot be reached. What was sent is kept: go on when you are connected again.',
} as const;

function paceLine(phase: Phase, rate: number | null, bytesLeft: number): string {
  if (phase === 'paused') return 'Paused. You may also come back later and choose the same file again.';
  if (phase === 'stopped') return 'Stopped.';
  if (rate === null || rate <= 0) return 'Measuring how fast it goes…';
  return `${sizeWords(rate)} a second, ${timeLeftWords((bytesLeft / rate) * 1000)}`;
}

function FileFactsLine({ size, facts }: { size: number; facts: FileFacts }) {
  const parts = [
    sizeWords(size),
    facts.durationMs === null ? '' : formatTimeCode(facts.durationMs),
    facts.width && facts.height ? `${facts.width} × ${facts.height}` : facts.audioCodec ? 'sound only' : '',
    [facts.videoCodec, facts.audioCodec].flatMap((codec) => (codec ? [codecWords(codec)] : [])).join(' and '),
  ];
  return <p className="soft">{parts.filter(Boolean).join(' · ')}</p>;
}

/** Bytes a second over the last eight seconds; null until there is something to measure. */
function paceOf(): (bytes: number, nowMs: number) => number | null {
  let marks: { bytes: number; nowMs: number }[] = [];
  return (bytes, nowMs) => {
    marks = [...marks.filter((mark) => nowMs - mark.nowMs < 8_000 && mark.bytes <= bytes), { bytes, nowMs }];
    const first = marks[0];
    if (!first || nowMs - first.nowMs < 800) return null;
    return ((bytes - first.bytes) * 1000) / (nowMs - first.nowMs);
  };
}
