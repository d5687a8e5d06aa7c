/** Where a pupil says that something is wrong; works without script, and asks nothing about her. */
import { CONCERN_WORDS } from '#app/words/report-words.ts';
import { CONCERNS, LONGEST_REPORT } from '#lib/lesson/report.ts';
import styles from './lesson-page.module.css';
import { REPORT_PLACE, type Reported } from './page-addresses.ts';
import { ReportMoment } from './report-moment.client.tsx';

interface ReportFormProps {
  /** Where the form is sent. */
  readonly to: string;
  readonly revision: number;
  /** What became of a report that was just sent; null where none was. */
  readonly reported: Reported | null;
  readonly hasRecording: boolean;
}

const TOLD: Readonly<Record<Reported, string>> = {
  yes: 'Thank you. The workshop will read it.',
  'not-complete':
    'It was not sent: say in a few words what is wrong. Go back, and what you wrote should still be there.',
  'too-many':
    'It was not sent: several reports came from your network within the last hour. Please try again in an hour.',
};

export const ReportForm = ({ to, revision, reported, hasRecording }: ReportFormProps) => (
  <section id={REPORT_PLACE} className={styles.section} aria-label="Something is wrong here" lang="en">
    {reported === null ? null : (
      <p className={reported === 'yes' ? 'notice' : 'notice caution'} role="status">
        {TOLD[reported]}
      </p>
    )}
    <details className={styles.report} open={reported !== null && reported !== 'yes'}>
      <summary>Something is wrong here</summary>
      <form method="post" action={to}>
        <input type="hidden" name="revision" value={revision} />
        <div className={styles.reportFields}>
          <div className="field">
            <label htmlFor="report-concerns">It is about</label>
            <select id="report-concerns" name="concerns" defaultValue={hasRecording ? 'spoken' : 'written'}>
              {CONCERNS.filter(
                (concern) => hasRecording || (concern !== 'spoken' && concern !== 'shown'),
              ).map((concern) => (
                <option key={concern} value={concern}>
                  {CONCERN_WORDS[concern]}
                </option>
              ))}
            </select>
          </div>
          {hasRecording ? <ReportMoment /> : <input type="hidden" name="at" value="" />}
        </div>
        <div className="field">
          <label htmlFor="report-wrong">What is wrong?</label>
          <textarea id="report-wrong" name="wrong" required maxLength={LONGEST_REPORT} rows={3} />
        </div>
        <div className="field">
          <label htmlFor="report-right">What would be right, if you know it</label>
          <textarea id="report-right" name="right" maxLength={LONGEST_REPORT} rows={2} />
        </div>
        <p className="hint">
          Goes to the workshop alone, without your name or address. If you want an answer, write how to reach
          you.
        </p>
        <p>
          <button type="submit" className="quiet">
            Send to the workshop
          </button>
        </p>
      </form>
    </details>
  </section>
);
