import { TurnButton } from '#app/pictures/turn-button.client.tsx';
import { noWholeLength } from '#app/words/picture-words.ts';
import { sizeWords } from '#lib/lesson/asked-measure.ts';
import type { Content } from '#lib/lesson/content.ts';
import { whyNoWholeLength } from '#lib/lesson/fits-a-picture.ts';
import type { FrozenKit } from '#lib/lesson/frozen-kit.ts';
import { mayBePictured, wholeText } from '#lib/lesson/lesson-pictures.ts';
import styles from './lesson-page.module.css';
import type { PageAddresses } from './page-addresses.ts';

interface PiecePicturesProps {
  readonly content: Content;
  readonly kits: readonly FrozenKit[];
  readonly addresses: PageAddresses;
}

/** The piece from near, to be turned where there is script, and its whole length in its colours. */
export const PiecePictures = ({ content, kits, addresses }: PiecePicturesProps) => {
  if (!mayBePictured(content)) return null;
  const kit = kits.find(({ repeats }) => repeats > 0);
  const size = content.sizes.find(({ id }) => id === kit?.size);
  const repeats = Math.min(1000, kit?.repeats ?? 24);
  const text = wholeText(content, repeats);
  const why = whyNoWholeLength(content, repeats);
  return (
    <section className={styles.section} aria-labelledby="piece-title" lang="en">
      <h2 id="piece-title">The weave</h2>
      <figure className={styles.piece}>
        <Both
          addresses={addresses}
          of="piece"
          query=""
          alt={content.repeat.length === 0 ? 'The piece.' : 'Some repeats of the weave, pulled taut.'}
        />
        <TurnButton address={addresses.picture('piece', 'json')} what="the piece" />{' '}
        <a href={addresses.picture('piece', 'png')} download="weave.png">
          The weave to print (PNG)
        </a>
      </figure>
      {why === null ? (
        <figure className={styles.piece}>
          <Both addresses={addresses} of="whole" query={`?repeats=${repeats}`} alt={text} />
          <figcaption className={styles.stepFacts}>
            {size ? `The whole length for ${sizeWords(size)}, ` : 'The whole length, '}
            read line by line. {text}{' '}
            <a href={`${addresses.picture('whole', 'png')}?repeats=${repeats}`} download="whole-length.png">
              The whole length to print (PNG)
            </a>
          </figcaption>
        </figure>
      ) : (
        <p className={styles.stepFacts}>{noWholeLength(why)}</p>
      )}
    </section>
  );
};

interface BothProps {
  readonly addresses: PageAddresses;
  readonly of: string;
  readonly query: string;
  readonly alt: string;
  /** Two moments, one above the other. */
  readonly isInTwo?: boolean;
}

/** A drawn picture for both hands: the one that is not shown is not fetched either. */
export const Both = ({ addresses, of, query, alt, isInTwo }: BothProps) => {
  const address = `${addresses.picture(of)}${query}`;
  const mirrored = `${address}${query === '' ? '?' : '&'}hand=mirrored`;
  return [['shown', address] as const, ['mirrored', mirrored] as const].map(([hand, src]) => (
    // biome-ignore lint/performance/noImgElement: drawn as lines, sharp at any size
    <img
      key={hand}
      className={styles.drawn}
      data-hand={hand}
      data-in-two={isInTwo || undefined}
      src={src}
      alt={alt}
      lang="en"
      loading="lazy"
      decoding="async"
    />
  ));
};
