import { claspWords, repeatsWithError } from '#app/words/kit-words.ts';
import type { KitList } from '#lib/kit/kit-list.ts';
import { formatMeasure } from '#lib/lesson/asked-measure.ts';

interface KitHeadProps {
  readonly kit: KitList;
  readonly className: string | undefined;
}

/** The kit in one line: how many repeats, and how long the piece comes out. */
export const KitHead = ({ kit, className }: KitHeadProps) => {
  const { length, spareRepeats } = kit;
  if (!length)
    return <p className={className}>Nothing in this piece repeats: the kit is the same for everyone.</p>;
  const { finishedMm, leftoverMm, certainty } = length;
  const over = Math.abs(leftoverMm);
  const off = `${formatMeasure(over, 'mm')} (${formatMeasure(over, 'in')})`;
  return (
    <p className={className}>
      <strong>{repeatsWithError(length)}</strong> of the unit; finished{' '}
      <strong>
        {formatMeasure(finishedMm, 'mm')} ({formatMeasure(finishedMm, 'in')})
      </strong>
      {claspWords(length)}
      {leftoverMm === 0 ? '' : `, ${off} ${leftoverMm > 0 ? 'longer' : 'shorter'} than asked`}.
      {certainty && certainty.mostRepeats > length.repeats && spareRepeats !== null
        ? ` The spare rings would do for ${spareRepeats} ${spareRepeats === 1 ? 'repeat' : 'repeats'} more.`
        : ''}
    </p>
  );
};
