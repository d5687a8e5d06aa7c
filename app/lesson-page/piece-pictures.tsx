import { keptShape } from '#app/pictures/kept-shapes.ts';
import { TurnButton } from '#app/pictures/turn-button.client.tsx';
import { DERIVED_PICTURE, notDrawnWords, TOO_MANY_RINGS } from '#app/words/picture-words.ts';
import { sizeWords } from '#lib/lesson/asked-measure.ts';
import type { Content } from '#lib/lesson/content.ts';
import { hasTooManyRings } from '#lib/lesson/fits-a-picture.ts';
import type { FrozenKit } from '#lib/lesson/frozen-kit.ts';
import { mayBePictured, weaveOfLesson } from '#lib/lesson/lesson-pictures.ts';
import { sectionsOf } from '#lib/lesson/sections.ts';
import { type NotDrawn, partsNotDrawn, wholeText } from '#lib/lesson/whole-picture.ts';
import { isOwn } from '#lib/weave/space/own-id.ts';
import styles from './lesson-page.module.css';
import type { PageAddresses } from './page-addresses.ts';

interface PiecePicturesProps {
  readonly content: Content;
  readonly kits: readonly FrozenKit[];
  readonly addresses: PageAddresses;
}

/** The piece from near, to be turned where there is script, and its whole length in its colours. */
export const PiecePictures = ({ content, kits, addresses }: PiecePicturesProps) => {
  const kit = kits.find(({ repeats }) => repeats > 0);
  const repeats = Math.min(1000, kit?.repeats ?? 24);
  const parts = sectionsOf(content, repeats).length;
  const notDrawn = partsNotDrawn(content, repeats, keptShape);
  const isSeen = mayBePictured(content);
  const isDerived = isOwn(weaveOfLesson(content) ?? '');
  if (!isSeen && (parts < 2 || notDrawn.length === parts)) return null;
  return (
    <section className={styles.section} aria-labelledby="piece-title" lang="en">
      <h2 id="piece-title">The weave</h2>
      {isSeen ? (
        <figure className={styles.piece}>
          <Both
            addresses={addresses}
            of="piece"
            query=""
            alt={content.repeat.length === 0 ? 'The piece.' : 'Some repeats of the weave, pulled taut.'}
          />
          {parts > 1 || isDerived ? (
            <figcaption className={styles.stepFacts}>
              {parts > 1 ? 'The unit that comes first. ' : ''}
              {isDerived ? DERIVED_PICTURE : ''}
            </figcaption>
          ) : null}
          <TurnButton address={addresses.picture('piece', 'json')} what="the piece" />{' '}
          <a href={addresses.picture('piece', 'png')} download="weave.png">
            The weave to print (PNG)
          </a>
        </figure>
      ) : null}
      {hasTooManyRings(content, repeats) ? (
        <p className={styles.stepFacts}>{TOO_MANY_RINGS}</p>
      ) : notDrawn.length < parts ? (
        <WholeLength
          {...{ content, addresses, repeats, notDrawn, size: sizeOf(content, kit), isInParts: parts > 1 }}
        />
      ) : (
        <Reasons {...{ notDrawn, content }} />
      )}
    </section>
  );
};

const sizeOf = (content: Content, kit: FrozenKit | undefined) =>
  content.sizes.find(({ id }) => id === kit?.size);

interface WholeLengthProps extends Pick<PiecePicturesProps, 'content' | 'addresses'> {
  readonly repeats: number;
  readonly notDrawn: readonly NotDrawn[];
  readonly size: Content['sizes'][number] | undefined;
  readonly isInParts: boolean;
}

const WholeLength = ({ content, addresses, repeats, notDrawn, size, isInParts }: WholeLengthProps) => {
  const text = wholeText(content, repeats, new Set(notDrawn.map(({ label }) => label)));
  return (
    <figure className={styles.piece}>
      <Both addresses={addresses} of="whole" query={`?repeats=${repeats}`} alt={text} isInParts={isInParts} />
      <figcaption className={styles.stepFacts}>
        {size ? `The whole length for ${sizeWords(size)}, ` : 'The whole length, '}
        read line by line. {text}{' '}
        <a href={`${addresses.picture('whole', 'png')}?repeats=${repeats}`} download="whole-length.png">
          The whole length to print (PNG)
        </a>
        <Reasons {...{ notDrawn, content }} />
      </figcaption>
    </figure>
  );
};

const Reasons = ({ notDrawn, content }: Pick<WholeLengthProps, 'notDrawn' | 'content'>) =>
  notDrawnWords(notDrawn, content.ringKinds).map((words) => (
    <p key={words} className={styles.stepFacts}>
      {words}
    </p>
  ));

interface BothProps {
  readonly addresses: PageAddresses;
  readonly of: string;
  readonly query: string;
  readonly alt: string;
  /** Two moments, one above the other. */
  readonly isInTwo?: boolean;
  /** Part under part, with names in it. */
  readonly isInParts?: boolean;
}

/** A drawn picture for both hands: the one that is not shown is not fetched either. */
export const Both = ({ addresses, of, query, alt, isInTwo, isInParts }: BothProps) => {
  const address = `${addresses.picture(of)}${query}`;
  const mirrored = `${address}${query === '' ? '?' : '&'}hand=mirrored`;
  return [['shown', address] as const, ['mirrored', mirrored] as const].map(([hand, src]) => (
    // biome-ignore lint/performance/noImgElement: drawn as lines, sharp at any size
    <img
      key={hand}
      className={styles.drawn}
      data-hand={hand}
      data-in-two={isInTwo || undefined}
      data-in-parts={isInParts || undefined}
      src={src}
      alt={alt}
      lang="en"
      loading="lazy"
      decoding="async"
    />
  ));
};
