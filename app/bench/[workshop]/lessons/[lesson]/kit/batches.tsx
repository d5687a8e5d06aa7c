/** Kits that were made up together, by revision: their papers, and what a later revision changes in them. */
import { StackingTable } from '#app/kit/stacking-table.tsx';
import { kitAddress } from '#app/lesson-page/page-addresses.ts';
import { MOST_LABELS } from '#app/paper/kit-labels.ts';
import { dayOf } from '#app/words/days.ts';
import { exchangeRows } from '#app/words/exchange-rows.ts';
import { type BatchRead, readBatches } from '#lib/bench/record-batch.ts';
import { database } from '#lib/data/database.ts';
import { getRevision, listRevisions } from '#lib/data/revisions.ts';
import { kitsIn } from '#lib/kit/recorded-batch.ts';
import { type BatchChange, changesKits } from '#lib/lesson/batch-change.ts';
import { BatchForm } from './batch-form.client.tsx';
import { ForgetBatch } from './forget-batch.client.tsx';
import styles from './kit.module.css';

interface BatchesProps {
  readonly lessonId: string;
  /** Where batches are kept. */
  readonly api: string;
  readonly mayEdit: boolean;
  /** Path of the lesson page. */
  readonly page: string;
}

/** Revisions that a new batch may be of: the latest ones. */
const MOST_OFFERED = 10;

export async function Batches({ lessonId, api, mayEdit, page }: BatchesProps) {
  const { latest, batches } = await readBatches(database(), lessonId);
  const affected = batches.filter(({ change }) => change && changesKits(change)).length;
  return (
    <section id="batches" className="panel" aria-labelledby="batches-title">
      <h2 id="batches-title">Batches to sell or hand out</h2>
      {latest === null ? (
        <p className="soft">
          A kit to sell names the revision that it was packed by. Publish the lesson first; then record here
          which kits you made up.
        </p>
      ) : (
        <>
          <p className="soft">
            Record what you make up: labels and inserts then name the revision, their code leads to a page
            that tells the holder what differs by now, and you see here which kits a correction reaches.
          </p>
          {affected === 0 ? null : (
            <p className="notice caution">
              Revision {latest} changes the kits of {affected === 1 ? 'one batch' : `${affected} batches`}.
            </p>
          )}
          {batches.map((read) => (
            <Batch key={read.batch.id} {...read} api={api} mayEdit={mayEdit} page={page} latest={latest} />
          ))}
          {batches.length === 0 ? <p>No batch is recorded yet.</p> : null}
          {mayEdit ? <BatchForm api={api} revisions={await offered(lessonId)} /> : null}
        </>
      )}
    </section>
  );
}

async function offered(lessonId: string) {
  const marks = (await listRevisions(database(), lessonId)).slice(0, MOST_OFFERED);
  return Promise.all(
    marks.map(async ({ id, number, publishedAt }) => {
      const { sizes, kitRules, ringKinds } = (await getRevision(database(), id)).content;
      return { number, day: dayOf(publishedAt), sizes, kitRules, hasSpare: ringKinds.length > 0 };
    }),
  );
}

interface BatchProps extends BatchRead, Pick<BatchesProps, 'api' | 'mayEdit' | 'page'> {
  readonly latest: number;
}

const Batch = ({ batch, change, api, mayEdit, page, latest }: BatchProps) => {
  const kits = kitsIn(batch);
  const files = `${api}/${encodeURIComponent(batch.id)}`;
  const title = `${kits} ${kits === 1 ? 'kit' : 'kits'} of revision ${batch.revision}, ${dayOf(new Date(batch.madeOn))}`;
  const [first] = batch.kits;
  return (
    <article className={styles.batch} aria-labelledby={`batch-${batch.id}`}>
      <h3 id={`batch-${batch.id}`}>{title}</h3>
      <p>
        {batch.kits.map(({ name, times }) => `${times} × ${name}`).join(', ')}.
        {batch.rule === 'pooled' ? ' The spare rings lie on one tray.' : ''}
        {batch.note.trim() === '' ? '' : ` ${batch.note}`}
      </p>
      {batch.revision === latest ? null : change && changesKits(change) ? (
        <Change
          change={change}
          pooled={batch.rule === 'pooled'}
          latest={latest}
          files={files}
          title={title}
        />
      ) : (
        <p className="soft">Nothing in these kits changed since: they are right for revision {latest} too.</p>
      )}
      <ul className={styles.files}>
        {parts(kits).map(({ from, words }) => (
          <li key={from}>
            <a href={`${files}/labels.pdf?from=${from}`}>Labels{words} (PDF)</a>
          </li>
        ))}
        {parts(kits).map(({ from, words }) => (
          <li key={from}>
            <a href={`${files}/inserts.pdf?from=${from}`}>Inserts{words} (PDF)</a>
          </li>
        ))}
        <li>
          <a href={`${files}/picking-sheet.pdf`}>Picking sheet (PDF)</a>
        </li>
        {first ? (
          <li>
            <a href={kitAddress(page, batch.revision, first.bodyMm)}>
              What the holder of a {first.name} reads
            </a>
          </li>
        ) : null}
        {mayEdit ? (
          <li>
            <ForgetBatch to={files} title={title} />
          </li>
        ) : null}
      </ul>
    </article>
  );
};

/** Where the files of a large batch begin: ``, or ` 1 to 200`, ` 201 to 260`. */
function parts(kits: number): readonly { readonly from: number; readonly words: string }[] {
  return Array.from({ length: Math.ceil(kits / MOST_LABELS) }, (_, index) => {
    const from = index * MOST_LABELS + 1;
    return {
      from,
      words: kits <= MOST_LABELS ? '' : ` ${from} to ${Math.min(kits, from + MOST_LABELS - 1)}`,
    };
  });
}

interface ChangeProps {
  readonly change: BatchChange;
  readonly pooled: boolean;
  readonly latest: number;
  readonly files: string;
  readonly title: string;
}

const Change = ({ change: { parts: sizes, lines, unknown }, pooled, latest, files, title }: ChangeProps) => (
  <div className="notice caution">
    <p>
      <strong>Revision {latest} changes these kits.</strong>
      {unknown.length === 0 ? '' : ` For ${unknown.join(', ')} no difference can be reckoned.`}
    </p>
    {lines.length === 0 ? null : (
      <StackingTable
        name={`What differs: ${title}`}
        of="What"
        heads={[
          ...sizes.map(({ name, times }) => ({ text: `in each ${name} (${times})`, isNumber: true })),
          ...(pooled ? [{ text: 'on the spare tray', isNumber: true }] : []),
          { text: 'for all', isNumber: true },
        ]}
        isWordy
        rows={exchangeRows(lines).map((row) => ({
          key: row.key,
          head: (
            <>
              {row.name}
              {row.facts === '' ? null : <span className={styles.facts}>{row.facts}</span>}
            </>
          ),
          cells: [
            ...row.each.map((words) => words || null),
            ...(pooled ? [row.tray || null] : []),
            <strong key="all">{row.inAll}</strong>,
          ],
        }))}
      />
    )}
    <p className={styles.files}>
      <a href={`${files}/changes.pdf`}>Picking list of the difference (PDF)</a>
      <a href={`${files}/changes.csv`}>the same as CSV</a>
    </p>
  </div>
);
