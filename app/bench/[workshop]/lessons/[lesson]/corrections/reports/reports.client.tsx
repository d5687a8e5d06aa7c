'use client';

import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { type FormEvent, useId, useRef, useState } from 'react';
import { sendJson } from '#app/forms/send-json.ts';
import { SureDialog } from '#app/forms/sure-dialog.client.tsx';
import { CONCERN_WORDS } from '#app/words/report-words.ts';
import { correctionOf, LONGEST_REPORT, type PupilReport, reportedMs } from '#lib/lesson/report.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';
import { useDraft } from '../../draft.client.tsx';
import styles from './reports.module.css';

interface ShownReport extends PupilReport {
  readonly id: string;
  readonly day: string;
  readonly answer: string | null;
  readonly correctionId: string | null;
  readonly settled: boolean;
  /** The cue that was said at its moment in the revision that the pupil saw. */
  readonly cueId: string | null;
}

interface ReportsProps {
  /** Of the lesson on the bench. */
  readonly bench: string;
  /** Of the routes of its reports. */
  readonly api: string;
  /** Open ones first. */
  readonly reports: readonly ShownReport[];
}

export function Reports({ bench, api, reports }: ReportsProps) {
  const router = useRouter();
  const { mayEdit } = useDraft();
  const open = reports.filter(({ settled }) => !settled);
  const settled = reports.filter((report) => report.settled);
  return (
    <>
      <section className="panel" aria-labelledby="open-title">
        <h2 id="open-title">Reported by pupils</h2>
        {open.length === 0 ? (
          <p className="soft">
            Nothing waits for you. The lesson page has a form, “Something is wrong here”; what it sends comes
            here.
          </p>
        ) : null}
        {open.map((report) => (
          <OpenReport key={report.id} report={report} bench={bench} api={api} />
        ))}
      </section>
      {settled.length === 0 ? null : (
        <section className="panel" aria-labelledby="settled-title">
          <h2 id="settled-title">Settled</h2>
          {settled.map((report) => (
            <article key={report.id} className={styles.report}>
              <Told report={report} bench={bench} />
              {report.correctionId === null ? (
                <p>
                  <strong>Noted:</strong> {report.answer}
                </p>
              ) : (
                <p>
                  A correction was made of it.{' '}
                  <Link href={`${bench}/corrections#${report.correctionId}`}>Go to the correction</Link>
                </p>
              )}
              {mayEdit ? <Remove api={api} report={report} /> : null}
            </article>
          ))}
          {mayEdit ? (
            <SureDialog
              opens="Delete all settled reports…"
              question="Delete all settled reports?"
              does="Delete them"
              to={api}
              method="DELETE"
              done={() => router.refresh()}
            >
              <p>
                {settled.length === 1 ? 'One report' : `${settled.length} reports`} with what you noted.
                Corrections that were made of them stay.
              </p>
            </SureDialog>
          ) : null}
        </section>
      )}
    </>
  );
}

/** What the pupil wrote, and the way to the place that she means. */
function Told({ report, bench }: { readonly report: ShownReport; readonly bench: string }) {
  const { cues } = useDraft();
  const atMs = reportedMs(report);
  const cue = cues.find(({ id }) => id === report.cueId);
  const when = atMs === null ? report.at : formatTimeCode(atMs);
  return (
    <>
      <p>
        <span className="label">{CONCERN_WORDS[report.concerns]}</span>
        {when === '' ? '' : ` at ${when}`}{' '}
        <span className="soft">
          in revision {report.revision}, {report.day}
        </span>
      </p>
      {cue ? (
        <p>
          <Link href={`${bench}/transcript#${cue.id}`}>
            {formatTimeCode(cue.startMs)} {cue.text}
          </Link>
        </p>
      ) : atMs !== null ? (
        <p className="soft">No line of the draft’s transcript is said there.</p>
      ) : null}
      <p className={styles.words}>{report.wrong}</p>
      {report.right === '' ? null : (
        <p className={styles.words}>
          <span className="soft">What would be right:</span> {report.right}
        </p>
      )}
    </>
  );
}

interface OneProps {
  readonly report: ShownReport;
  readonly bench: string;
  readonly api: string;
}

function OpenReport({ report, bench, api }: OneProps) {
  const router = useRouter();
  const { content, cues, mayEdit, change } = useDraft();
  const note = useId();
  const [failed, setFailed] = useState(false);
  const made = useRef<string | null>(null);
  const settle = async (body: { answer: string } | { correctionId: string }): Promise<boolean> => {
    const sent = await sendJson(`${api}/${encodeURIComponent(report.id)}`, 'PATCH', body);
    setFailed(!sent.ok);
    return sent.ok;
  };
  const answer = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const text = String(new FormData(event.currentTarget).get('answer') ?? '').trim();
    if (text !== '' && (await settle({ answer: text }))) router.refresh();
  };
  const correct = async () => {
    const cue = cues.find(({ id }) => id === report.cueId) ?? null;
    // Written before the report is settled: where the second is cut short, the report waits on, and nothing is lost.
    if (!content.corrections.some(({ id }) => id === made.current)) {
      const correction = correctionOf(crypto.randomUUID(), report, cue);
      change([{ kind: 'put', list: 'corrections', item: correction }], 'make a correction of a report');
      made.current = correction.id;
    }
    if (made.current && (await settle({ correctionId: made.current })))
      router.push(`${bench}/corrections#${made.current}`);
  };
  return (
    <article className={styles.report}>
      <Told report={report} bench={bench} />
      {mayEdit ? (
        <>
          <div className="row">
            <button type="button" onClick={() => void correct()}>
              Make a correction of it
            </button>
            <Remove api={api} report={report} />
          </div>
          <details className={styles.note}>
            <summary>Settle it with a note</summary>
            <form onSubmit={(event) => void answer(event)}>
              <div className="field">
                <label htmlFor={note}>Note, for the workshop alone</label>
                <textarea id={note} name="answer" required maxLength={LONGEST_REPORT} rows={2} />
              </div>
              <button type="submit" className="quiet">
                Keep the note
              </button>
            </form>
          </details>
        </>
      ) : null}
      {failed ? (
        <p className="fault" role="alert">
          This could not be kept. Reload the page and try again.
        </p>
      ) : null}
    </article>
  );
}

function Remove({ api, report }: Pick<OneProps, 'api' | 'report'>) {
  const router = useRouter();
  return (
    <SureDialog
      opens={
        <>
          Delete…<span className="unseen"> {report.wrong.slice(0, 60)}</span>
        </>
      }
      question="Delete this report?"
      does="Delete it"
      to={`${api}/${encodeURIComponent(report.id)}`}
      method="DELETE"
      done={() => router.refresh()}
    >
      <p className={styles.words}>{report.wrong}</p>
    </SureDialog>
  );
}
