/** Words for what a piece's shape in space foretells, and for why there is none. */
import { sizeWords } from '#lib/lesson/asked-measure.ts';
import type { Content } from '#lib/lesson/content.ts';
import type { Foretold } from '#lib/lesson/foretell.ts';
import { countsForetold, sampleAgainst } from '#lib/lesson/foretold-counts.ts';
import type { UsualBand } from '#lib/rings/fit.ts';
import { isOwn } from '#lib/weave/space/own-id.ts';
import type { PieceShapeFault } from '#lib/weave/space/piece-in-space.ts';

const ratio = (value: number): string => value.toFixed(2);
const mm = (value: number): string => `${value.toFixed(value < 10 ? 2 : 1)}\u00a0mm`;

/** @param nameOf what a ring kind is called */
export function shapeFaultWords(fault: PieceShapeFault, nameOf: (ringKind: string) => string): string {
  switch (fault.code) {
    case 'rings-not-named':
      return 'Name the ring that every pass goes through, and pictures of the piece are drawn here.';
    case 'repeats-not-alike':
      return 'No shape of this sequence is known: its repeat goes through rings of the start or of a repeat far back, so that no repeat is like the one before. Its steps are shown as flat schemes.';
    case 'no-known-shape':
      return `This sequence is none of the weaves that the program knows${whyNoneWords(fault.why)}`;
    case 'unknown-weave':
      return 'The shape of this sequence in space is not known. Its steps are shown as flat schemes.';
    case 'size-unknown':
      return `The size of ${nameOf(fault.ringKind) || 'a ring kind'} is missing.`;
    case 'too-tight':
      return fault.isOwn
        ? `These rings are tighter than any that a shape was found for: it was found from an aspect ratio of ${ratio(fault.needs)} on, and these have ${ratio(fault.has)}. It may exist all the same; make a sample.`
        : `These rings are too tight for the weave: rigid rings need an aspect ratio of at least ${ratio(fault.needs)}, and these have ${ratio(fault.has)}. Real rings can be sprung through a fit that is tighter by about 0.2; make a sample.`;
    case 'wires-too-thick':
      return fault.isOwn
        ? 'No shape was found for these wires. With thinner wire or wider rings one may be found; make a sample.'
        : `With these wires the weave cannot lie in its usual way: on the same inner diameters they would have to be at least ${Math.max(1, Math.ceil((1 - fault.wiresBy) * 100))}\u00a0% thinner. Take thinner wire or wider rings, or let the sizes take turns otherwise.`;
    case 'none-found':
      return 'No shape was found for these rings. It may exist all the same; make a sample.';
  }
}

const SCHEMES = 'Its steps are shown as flat schemes.';

/** Goes on from “This sequence is none of the weaves that the program knows”. */
function whyNoneWords(why: Extract<PieceShapeFault, { code: 'no-known-shape' }>['why']): string {
  switch (why) {
    case 'waiting':
      return `. Its shape in space is being derived from who passes through whom and from which side. That takes up to some minutes, and goes on if you leave. Until then its steps are shown as flat schemes.`;
    case 'none':
      return `, and no shape in space was found for its links and sides. Look once more at who passes through whom, and from which side; it may exist all the same. ${SCHEMES}`;
    case 'folded':
      return `, and it folds rings back. Links and sides do not show a fold, so no shape can be derived from them. ${SCHEMES}`;
    case 'sides-untold':
      return `. Tell for every pass and every carried ring from which side it is entered, and its shape is derived. ${SCHEMES}`;
    case 'too-large':
      return `, and with more than 12 rings in a repeat it is too large to derive a shape. ${SCHEMES}`;
    case 'unlinked':
      return `, and it does not hold together: some of its rings hold none of the others. ${SCHEMES}`;
    case 'not-sought':
      return `. ${SCHEMES}`;
  }
}

/** Beyond this many times the smallest aspect ratio a weave loses its shape: our own measure, for weaves without a usual band. */
const FLOPS_FROM = 1.6;

/** What one repeat adds, as a range with its meaning; empty for a closed group of rings. */
export const foretoldWords = ({ weave, oneRepeat }: Foretold): string => {
  const from = isOwn(weave) ? DERIVED : '';
  if (oneRepeat === null) return from;
  return `${from} Computed from the shape, with rigid round rings: one repeat adds ${mm(oneRepeat.tautMm)} pulled taut, the most that was found, and ${mm(oneRepeat.pushedMm)} pushed together. At rest it lies between.`.trim();
};

/** Said beside every shape that was derived. */
export const DERIVED =
  'None of the weaves that the program knows: this shape is derived from who passes through whom and from which side, and the same rings may lie otherwise too.';

/** Repeats and rings of each size while no sample is there; what the sample says to the shape once it is. */
export function countsWords(content: Content, { oneRepeat }: Foretold): string {
  if (oneRepeat === null) return '';
  const said = sampleAgainst(content, oneRepeat);
  const sampled = content.sample ? mm(content.sample.perRepeatMm) : '';
  switch (said) {
    case 'within':
      return `Your sample adds ${sampled} a repeat, which lies within; all counts come from it.`;
    case 'longer than taut':
      return `Your sample adds ${sampled} a repeat, more than these rings reach when pulled taut: measure it again, or compare the sizes of the rings. All counts come from the sample.`;
    case 'shorter than pushed':
      return `Your sample adds ${sampled} a repeat, less than these rings take when pushed together: measure it again, or compare the sizes of the rings. All counts come from the sample.`;
    case null: {
      const sizes = countsForetold(content, oneRepeat).map(
        ({ size, repeats, rings }) => `${sizeWords(size)} ${range(repeats)} repeats, ${range(rings)} rings`,
      );
      return sizes.length === 0
        ? ''
        : `Until a measured sample decides, ends and clasp not reckoned in: ${sizes.join('; ')}.`;
    }
  }
}

const range = ([from, to]: readonly [number, number]): string =>
  from === to ? `${from}` : `${from} to ${to}`;

/** How the rings fit the weave, each verdict with its numbers; empty where sizes are mixed. */
export function fitWords({ weave, fit, oneRepeat }: Foretold, band: UsualBand | null): string {
  if (!fit) return '';
  const numbers = `aspect ratio ${ratio(fit.has)}, and ${isOwn(weave) ? 'a shape was found' : 'the weave exists'} from ${ratio(fit.needs)} on`;
  const gives = oneRepeat
    ? `; pushed together it gives ${Math.round(100 * (1 - oneRepeat.pushedMm / oneRepeat.tautMm))}\u00a0% of its length`
    : '';
  // A closed group of rings is no looser for lying open as a flower.
  if (band ? fit.has > band.to : oneRepeat !== null && fit.has > FLOPS_FROM * fit.needs)
    return `These rings will flop: ${numbers}${gives}. ${band ? `Usual is ${band.from} to ${band.to} (common practice).` : ''}`.trim();
  if (fit.has < 1.03 * fit.needs)
    return `These rings are tight: ${numbers}. Rings whose true inner diameter is a little smaller will not close.`;
  return `The rings fit: ${numbers}${gives}.`;
}
