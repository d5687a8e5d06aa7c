import { concernsWords } from '#app/words/correction-words.ts';
import { putRightWords } from '#app/words/effect-words.ts';
import type { Content } from '#lib/lesson/content.ts';
import { correctionsNewestFirst } from '#lib/lesson/corrections.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';
import styles from './lesson-page.module.css';
import { MomentLink } from './moment-link.tsx';
import { correctionAnchor } from './page-addresses.ts';

interface CorrectionListProps {
  readonly corrections: Content['corrections'];
  /** Null where there is no recording to play. */
  readonly page: string | null;
  /** Of the feed of corrections; null in a preview. */
  readonly feed: string | null;
}

/** What was wrong stays readable; what is right stands beside it. */
export const CorrectionList = ({ corrections, page, feed }: CorrectionListProps) =>
  corrections.length === 0 ? null : (
    <section id="corrections" className={styles.section} aria-labelledby="corrections-title">
      <h2 id="corrections-title">Corrections</h2>
      <ol className={styles.corrections}>
        {correctionsNewestFirst(corrections).map((correction) => (
          <li key={correction.id} id={correctionAnchor(correction.id)}>
            <p className={styles.correctionHead} lang="en">
              <span className="label">{correction.kind}</span>
              {correction.revision === null ? ' not published yet' : ` since revision ${correction.revision}`}
              {correction.startMs === null || correction.endMs === null ? null : (
                <>
                  , at{' '}
                  {page === null ? (
                    formatTimeCode(correction.startMs)
                  ) : (
                    <MomentLink page={page} atMs={correction.startMs} />
                  )}{' '}
                  to {formatTimeCode(correction.endMs)}
                </>
              )}
            </p>
            <p>
              <span className="unseen">Wrong: </span>
              <s>{correction.wrong}</s>
            </p>
            <p>
              <span className="unseen">Right: </span>
              <strong>{correction.right}</strong>
            </p>
            <p lang="en">
              {concernsWords(correction.affects)}
              {correction.kitsChange ? (
                <>
                  {' '}
                  Kits change: <a href="#kit">see your kit</a>.
                </>
              ) : (
                ' Kits stay as they are.'
              )}{' '}
              {putRightWords(correction.effects)}
            </p>
          </li>
        ))}
      </ol>
      {feed === null ? null : (
        <p lang="en">
          <a href={feed}>Follow the corrections as a feed (Atom)</a>
        </p>
      )}
    </section>
  );
