'use client';
/** All chapters in short, to jump to. */
import { chapterKindWords, chapterMark } from '#app/words/chapter-words.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';
import { useDraftPart } from '../draft.client.tsx';
import styles from './chapter-list.module.css';

export function ChapterList({ goTo }: { goTo: (chapterId: string, startMs: number) => void }) {
  const chapters = useDraftPart((state) => state.content.chapters);
  if (chapters.length === 0) return null;
  const sorted = [...chapters].sort((a, b) => a.startMs - b.startMs);
  return (
    <nav aria-label="Chapters" className={styles.contents}>
      <h3>Chapters</h3>
      <ol>
        {sorted.map((chapter) => (
          <li key={chapter.id}>
            <button type="button" className="bare" onClick={() => goTo(chapter.id, chapter.startMs)}>
              <span aria-hidden="true" className={styles.mark}>
                {chapterMark(chapter.kind)}
              </span>
              <span className={styles.contentsTitle}>{chapter.title || chapterKindWords(chapter.kind)}</span>
              <span className={styles.contentsTime}>{formatTimeCode(chapter.startMs)}</span>
            </button>
          </li>
        ))}
      </ol>
    </nav>
  );
}
