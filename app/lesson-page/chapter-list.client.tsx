'use client';

import { formatTimeCode } from '#lib/time/time-code.ts';
import { momentLink } from './page-addresses.ts';
import styles from './player.module.css';

export interface PlayerChapter {
  readonly id: string;
  readonly kind: string;
  readonly title: string;
  readonly startMs: number;
  readonly endMs: number;
}

interface ChapterListProps {
  readonly page: string;
  readonly chapters: readonly PlayerChapter[];
  /** Null where nothing follows the playing. */
  readonly atMs: number | null;
}

/** Chapters as links; the one that plays is marked. */
export function ChapterList({ page, chapters, atMs }: ChapterListProps) {
  if (chapters.length === 0) return null;
  return (
    <nav aria-label="Chapters" className={styles.chapters}>
      <ol>
        {chapters.map((chapter) => {
          const here = atMs !== null && atMs > 0 && atMs >= chapter.startMs && atMs < chapter.endMs;
          return (
            <li key={chapter.id}>
              <a
                href={momentLink(page, chapter.startMs)}
                data-at={chapter.startMs}
                aria-current={here ? 'true' : undefined}
              >
                <span className={styles.time}>{formatTimeCode(chapter.startMs)}</span>
                <span>{chapter.title}</span>
                {chapter.kind === 'repeat unit' && !/repeat unit/i.test(chapter.title) ? (
                  <span className={styles.kind}>repeat unit</span>
                ) : null}
              </a>
            </li>
          );
        })}
      </ol>
    </nav>
  );
}
