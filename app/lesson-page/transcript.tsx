import { chaptersInOrder } from '#lib/chapters/chapter-rules.ts';
import type { Chapter, Content } from '#lib/lesson/content.ts';
import { correctionsDuring } from '#lib/lesson/corrections.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import styles from './lesson-page.module.css';
import { MomentLink } from './moment-link.tsx';
import { type Explainer, TermText } from './terms.tsx';

interface TranscriptProps {
  readonly cues: readonly Cue[];
  readonly chapters: readonly Chapter[];
  readonly corrections: Content['corrections'];
  /** Null where there is no recording to play. */
  readonly page: string | null;
  readonly explainer: Explainer;
}

/** Cues from which on chapters are closed at first. */
const LONG = 400;

/** All that is said, under its chapters; corrections stand at the first words that they are about. */
export const Transcript = ({ cues, chapters, corrections, page, explainer }: TranscriptProps) => {
  if (cues.length === 0) return null;
  const told = new Set<string>();
  const isLong = cues.length > LONG;
  return (
    <section
      id="transcript"
      className={`${styles.section} ${styles.transcript}`}
      aria-labelledby="transcript-title"
      data-long={isLong || undefined}
    >
      <h2 id="transcript-title">Transcript</h2>
      {cues.some(({ timing }) => timing === 'approximate') && (
        <p className="soft" lang="en">
          Some of these times are approximate: the words may be said a little earlier or later.
        </p>
      )}
      {inChapters(cues, chapters).map(({ chapter, said }) => {
        const places = explainer.placesInAll(said.map(({ text }) => text));
        return (
          <details key={chapter?.id ?? 'before'} open={!isLong}>
            <summary>
              {chapter ? `${formatTimeCode(chapter.startMs)} ${chapter.title}` : 'Before the first chapter'}
            </summary>
            {said.map((cue, at) => {
              const here = correctionsDuring(corrections, cue).filter(
                (correction) => !told.has(correction.id),
              );
              for (const correction of here) told.add(correction.id);
              return (
                <div key={cue.id} className={styles.cue}>
                  {page === null ? (
                    <span>{formatTimeCode(cue.startMs)}</span>
                  ) : (
                    <MomentLink page={page} atMs={cue.startMs} />
                  )}
                  <p>
                    <TermText text={cue.text} explainer={explainer} places={places[at]} isSpeech />
                  </p>
                  {here.map((correction) => (
                    <p key={correction.id} className="notice caution">
                      <strong lang="en">Corrected:</strong> <s>{correction.wrong}</s> {correction.right}
                    </p>
                  ))}
                </div>
              );
            })}
          </details>
        );
      })}
    </section>
  );
};

interface Said {
  readonly chapter: Chapter | null;
  readonly said: readonly Cue[];
}

function inChapters(cues: readonly Cue[], chapters: readonly Chapter[]): readonly Said[] {
  const ordered = chaptersInOrder(chapters);
  const before = cues.filter((cue) => cue.startMs < (ordered[0]?.startMs ?? Number.POSITIVE_INFINITY));
  return [
    { chapter: null, said: before },
    ...ordered.map((chapter, index) => {
      const endMs = ordered[index + 1]?.startMs ?? Number.POSITIVE_INFINITY;
      return { chapter, said: cues.filter((cue) => cue.startMs >= chapter.startMs && cue.startMs < endMs) };
    }),
  ].filter(({ said }) => said.length > 0);
}
