'use client';
/** One proposed chapter: when, which kind and why, what it is called, and what to do with it. */
import { useId } from 'react';
import { chapterKindWords, chapterMark, kindReason, placeReason } from '#app/words/chapter-words.ts';
import { CHAPTER_KINDS } from '#lib/chapters/chapter.ts';
import type { ProposedChapter } from '#lib/chapters/propose-chapters.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';
import styles from './proposed-chapters.module.css';
import { TimeField } from './time-field.client.tsx';

export interface ProposedChapterRowProps {
  readonly proposed: ProposedChapter;
  readonly change: (edit: Partial<Pick<ProposedChapter, 'kind' | 'title' | 'startMs'>>) => void;
  readonly listen: () => void;
  readonly accept: () => void;
  readonly refuse: () => void;
}

export function ProposedChapterRow({ proposed, change, listen, accept, refuse }: ProposedChapterRowProps) {
  const id = useId();
  const at = formatTimeCode(proposed.startMs);
  return (
    <li className={styles.row}>
      <button type="button" className={`bare ${styles.time}`} onClick={listen}>
        <span className="unseen">Listen from </span>
        {at}
      </button>
      <div className={styles.what}>
        <label className="unseen" htmlFor={`${id}-title`}>
          Title of the chapter at {at}
        </label>
        <input
          id={`${id}-title`}
          className={styles.title}
          value={proposed.title}
          maxLength={300}
          autoComplete="off"
          onChange={(event) => change({ title: event.target.value })}
        />
        <p className={styles.opens}>“{proposed.opens}”</p>
        <div className={styles.settings}>
          <span aria-hidden="true" className={styles.mark}>
            {chapterMark(proposed.kind)}
          </span>
          <select
            aria-label={`Kind of the chapter at ${at}`}
            value={proposed.kind}
            onChange={(event) => {
              const kind = CHAPTER_KINDS.find((one) => one === event.target.value);
              if (kind) change({ kind });
            }}
          >
            {CHAPTER_KINDS.map((kind) => (
              <option key={kind} value={kind}>
                {chapterKindWords(kind)}
              </option>
            ))}
          </select>
          <TimeField label="from" valueMs={proposed.startMs} onMove={(startMs) => change({ startMs })} />
        </div>
        <p className={styles.reason}>
          {kindReason(proposed)} {placeReason(proposed)}
        </p>
      </div>
      <div className={styles.decide}>
        <button type="button" className="quiet" data-accept={proposed.cueId} onClick={accept}>
          Accept<span className="unseen"> the chapter at {at}</span>
        </button>
        <button type="button" className="bare" onClick={refuse}>
          Not here<span className="unseen">: no chapter at {at}</span>
        </button>
      </div>
    </li>
  );
}
