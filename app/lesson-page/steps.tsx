import { keptTurnable } from '#app/pictures/kept-shapes.ts';
import { TurnButton } from '#app/pictures/turn-button.client.tsx';
import { PICTURE_MARKS } from '#app/words/picture-words.ts';
import { formatMeasure } from '#lib/lesson/asked-measure.ts';
import type { Content } from '#lib/lesson/content.ts';
import type { FrozenKit } from '#lib/lesson/frozen-kit.ts';
import { picturesInTwo, pictureTexts } from '#lib/lesson/lesson-pictures.ts';
import { PAGE_PARTS, type PageStep, partTitle, stepAnchor } from '#lib/lesson/page-steps.ts';
import { placementFacts } from '#lib/lesson/placement-words.ts';
import { planWords, unitBegun } from '#lib/lesson/repeat-words.ts';
import type { FrozenStill, Revision } from '#lib/lesson/revision.ts';
import styles from './lesson-page.module.css';
import { MomentLink } from './moment-link.tsx';
import type { PageAddresses } from './page-addresses.ts';
import { Both } from './piece-pictures.tsx';
import { type Explainer, TermText } from './terms.tsx';

interface StepsProps {
  readonly steps: readonly PageStep[];
  readonly stills: readonly FrozenStill[];
  readonly content: Content;
  readonly kits: readonly FrozenKit[];
  readonly addresses: PageAddresses;
  /** Null where there is none to play. Its stills have its shape. */
  readonly recording: Revision['recording'];
  readonly explainer: Explainer;
}

/** `the repeat unit, step 3`. */
export const stepName = (step: Pick<PageStep, 'part' | 'number'>, all: readonly PageStep[]): string =>
  `${partTitle(step.part, all).toLowerCase()}, step ${step.number}`;

export const Steps = (props: StepsProps) => {
  const texts = pictureTexts(props.content);
  const inTwo = picturesInTwo(props.content);
  const turnable = keptTurnable(props.content);
  const firstDrawn = props.steps.find(({ id }) => texts.has(id))?.part;
  return PAGE_PARTS.map((part) => {
    const steps = props.steps.filter((step) => step.part === part);
    return steps.length === 0 ? null : (
      <section key={part} className={styles.section} aria-labelledby={`${part}-title`} data-part={part}>
        <h2 id={`${part}-title`}>{partTitle(part, props.steps)}</h2>
        {part === 'repeat' ? <RepeatNote content={props.content} kits={props.kits} /> : null}
        {part === firstDrawn ? (
          <p className={styles.note} lang="en">
            In the drawings. {PICTURE_MARKS}
          </p>
        ) : null}
        <ol className={styles.steps}>
          {steps.map((step) => (
            <Step
              key={step.id}
              step={step}
              pictureText={texts.get(step.id) ?? null}
              isInTwo={inTwo.has(step.id)}
              isTurnable={turnable.has(step.id)}
              {...props}
            />
          ))}
        </ol>
      </section>
    );
  });
};

const RepeatNote = ({ content, kits }: Pick<StepsProps, 'content' | 'kits'>) => {
  const sizes = kits.flatMap(({ size: id, repeats }) => {
    const size = content.sizes.find((candidate) => candidate.id === id);
    return size && repeats > 0
      ? [{ name: size.name.trim() || formatMeasure(size.bodyMm, 'mm'), repeats }]
      : [];
  });
  const times = sizes.map(({ name, repeats }) => `${repeats} times for ${name}`);
  const plans = sizes.map(({ name, repeats }) => `For ${name}: ${planWords(content, repeats)}`);
  return (
    <p className={styles.note} lang="en">
      {times.length === 0
        ? 'Repeat these steps.'
        : content.runs.length === 0
          ? `Work these steps ${times.join(', ')}.`
          : plans.join(' ')}{' '}
      {content.sample === null
        ? ''
        : `One repeat adds ${formatMeasure(content.sample.perRepeatMm, 'mm')}, measured ${content.sample.measured}. `}
      <a href="#kit">Your own number stands in your kit.</a>
    </p>
  );
};

const Step = ({
  step,
  steps,
  stills,
  content,
  addresses,
  recording,
  explainer,
  pictureText,
  isInTwo,
  isTurnable,
}: StepsProps & {
  readonly step: PageStep;
  readonly pictureText: string | null;
  readonly isInTwo: boolean;
  readonly isTurnable: boolean;
}) => {
  const still = stills.find((candidate) => candidate.of === step.id);
  const facts = step.placement ? placementFacts(content, step.placement) : [];
  const anchor = stepAnchor(step);
  const begun = unitBegun(content, step.placement);
  return (
    <li id={anchor} className={still || pictureText ? styles.pictured : undefined}>
      {still || pictureText ? (
        <div>
          {still ? (
            // biome-ignore lint/performance/noImgElement: stills are stored at the size at which they are shown
            <img
              src={addresses.still(still.of, still.atMs)}
              width={recording?.width ?? undefined}
              height={recording?.height ?? undefined}
              alt={still.text}
              loading="lazy"
              decoding="async"
            />
          ) : null}
          {pictureText ? (
            <>
              <Both addresses={addresses} of={step.id} query="" alt={pictureText} isInTwo={isInTwo} />
              {isTurnable ? (
                <TurnButton address={addresses.picture(step.id, 'json')} what={stepName(step, steps)} />
              ) : null}
            </>
          ) : null}
        </div>
      ) : null}
      <div>
        {begun === '' ? null : (
          <p className={styles.unit} lang="en">
            {begun}
          </p>
        )}
        <p className={styles.sentence}>
          <TermText text={step.sentence} explainer={explainer} />
        </p>
        {facts.length === 0 ? null : (
          <p className={styles.stepFacts} lang="en">
            {capital(facts.join('; '))}.
          </p>
        )}
        {recording && step.atMs !== null ? (
          <p className={styles.said} lang="en">
            <MomentLink
              page={addresses.page}
              atMs={step.atMs}
              label="Said here:"
              from={{ id: anchor, name: stepName(step, steps) }}
            />
          </p>
        ) : null}
      </div>
    </li>
  );
};

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
