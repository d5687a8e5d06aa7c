/** Words for kits: their faults, and the working behind every number. */
import type { KitFault } from '#lib/kit/kit-list.ts';
import type { LengthWorking, TargetWorking } from '#lib/kit/length.ts';
import type { Rounding, SpareRule } from '#lib/kit/making.ts';
import type { MaterialLine } from '#lib/kit/material-line.ts';
import { formatDecimal } from '#lib/kit/parse-decimal.ts';
import type { Certainty } from '#lib/kit/sample-fit.ts';
import type { SpareWorking } from '#lib/kit/spare.ts';
import { quantityWord } from '#lib/lesson/making-words.ts';
import type { CountTerm, Prepared } from '#lib/weave/sequence.ts';
import { figure } from './ring-words.ts';

/** Where a fault of a kit is mended: a stage of the bench and a place on it. */
export interface KitFaultWords {
  readonly text: string;
  readonly mend: { readonly screen: 'making' | 'kit'; readonly place: string; readonly label: string } | null;
}

const mm = (n: number): string => `${figure(n, 2)} mm`;

export function kitFaultWords(fault: KitFault): KitFaultWords {
  switch (fault.code) {
    case 'nothing-to-count':
      return {
        text: 'Neither rings nor materials are described yet, so there is nothing to count.',
        mend: { screen: 'making', place: 'sequence', label: 'Describe the ring sequence' },
      };
    case 'no-sample':
      return {
        text: 'How long one repeat comes out is not known yet: a measured sample is needed to tell how many repeats a length takes.',
        mend: { screen: 'making', place: 'sample', label: 'Enter the measured sample' },
      };
    case 'ring-kind-missing':
      return {
        text: 'The sequence uses a ring kind that was taken away. Choose another one for it.',
        mend: { screen: 'making', place: 'sequence', label: 'Go to the ring sequence' },
      };
    case 'not-a-length':
      return { text: `A measure above 0 and up to ${mm(fault.mostMm)} is needed.`, mend: null };
    case 'too-short':
      return {
        text: `${mm(fault.targetMm)} is too short for this piece: its ends take ${mm(fault.endsMm)}, the clasp ${mm(fault.claspMm)}, and one repeat ${mm(fault.perRepeatMm)}. The smallest measure that takes a repeat is ${figure(Math.ceil(fault.shortestBodyMm * 100) / 100, 2)} mm.`,
        mend: null,
      };
  }
}

const ROUNDED: Readonly<Record<Rounding, string>> = {
  up: 'rounded up',
  nearest: 'rounded to the nearest',
  down: 'rounded down',
};

/** `repeat` or `repeats`, with its number. */
const repeatsWord = (n: number): string => `${n} ${n === 1 ? 'repeat' : 'repeats'}`;

/** How a length turned into repeats, one sentence a step. */
export function lengthWords(working: LengthWorking): readonly string[] {
  const { targetMm, endsMm, claspMm, perRepeatMm, repeats, stretches, finishedMm, leftoverMm } = working;
  const room = targetMm - endsMm - claspMm;
  const over = Math.abs(leftoverMm);
  const even = stretches.every((stretch) => stretch.perRepeatMm === perRepeatMm);
  const made = even ? [{ repeats, perRepeatMm }] : stretches;
  // A tied or sewn piece has no clasp, an endless one no ends: what is not there is not reckoned with.
  const besides = [
    ...(endsMm === 0 ? [] : [{ mm: endsMm, what: 'ends' }]),
    ...(claspMm === 0 ? [] : [{ mm: claspMm, what: 'clasp' }]),
  ];
  const ends = [figure(targetMm, 2), ...besides.map((each) => `${figure(each.mm, 2)} ${each.what}`)].join(
    ' − ',
  );
  return [
    targetWords(working),
    even
      ? `${besides.length > 0 ? `(${ends})` : ends} ÷ ${figure(perRepeatMm, 4)} a repeat = ${figure(room / perRepeatMm, 3)}, ${ROUNDED[working.rounding]}: ${repeatsWord(repeats)}.`
      : `${besides.length > 0 ? `${ends} = ` : ''}${mm(room)} for the repeats, whose lengths differ by run; ${ROUNDED[working.rounding]}: ${repeatsWord(repeats)}.`,
    `${[...made.map((stretch) => `${stretch.repeats} × ${figure(stretch.perRepeatMm, 4)}`), ...besides.map((each) => figure(each.mm, 2))].join(' + ')} = ${mm(finishedMm)} finished, ${leftoverMm === 0 ? 'exactly as asked' : `${mm(over)} ${leftoverMm > 0 ? 'longer' : 'shorter'} than asked`}.`,
    ...(working.cutRepeats > 0
      ? [
          `The runs of a stated number ask for ${repeatsWord(working.cutRepeats)} more than this length holds: the last ones are left out.`,
        ]
      : []),
    ...certaintyWords(working),
    MEASURED[working.measured],
  ];
}

/** `165 mm measured + 20 mm ease = 185 mm to be reached.` */
export function targetWords({ bodyMm, easeMm, thickness, targetMm }: TargetWorking): string {
  const round = thickness
    ? ` + ${figure(thickness.roundMm, 2)} mm (π × ${figure(thickness.mm, 2)} mm thickness)`
    : '';
  return `${mm(bodyMm)} measured + ${mm(easeMm)} ease${round} = ${mm(targetMm)} to be reached.${thickness ? '' : ' The ease includes the thickness of the piece.'}`;
}

/** Taut and at rest differ by 9 to 42 % in the weaves whose rigid rings were computed. */
const MEASURED: Readonly<Record<LengthWorking['measured'], string>> = {
  'pulled taut':
    'The sample was measured pulled taut: worn slack, the piece is shorter, woven rings by up to a third.',
  'at rest': 'The sample was measured at rest: pulled taut, the piece is longer.',
};

/** What the finished length is told with: ` with the clasp closed`; nothing where the piece has none. */
export const claspWords = ({ claspMm }: Pick<LengthWorking, 'claspMm'>): string =>
  claspMm === 0 ? '' : ' with the clasp closed';

/** `19 ± 1 repeats`; `19 repeats` where the sample is sure or says nothing of it. */
export function repeatsWithError({ repeats, certainty }: LengthWorking): string {
  const off = certainty ? Math.max(certainty.mostRepeats - repeats, repeats - certainty.leastRepeats) : 0;
  return off === 0 ? repeatsWord(repeats) : `${repeats} ± ${off} repeats`;
}

function certaintyWords(working: LengthWorking): readonly string[] {
  const { certainty, repeats } = working;
  if (!certainty) return [];
  const range =
    certainty.leastRepeats === certainty.mostRepeats
      ? 'The count of repeats stays the same for that.'
      : `So ${repeatsWithError(working)}: try the piece on before you finish it.`;
  return [
    `From ${measuredWords(certainty)}: ${repeatsWord(repeats)} may come out ± ${mm(certainty.errorMm)}. ${range}`,
  ];
}

/** `2 measured pieces, read to ± 0.5 mm, and a run measured over 8 repeats`. */
function measuredWords({ pieces, runsOver, readingMm, scatterMm }: Certainty): string {
  const off =
    scatterMm === null ? `read to ± ${mm(readingMm)}` : `which lie ± ${mm(scatterMm)} off their line`;
  const over = runsOver.map((repeats) => `a run measured over ${repeatsWord(repeats)}`).join(' and ');
  if (pieces === 0) return `${over}, read to ± ${mm(readingMm)}`;
  const measured = `${pieces === 1 ? 'one measured piece' : `${pieces} measured pieces`}, ${off}`;
  return over === '' ? measured : `${measured}, and ${over}`;
}

/**
 * `36 opened = 17 × 2 in the repeat + 2 to finish`; where the piece has runs,
 * each is named by its place. Terms that add nothing are left out.
 * @param runs ids of the piece's runs, in order
 */
export function countWords(
  terms: readonly CountTerm[],
  runs: readonly string[],
  total: Prepared,
  of: keyof Prepared,
): string {
  const words = terms.filter(({ each }) => each[of] > 0).map((term) => termWords(term, runs, of));
  return words.length === 0 ? `none ${of}` : `${total[of]} ${of} = ${words.join(' + ')}`;
}

function termWords(
  { what, run, times, each }: CountTerm,
  runs: readonly string[],
  of: keyof Prepared,
): string {
  const number = run === null ? -1 : runs.indexOf(run);
  const where = number < 0 ? '' : ` of run ${number + 1}`;
  switch (what) {
    case 'start':
      return `${each[of]} to start`;
    case 'repeat':
      return `${times} × ${each[of]} in the repeat${where}`;
    case 'begun repeat':
      return `${each[of]} in the repeat begun${where}`;
    case 'finishing':
      return `${each[of]} to finish`;
  }
}

/** `78 × 110 % = 85.8, rounded up: 86 (8 spare)`. */
export function spareWords({ rule, net, spare, kit, least }: SpareWorking): string {
  const { sparePercent, spareLeast } = rule;
  if (net === 0) return 'none needed, no spare';
  if (least)
    return `${net} + ${spare} spare = ${net + spare}: of every ring kind at least ${spareLeast} spare`;
  if (sparePercent === 0) return `${net}, no spare`;
  if (kit) return `${sharedWords(kit, sparePercent)}; shared out by count, ${spare} of them here`;
  const exact = formatDecimal(net * (100 + sparePercent), 2);
  const issued = net + spare;
  return `${net} × ${100 + sparePercent} % = ${exact}${exact === String(issued) ? '' : `, rounded up: ${issued}`} (${spare} spare)`;
}

const sharedWords = (kit: { readonly net: number; readonly spare: number }, percent: number): string =>
  `spare for the whole kit: ${percent} % of ${kit.net} rings = ${formatDecimal(kit.net * percent, 2)}, rounded up: ${kit.spare}`;

/** The rule of spare rings, for the head of a list. */
export function spareRuleWords({ sparePercent, spareBy, spareLeast }: SpareRule): string {
  const rule =
    sparePercent === 0
      ? 'No spare by per cent'
      : spareBy === 'line'
        ? `Spare: ${sparePercent} % of each ring kind, rounded up`
        : `Spare: ${sparePercent} % of all rings together, rounded up once and shared out by count`;
  return `${rule}${spareLeast > 0 ? `; at least ${spareLeast} of each kind` : ''}.`;
}

export function materialWords({ working, material, needMilli }: MaterialLine): string {
  const each = quantityWord(working.quantityMilli, material.unit);
  const need = quantityWord(needMilli, material.unit);
  switch (working.per) {
    case 'lesson':
      return `${need} for the piece`;
    case 'repeat':
      return `${working.repeats} repeats × ${each} = ${need}`;
    case 'length':
      return `${each} per 100 mm × ${mm(working.finishedMm)} = ${need}`;
  }
}

export const massWords = (grams: number | null): string => (grams === null ? '–' : `${grams.toFixed(2)} g`);
