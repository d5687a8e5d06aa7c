/**
 * A lesson as pupils read it, made from one revision and nothing else. All of
 * it stands in the page without script; the player and the kit add to it.
 */
import { chapterSpans } from '#lib/chapters/chapter-rules.ts';
import { type AskedMeasure, sizeWords } from '#lib/lesson/asked-measure.ts';
import { cautionWords } from '#lib/lesson/cautions.ts';
import type { Content } from '#lib/lesson/content.ts';
import type { MadeFile } from '#lib/lesson/made-files.ts';
import { ringFacts, timeNeeded, weaveWord } from '#lib/lesson/making-words.ts';
import { pageSteps, stepAnchor } from '#lib/lesson/page-steps.ts';
import type { Revision } from '#lib/lesson/revision.ts';
import type { Fragment } from '#lib/time/media-fragment.ts';
import { CorrectionList } from './correction-list.tsx';
import { type Explained, KitChooser } from './kit-chooser.client.tsx';
import styles from './lesson-page.module.css';
import { MaterialLists } from './material-lists.tsx';
import { correctionsFeedPath, type PageAddresses, type Reported, reportPath } from './page-addresses.ts';
import { PageFoot, type PageHistory } from './page-foot.tsx';
import { PiecePictures } from './piece-pictures.tsx';
import { Player } from './player.client.tsx';
import { ReportForm } from './report-form.tsx';
import { Steps, stepName } from './steps.tsx';
import { type Explainer, explainerOf, Terms, TermText } from './terms.tsx';
import { Ticks } from './ticks.client.tsx';
import { Transcript } from './transcript.tsx';

interface LessonPageProps {
  readonly revision: Revision;
  readonly madeFiles: readonly MadeFile[];
  /** Address of the recording's poster; null where it has none. */
  readonly poster: string | null;
  readonly addresses: PageAddresses;
  /** Number of the latest revision; null in a preview. */
  readonly latest: number | null;
  /** Who sees a preview, in words; null where something around it says that it is one. */
  readonly previewFor?: string | null;
  readonly asked: AskedMeasure | null;
  readonly held: { readonly number: number; readonly content: Content } | null;
  /** Numbers of the revisions before the one that is shown. */
  readonly earlier: readonly number[];
  readonly history: PageHistory;
  /** What an address asks to be played; null for all. */
  readonly playAt: Fragment | null;
  /** What became of a report that was just sent; none where none was. */
  readonly reported?: Reported | null;
}

export const LessonPage = (props: LessonPageProps) => {
  const { revision, addresses, latest, held } = props;
  const { content, recording } = revision;
  const steps = pageSteps(content);
  const stops = steps.flatMap((step) =>
    step.atMs === null
      ? []
      : [{ id: stepAnchor(step), atMs: step.atMs, name: stepName(step, steps), sentence: step.sentence }],
  );
  const language = content.language;
  const explainer = explainerOf(revision.terms);
  return (
    <main className={`page ${styles.page}`}>
      <article lang={language}>
        <Standing
          revision={revision}
          latest={latest}
          addresses={addresses}
          previewFor={props.previewFor ?? null}
        />
        <header className={styles.head}>
          <p className={styles.workshop}>
            <a href={addresses.shelf}>{revision.workshop.name}</a>
          </p>
          <h1>{content.title}</h1>
          {content.summary.trim() === '' ? null : (
            <div className={styles.summary}>
              {content.summary.split(/\n{2,}/).map((text) => (
                <p key={text}>
                  <TermText text={text} explainer={explainer} />
                </p>
              ))}
            </div>
          )}
          <Facts content={content} explainer={explainer} />
        </header>
        <div className={recording ? styles.spread : undefined}>
          {recording ? (
            <div className={styles.beside}>
              <Player
                page={addresses.page}
                recording={addresses.recording}
                poster={props.poster}
                captions={revision.cues.length === 0 ? null : addresses.textFile('captions.vtt')}
                chaptersFile={addresses.textFile('chapters.vtt')}
                title={content.title}
                language={language}
                hasVideo={recording.hasVideo}
                width={recording.width}
                height={recording.height}
                durationMs={recording.durationMs}
                chapters={chapterSpans(content.chapters, recording.durationMs).map((chapter) => ({
                  ...chapter,
                  endMs: chapter.endMs ?? recording.durationMs,
                }))}
                stops={stops}
                corrections={content.corrections}
                playAt={props.playAt}
                placeKey={`benchleaf place ${addresses.latest}`}
              />
            </div>
          ) : null}
          <div className={styles.text}>
            <section id="kit" className={styles.section} aria-labelledby="kit-title">
              <h2 id="kit-title">What you need</h2>
              <KitChooser
                page={addresses.page}
                making={makingOf(content)}
                sizes={content.sizes}
                asked={props.asked}
                files={addresses.kitFiles}
                sheet={addresses.sheet}
                held={held && { number: held.number, making: makingOf(held.content) }}
                earlier={props.earlier}
                explained={explainedRings(content, explainer)}
              />
              <MaterialLists content={content} explainer={explainer} />
            </section>
            <Cautions content={content} explainer={explainer} />
            <PiecePictures content={content} kits={revision.kits} addresses={addresses} />
            <Steps
              steps={steps}
              stills={revision.stills}
              content={content}
              kits={revision.kits}
              addresses={addresses}
              recording={recording}
              explainer={explainer}
            />
            <Terms terms={revision.terms} explainer={explainer} />
            <Transcript
              cues={revision.cues}
              chapters={content.chapters}
              corrections={content.corrections}
              page={recording ? addresses.page : null}
              explainer={explainer}
            />
            <CorrectionList
              corrections={content.corrections}
              page={recording ? addresses.page : null}
              feed={latest === null ? null : correctionsFeedPath(addresses.latest)}
            />
            {latest === null ? null : (
              <ReportForm
                to={reportPath(addresses.latest)}
                revision={revision.number}
                reported={props.reported ?? null}
                hasRecording={recording !== null}
              />
            )}
            <PageFoot
              revision={revision}
              madeFiles={props.madeFiles}
              addresses={addresses}
              history={props.history}
            />
          </div>
        </div>
        <Ticks placeKey={`benchleaf ticks ${addresses.latest}`} />
      </article>
    </main>
  );
};

/** Ring kinds with a word of the trade, each word at the first of them: the table is drawn in the browser too. */
function explainedRings({ ringKinds }: Content, explainer: Explainer): Readonly<Record<string, Explained>> {
  const places = explainer.placesInAll(ringKinds.map((kind) => `${kind.name}, ${ringFacts(kind)}`));
  return Object.fromEntries(
    ringKinds.flatMap(({ id }, at) => {
      const term = places[at]?.[0]?.term;
      return term === undefined ? [] : [[id, { term, box: explainer.boxOf(term) }]];
    }),
  );
}

/** What the kit is reckoned from, and no more: it travels to the browser. */
const makingOf = ({
  ringKinds,
  start,
  repeat,
  finishing,
  runs,
  endsAfter,
  sample,
  kitRules,
  materials,
  currency,
}: Content) => ({
  ringKinds,
  start: start.map(bare),
  repeat: repeat.map(bare),
  finishing: finishing.map(bare),
  runs,
  endsAfter,
  sample,
  kitRules,
  materials,
  currency,
});

const bare = (placement: Content['start'][number]) => ({ ...placement, sentence: '', pictureText: '' });

const Standing = ({
  revision,
  latest,
  addresses,
  previewFor,
}: Pick<LessonPageProps, 'revision' | 'latest' | 'addresses' | 'previewFor'>) => {
  if (latest === null) {
    return previewFor == null ? null : (
      <p className="notice" lang="en">
        Preview of revision {revision.number}, seen by {previewFor} only: not published yet.
      </p>
    );
  }
  if (revision.number === latest) return null;
  return (
    <p className="notice caution" lang="en">
      <strong>This is revision {revision.number}; it is superseded.</strong>{' '}
      <a href={addresses.latest}>Read revision {latest}, the latest</a>. If you hold a kit of revision{' '}
      {revision.number}, see <a href={`${addresses.latest}?held=${revision.number}#kit`}>what differs now</a>.
    </p>
  );
};

const OTHER_HAND = { left: 'right', right: 'left' } as const;

const Facts = ({ content, explainer }: { readonly content: Content; readonly explainer: Explainer }) => {
  const weaves = [content.weave, content.otherNames].filter((name) => name.trim() !== '').join(', also ');
  return (
    <dl className={styles.facts} lang="en">
      <Fact name={weaveWord(content)}>
        {weaves === '' ? '' : <TermText text={weaves} explainer={explainer} />}
      </Fact>
      <Fact name="Difficulty">{content.difficulty}</Fact>
      <Fact name="Time">{timeNeeded(content).join(', ')}</Fact>
      <Fact name="Leaning">
        {content.leaning === 'none' ? (
          ''
        ) : (
          <>
            <span data-hand="shown">{content.leaning}, as the recording shows it</span>
            <span data-hand="mirrored">
              {OTHER_HAND[content.leaning]}, in the mirrored picture; {content.leaning} in the recording
            </span>
          </>
        )}
      </Fact>
      <Fact name="Sizes">{content.sizes.map(sizeWords).join(', ')}</Fact>
    </dl>
  );
};

const Fact = ({ name, children }: { readonly name: string; readonly children: React.ReactNode }) =>
  children === '' ? null : (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );

const Cautions = ({ content, explainer }: { readonly content: Content; readonly explainer: Explainer }) => {
  if (content.cautions.length === 0) return null;
  const cautions = content.cautions.map((caution) => ({ id: caution.id, ...cautionWords(caution) }));
  const places = explainer.placesInAll(cautions.map(({ text }) => text));
  return (
    <section className={styles.section} aria-labelledby="cautions-title">
      <h2 id="cautions-title">Take care</h2>
      <ul className={styles.cautions}>
        {cautions.map(({ id, title, text }, at) => (
          <li key={id}>
            {title === '' ? null : <strong>{title}. </strong>}
            <TermText text={text} explainer={explainer} places={places[at]} />
          </li>
        ))}
      </ul>
    </section>
  );
};
