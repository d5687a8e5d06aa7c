'use client';
/**
 * Chapters that were set elsewhere: pasted from a description, out of a file,
 * or out of the recording itself. They are looked at first and then taken as
 * one change, which undo takes back.
 */
import { type FormEvent, useEffect, useId, useRef, useState } from 'react';
import { z } from 'zod';
import { chapterKindWords } from '#app/words/chapter-words.ts';
import { chapter } from '#lib/chapters/chapter.ts';
import { readChapters } from '#lib/chapters/chapters-read.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';
import { decodeAs, decodeBytes } from '#lib/transcript/encoding.ts';
import { loss } from '#lib/transcript/loss.ts';
import { useDraft } from '../draft.client.tsx';
import { DropZone } from './drop-zone.client.tsx';
import { LossList } from './loss-list.client.tsx';
import styles from './transcript-file.module.css';

/** Largest file of chapters that is read, bytes; the longest list there can be is far smaller. */
const LARGEST_BYTES = 4_000_000;

const read = z.object({ chapters: z.array(chapter), losses: z.array(loss) });
type Read = z.infer<typeof read>;
interface Offer extends Read {
  readonly from: string;
}

const newId = () => crypto.randomUUID();

interface ChaptersPartProps {
  /** Address of the current recording's routes; null without one. */
  readonly recordingAddress: string | null;
  /** The lesson's transcript screen, where chapters stand. */
  readonly transcriptPage: string;
}

export function ChaptersPart({ recordingAddress, transcriptPage }: ChaptersPartProps) {
  const { content, change, mayEdit } = useDraft();
  const [offer, setOffer] = useState<Offer | null>(null);
  const [told, setTold] = useState('');
  const inside = useChaptersInside(recordingAddress);
  const result = useRef<HTMLDivElement>(null);
  const heading = useId();
  const present = content.chapters.length;

  useEffect(() => {
    if (offer) result.current?.focus();
  }, [offer]);

  const look = (from: string, found: z.input<typeof read>) => {
    setTold('');
    setOffer({ from, ...read.parse(found) });
  };
  const bring = async (file: File) => {
    if (file.size > LARGEST_BYTES) {
      setOffer(null);
      setTold(`${file.name} is too large to be a list of chapters. Is it the right one?`);
      return;
    }
    const bytes = new Uint8Array(await file.arrayBuffer());
    const decoded = decodeBytes(bytes);
    // Titles are short and stand before the teacher: the likeliest reading is shown, to be taken or not.
    const text =
      decoded.kind === 'text'
        ? decoded.text
        : decodeAs(bytes, decoded.candidates[0]?.encoding ?? 'windows-1252');
    look(file.name, toMutable(readChapters(text, newId)));
  };
  const take = (chapters: Read['chapters']) => {
    change(
      [
        ...content.chapters.map(({ id }) => ({ kind: 'remove' as const, list: 'chapters' as const, id })),
        ...chapters.map((item) => ({ kind: 'put' as const, list: 'chapters' as const, item })),
      ],
      `chapters from ${offer?.from ?? 'elsewhere'}`,
    );
    setOffer(null);
    setTold(`${inChapters(chapters.length)} taken into the lesson.`);
  };

  return (
    <section className="panel" aria-labelledby={heading}>
      <h2 id={heading}>Chapters</h2>
      <p className={styles.state}>
        {present === 0 ? 'The lesson has no chapters yet.' : `The lesson has ${inChapters(present)}.`}{' '}
        {present > 0 && <a href={transcriptPage}>See them in the transcript</a>}
      </p>
      {mayEdit && (
        <>
          {inside && (
            <p>
              The recording’s file has {inChapters(inside.chapters.length)} in it.{' '}
              <button
                type="button"
                className="quiet"
                onClick={() => look('the recording', toMutable(inside))}
              >
                Look at them
              </button>
            </p>
          )}
          <Intake
            onText={(text) => look('the pasted text', toMutable(readChapters(text, newId)))}
            onFile={(file) => void bring(file)}
          />
        </>
      )}
      <p role="status">{told}</p>
      <div ref={result} tabIndex={-1} className={styles.result}>
        {offer && <Offered offer={offer} present={present} onTake={take} onPutAside={() => setOffer(null)} />}
      </div>
    </section>
  );
}

function Intake({
  onText,
  onFile,
}: {
  readonly onText: (text: string) => void;
  readonly onFile: (file: File) => void;
}) {
  const [pasted, setPasted] = useState('');
  const id = useId();
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (pasted.trim() !== '') onText(pasted);
  };
  return (
    <>
      <form onSubmit={submit}>
        <div className="field">
          <label htmlFor={id}>Lines of a description</label>
          <textarea
            id={id}
            rows={5}
            value={pasted}
            placeholder={'0:00 What we make\n1:10 Rings and tools\n3:42 The repeat unit'}
            onChange={(event) => setPasted(event.target.value)}
          />
          <p className="hint">
            A whole description may be pasted: only lines that begin or end with a time are taken.
          </p>
        </div>
        <button type="submit" className="quiet" disabled={pasted.trim() === ''}>
          Find chapters in it
        </button>
      </form>
      <details className={styles.paste}>
        <summary>Choose a file instead</summary>
        <DropZone
          label="A file of chapters"
          accept=".vtt,.json,.txt,.ffmetadata,text/vtt,application/json,text/plain"
          onFile={onFile}
        >
          <p className="hint">WebVTT chapters, JSON chapters, ffmetadata, or lines with times.</p>
        </DropZone>
      </details>
    </>
  );
}

function Offered({
  offer: { from, chapters, losses },
  present,
  onTake,
  onPutAside,
}: {
  readonly offer: Offer;
  readonly present: number;
  readonly onTake: (chapters: Read['chapters']) => void;
  readonly onPutAside: () => void;
}) {
  return (
    <>
      <h3>
        {chapters.length === 0 ? 'No chapters were found in ' : `${inChapters(chapters.length)} in `}
        {from}
      </h3>
      {losses.length > 0 && <LossList losses={losses} leftOut="These parts are not in the chapters." />}
      {chapters.length > 0 && (
        <div className="table-frame">
          <table>
            <caption>What would be taken</caption>
            <thead>
              <tr>
                <th scope="col">From</th>
                <th scope="col">Kind</th>
                <th scope="col">Title</th>
              </tr>
            </thead>
            <tbody>
              {chapters.map((one) => (
                <tr key={one.id}>
                  <td>{formatTimeCode(one.startMs)}</td>
                  <td>{chapterKindWords(one.kind)}</td>
                  <td className={styles.text} dir="auto">
                    {one.title || <span className="soft">no title</span>}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {chapters.length > 0 && present > 0 && (
        <p className="notice caution">
          The lesson has {inChapters(present)} now. Taking these replaces {present === 1 ? 'it' : 'them all'}.
          Undo brings {present === 1 ? 'it' : 'them'} back.
        </p>
      )}
      <div className="row">
        {chapters.length > 0 && (
          <button type="button" onClick={() => onTake(chapters)}>
            {present > 0 ? 'Replace with' : 'Take'}{' '}
            {chapters.length === 1 ? 'this chapter' : `these ${chapters.length} chapters`}
          </button>
        )}
        <button type="button" className="quiet" onClick={onPutAside}>
          Put aside
        </button>
      </div>
    </>
  );
}

/** Chapters inside the recording's file; null until they are known, and where there are none. */
function useChaptersInside(address: string | null): Read | null {
  const [found, setFound] = useState<Read | null>(null);
  useEffect(() => {
    setFound(null);
    if (address === null) return;
    const gone = new AbortController();
    const load = async () => {
      const answer = await fetch(`${address}/chapters`, { signal: gone.signal });
      if (!answer.ok) return;
      const told = read.parse(await answer.json());
      if (told.chapters.length > 0) setFound(told);
    };
    // Where it cannot be known, nothing is offered: the other ways are there.
    load().catch(() => undefined);
    return () => gone.abort();
  }, [address]);
  return found;
}

const toMutable = (found: ReturnType<typeof readChapters>): Read => ({
  chapters: found.chapters.map((one) => ({ ...one })),
  losses: found.losses.map((one) => ({ ...one })),
});

const inChapters = (count: number): string =>
  count === 1 ? '1 chapter' : `${count.toLocaleString('en')} chapters`;
