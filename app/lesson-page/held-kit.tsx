/** What the holder of a kit reads: whether it is still right, what to add or exchange, and what was corrected since. */
import { StackingTable } from '#app/kit/stacking-table.tsx';
import { dayOf } from '#app/words/days.ts';
import { kitFaultWords } from '#app/words/kit-words.ts';
import { measureFaultWords } from '#app/words/measure-fault.ts';
import { differenceOf } from '#lib/kit/kit-difference.ts';
import { type KitList, kitFor } from '#lib/kit/kit-list.ts';
import { type AskedMeasure, bodyMmOf, formatMeasure, sizeWords } from '#lib/lesson/asked-measure.ts';
import { correctionsNewestFirst } from '#lib/lesson/corrections.ts';
import { quantityWord } from '#lib/lesson/making-words.ts';
import type { Revision } from '#lib/lesson/revision.ts';
import type { Result } from '#lib/result.ts';
import styles from './held-kit.module.css';
import { KitDifferenceList } from './kit-difference.tsx';
import { MomentLink } from './moment-link.tsx';
import { kitAddress, revisionPathOf } from './page-addresses.ts';

interface HeldKitProps {
  /** The revision that the kit was packed by, and the latest one. */
  readonly held: Revision;
  readonly latest: Revision;
  /** Path of the lesson page. */
  readonly lesson: string;
  /** Null where the address names no size. */
  readonly asked: AskedMeasure | null;
}

export const HeldKit = ({ held, latest, lesson, asked }: HeldKitProps) => {
  const { content } = latest;
  const body = asked && bodyMmOf(asked, held.content.kitRules);
  const of = { held, latest, lesson };
  return (
    <main className={`page ${styles.page}`}>
      <article lang={content.language}>
        <p className={styles.lesson}>
          <a href={lesson}>{content.title}</a>
        </p>
        <div lang="en">
          <h1>Your kit</h1>
          {body === null ? (
            <Sizes {...of} />
          ) : body.ok ? (
            <Told {...of} bodyMm={body.value} />
          ) : (
            <>
              <p className="fault">{measureFaultWords(body.fault)}</p>
              <Sizes {...of} />
            </>
          )}
        </div>
        <Corrections held={held.number} latest={latest} lesson={lesson} />
        <p className={styles.packed} lang="en">
          Packed by <a href={revisionPathOf(lesson, held.number)}>revision {held.number}</a> of the lesson,
          which was published on {dayOf(new Date(held.publishedAt))} by {held.workshop.name}.
        </p>
      </article>
    </main>
  );
};

type Of = Pick<HeldKitProps, 'held' | 'latest' | 'lesson'>;

const Sizes = ({ held, lesson }: Of) => (
  <>
    <p>Which size is your kit? It stands on its label.</p>
    <ul className={styles.sizes}>
      {held.content.sizes.map((size) => (
        <li key={size.id}>
          <a href={kitAddress(lesson, held.number, size.bodyMm)}>{sizeWords(size)}</a>
        </li>
      ))}
    </ul>
  </>
);

const Told = ({ held, latest, lesson, bodyMm }: Of & { readonly bodyMm: number }) => {
  const before = kitFor(held.content, bodyMm);
  const now = kitFor(latest.content, bodyMm);
  const size = held.content.sizes.find((one) => one.bodyMm === bodyMm);
  const measure = `${formatMeasure(bodyMm, 'mm')} (${formatMeasure(bodyMm, 'in')})`;
  return (
    <>
      <p>
        Revision {held.number}, {size?.name.trim() ? `${size.name.trim()}, ` : ''}
        {measure} on the body.
      </p>
      <Verdict held={held} latest={latest} before={before} now={now} />
      {now.ok ? (
        <Contents before={before.ok ? before.value : null} now={now.value} held={held.number} />
      ) : null}
      <p>
        <a className="button" href={`${lesson}?measure=${bodyMm}&unit=mm&of=wrist#kit`}>
          Go to the lesson with this kit
        </a>
      </p>
    </>
  );
};

type Reckoned = ReturnType<typeof kitFor>;

const Verdict = ({
  held,
  latest,
  before,
  now,
}: Pick<Of, 'held' | 'latest'> & { readonly before: Reckoned; readonly now: Reckoned }) => {
  if (!before.ok || !now.ok) {
    const fault = failedOf(before) ?? failedOf(now);
    return (
      <p className="notice caution">
        What differs cannot be told for this size. {fault} Ask {latest.workshop.name}, and name revision{' '}
        {held.number}.
      </p>
    );
  }
  if (held.number === latest.number)
    return (
      <p className="notice">
        <strong>Your kit is up to date.</strong> Nothing newer than revision {held.number} is published.
      </p>
    );
  const difference = differenceOf(before.value, now.value);
  if (difference.same)
    return (
      <p className="notice">
        <strong>Your kit is complete.</strong> Revision {latest.number} is the latest; it changes nothing in
        this size.
      </p>
    );
  return (
    <section className="notice caution" aria-labelledby="differs">
      <h2 id="differs">What differs now</h2>
      <p>
        Your kit was packed by revision {held.number}. By revision {latest.number}, the latest, it should hold
        something else:
      </p>
      <KitDifferenceList difference={difference} />
    </section>
  );
};

const failedOf = (kit: Result<unknown, Parameters<typeof kitFaultWords>[0]>): string | null =>
  kit.ok ? null : kitFaultWords(kit.fault).text;

/** What should lie in the kit by now, beside what was packed. */
const Contents = ({
  before,
  now,
  held,
}: {
  readonly before: KitList | null;
  readonly now: KitList;
  readonly held: number;
}) => {
  const ring = (kit: KitList | null, id: string) => kit?.rings.find((line) => line.ringKind.id === id);
  const supply = (kit: KitList | null, id: string) => kit?.materials.find((line) => line.material.id === id);
  const others = new Set(
    (before ? differenceOf(before, now).rings : []).flatMap(({ how, ringKind }) =>
      how === 'other' ? [ringKind.id] : [],
    ),
  );
  const rows = [
    ...now.rings.map((line) => ({
      id: line.ringKind.id,
      name: line.ringKind.name,
      packed: String(ring(before, line.ringKind.id)?.issued ?? 0),
      now: others.has(line.ringKind.id) ? `${line.issued}, other ones` : String(line.issued),
      prepare: [
        line.opened === 0 ? '' : `open ${line.opened}`,
        line.closed === 0 ? '' : `close ${line.closed}`,
        line.spare === 0 ? '' : `${line.spare} spare`,
      ]
        .filter((words) => words !== '')
        .join(', '),
    })),
    ...now.materials.map((line) => {
      const was = supply(before, line.material.id);
      return {
        id: line.material.id,
        name: line.material.name,
        packed: was ? quantityWord(was.needMilli, was.material.unit) : '0',
        now: quantityWord(line.needMilli, line.material.unit),
        prepare: '',
      };
    }),
  ];
  return (
    <StackingTable
      name="What should lie in the kit"
      caption="What should lie in it"
      of="What"
      heads={[
        { text: `Packed, revision ${held}`, isNumber: true },
        { text: 'Now', isNumber: true },
        { text: 'To prepare', isNumber: false },
      ]}
      isWordy
      className={styles.contents}
      rows={rows.map((row) => ({
        key: row.id,
        head: row.name,
        cells: [
          row.packed,
          row.packed === row.now ? row.now : <strong key="now">{row.now}</strong>,
          row.prepare || null,
        ],
      }))}
    />
  );
};

/** Corrections that came after the kit was packed. */
const Corrections = ({
  held,
  latest,
  lesson,
}: {
  readonly held: number;
  readonly latest: Revision;
  readonly lesson: string;
}) => {
  const since = correctionsNewestFirst(latest.content.corrections).filter(
    ({ revision }) => revision !== null && revision > held,
  );
  if (since.length === 0) return null;
  return (
    <section aria-labelledby="since">
      <h2 id="since" lang="en">
        Corrected since your kit was packed
      </h2>
      <ul>
        {since.map((correction) => (
          <li key={correction.id}>
            <span className="unseen">Wrong: </span>
            <s>{correction.wrong}</s> <span className="unseen">Right: </span>
            <strong>{correction.right}</strong>
            {correction.startMs === null || latest.recording === null ? null : (
              <span lang="en">
                {' '}
                (<MomentLink page={lesson} atMs={correction.startMs} label="see" />)
              </span>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
};
