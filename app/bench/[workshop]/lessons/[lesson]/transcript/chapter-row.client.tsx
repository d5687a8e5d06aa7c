'use client';
/** A chapter as a heading in the document: kind, title and edge, changed where they stand. */
import { type KeyboardEvent, memo, type PointerEvent, useId, useState } from 'react';
import { chapterKindWords, chapterMark } from '#app/words/chapter-words.ts';
import { nextPlace, snapMoment } from '#lib/chapters/snap.ts';
import { CHAPTER_KINDS, type Chapter } from '#lib/lesson/content.ts';
import { formatPreciseTimeCode, formatTimeCode } from '#lib/time/time-code.ts';
import styles from './chapter-row.module.css';
import type { MarkUp } from './mark-up.ts';
import { TimeField } from './time-field.client.tsx';

export interface ChapterRowProps {
  readonly chapter: Chapter;
  readonly mayEdit: boolean;
  readonly markUp: MarkUp;
  /** Places that draw the edge. */
  readonly places: () => readonly number[];
  /** The moment that lies at a height of the window, by the ribbon beside the text; null where there is none. */
  readonly momentAt: (clientY: number) => number | null;
  /** Called where the title is done with: the keyboard goes on to the words. */
  readonly goOn: (chapterId: string) => void;
}

const FINE_MS = 100;

export const ChapterRow = memo(function ChapterRow({
  chapter,
  mayEdit,
  markUp,
  places,
  momentAt,
  goOn,
}: ChapterRowProps) {
  const id = useId();
  const [stay, setStay] = useState(0);
  if (!mayEdit) {
    return (
      <div className={styles.chapter} data-chapter={chapter.id}>
        <span className={styles.edge} aria-hidden="true">
          {chapterMark(chapter.kind)}
        </span>
        <div className={styles.heading}>
          <p className={styles.kind}>
            {chapterKindWords(chapter.kind)} · {formatTimeCode(chapter.startMs)}
          </p>
          <h3>{chapter.title || 'Chapter without a title'}</h3>
        </div>
      </div>
    );
  }
  return (
    <div className={styles.chapter} data-chapter={chapter.id}>
      <Edge chapter={chapter} markUp={markUp} places={places} momentAt={momentAt} />
      <div className={styles.heading}>
        <h3 className="unseen">
          {chapterKindWords(chapter.kind)}: {chapter.title || 'chapter without a title'}
        </h3>
        <div className={styles.headRow}>
          <span aria-hidden="true" className={styles.mark}>
            {chapterMark(chapter.kind)}
          </span>
          <select
            aria-label="Kind of chapter"
            value={chapter.kind}
            onChange={(event) => {
              const kind = CHAPTER_KINDS.find((one) => one === event.target.value);
              if (kind) markUp.sortChapter(chapter, kind);
            }}
          >
            {CHAPTER_KINDS.map((kind) => (
              <option key={kind} value={kind}>
                {chapterKindWords(kind)}
              </option>
            ))}
          </select>
          <TimeField
            label="from"
            valueMs={chapter.startMs}
            onMove={(ms) => markUp.moveChapter(chapter, ms)}
          />
          <button type="button" className="bare" onClick={() => markUp.removeChapter(chapter.id)}>
            Delete chapter
          </button>
        </div>
        <label htmlFor={id} className="unseen">
          Title of the chapter
        </label>
        <input
          id={id}
          className={styles.titleField}
          data-chapter-title={chapter.id}
          value={chapter.title}
          maxLength={300}
          placeholder="Title of the chapter"
          autoComplete="off"
          onFocus={() => setStay(performance.now())}
          onChange={(event) => markUp.nameChapter(chapter, event.target.value, `${id} ${stay}`)}
          onKeyDown={(event) => {
            if (event.key !== 'Enter' && event.key !== 'Escape') return;
            event.preventDefault();
            goOn(chapter.id);
          }}
        />
      </div>
    </div>
  );
});

/** The chapter's edge in the ribbon: dragged, or moved by arrow keys from place to place. */
function Edge({ chapter, markUp, places, momentAt }: Omit<ChapterRowProps, 'mayEdit' | 'goOn'>) {
  const [aimMs, setAimMs] = useState<number | null>(null);
  const [y, setY] = useState(0);

  const aim = (event: PointerEvent) => {
    const ms = momentAt(event.clientY);
    if (ms === null) return;
    setY(event.clientY);
    setAimMs(snapMoment(ms, places()));
  };
  const onKey = (event: KeyboardEvent) => {
    const direction =
      event.key === 'ArrowUp' || event.key === 'ArrowLeft'
        ? 'earlier'
        : event.key === 'ArrowDown' || event.key === 'ArrowRight'
          ? 'later'
          : null;
    if (!direction || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    event.stopPropagation();
    const fine = chapter.startMs + (direction === 'later' ? FINE_MS : -FINE_MS);
    const to = event.shiftKey ? Math.max(0, fine) : nextPlace(chapter.startMs, places(), direction);
    if (to !== null) markUp.moveChapter(chapter, to);
  };

  return (
    <>
      <span
        className={styles.edge}
        role="slider"
        tabIndex={0}
        aria-label={`Edge of the chapter ${chapter.title || 'without a title'}`}
        aria-orientation="vertical"
        aria-valuemin={0}
        aria-valuemax={Math.max(chapter.startMs, places().at(-1) ?? 0)}
        aria-valuenow={chapter.startMs}
        aria-valuetext={formatPreciseTimeCode(chapter.startMs)}
        title="Drag along the ribbon, or use the arrow keys"
        onKeyDown={onKey}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          aim(event);
        }}
        onPointerMove={(event) => event.currentTarget.hasPointerCapture(event.pointerId) && aim(event)}
        onPointerUp={() => {
          if (aimMs !== null) markUp.moveChapter(chapter, aimMs);
          setAimMs(null);
        }}
        onPointerCancel={() => setAimMs(null)}
      >
        <span aria-hidden="true">⇕</span>
      </span>
      {aimMs !== null && (
        <span className={styles.aim} style={{ top: y }} aria-hidden="true">
          {formatPreciseTimeCode(aimMs)}
        </span>
      )}
    </>
  );
}
