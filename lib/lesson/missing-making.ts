/** What is missing in the making: ring kinds, sequence, fit, sample, kit, and what a piece needs to be whole. */
import { kitFor } from '#lib/kit/kit-list.ts';
import { bandFinding } from '#lib/rings/fit.ts';
import { namesSystem } from '#lib/rings/parse-size.ts';
import { sizesOf } from '#lib/rings/ring.ts';
import { checkPiece } from '#lib/weave/check-piece.ts';
import { fitsOf } from '#lib/weave/fit-sequence.ts';
import { usualBandOf } from '#lib/weave/usual-bands.ts';
import { SEQUENCE_PARTS } from './content.ts';
import { blank, blocks, type Check, placementsOf, warns, when } from './finding.ts';

export const checkRingKinds: Check = ({ content }) =>
  content.ringKinds.flatMap((kind) => [
    ...when(blank(kind.name), blocks('ring-kind-nameless', 'making', kind.id)),
    ...when(
      !namesSystem(kind.wire.stated) || !namesSystem(kind.innerDiameter.stated),
      blocks('size-without-system', 'making', kind.id, kind.name),
    ),
    ...when(
      kind.metal === 'other' && blank(kind.metalName),
      blocks('metal-missing', 'making', kind.id, kind.name),
    ),
    ...when(blank(kind.colour), warns('colour-missing', 'making', kind.id, kind.name)),
  ]);

export const checkSequence: Check = ({ content, recording }) => {
  const known = new Set(content.ringKinds.map((kind) => kind.id));
  const placements = placementsOf(content);
  const nameOf = (id: string): string => {
    const part = SEQUENCE_PARTS.find((each) => content[each].some((placement) => placement.id === id));
    return part ? `${part} ${content[part].findIndex((placement) => placement.id === id) + 1}` : 'step';
  };
  return [
    ...[...placements, ...content.steps].flatMap((step) => [
      ...when(blank(step.sentence), blocks('sentence-missing', 'making', step.id, nameOf(step.id))),
      ...when(
        recording !== null && step.atMs === null,
        warns('moment-missing', 'making', step.id, nameOf(step.id)),
      ),
      ...when(
        recording !== null && step.atMs !== null && step.atMs >= recording.durationMs,
        warns('moment-after-end', 'making', step.id, nameOf(step.id)),
      ),
    ]),
    ...placements.flatMap((placement) => {
      const used = [...placement.carries.map((carry) => carry.ringKind), placement.opened];
      return [
        ...when(
          used.some((id) => id !== null && !known.has(id)),
          blocks('ring-kind-unknown', 'making', placement.id, nameOf(placement.id)),
        ),
        ...when(
          placement.opened === null && placement.carries.length === 0,
          warns('adds-nothing', 'making', placement.id, nameOf(placement.id)),
        ),
      ];
    }),
    // One finding for the whole piece, at the first fault: later ones mostly follow from it.
    ...checkPiece(content)
      .faults.slice(0, 1)
      .map(({ placementId }) =>
        warns(
          'piece-not-sound',
          'making',
          placementId ?? placements[0]?.id ?? null,
          placementId === null ? '' : nameOf(placementId),
        ),
      ),
    ...when(
      placements.some((placement) => placement.opened !== null) &&
        placements.every((placement) => placement.carries.length === 0),
      warns('nothing-closed', 'making'),
    ),
  ];
};

export const checkKit: Check = ({ content }) => [
  ...when(content.ringKinds.length > 0 && content.repeat.length === 0, warns('repeat-missing', 'making')),
  ...when(content.repeat.length > 0 && content.sample === null, warns('sample-missing', 'making', 'sample')),
  ...when(content.repeat.length > 0 && content.sizes.length === 0, warns('sizes-missing', 'making')),
  ...content.sizes
    .filter((size) => !kitFor(content, size.bodyMm).ok)
    .map((size) => blocks('kit-not-computed', 'kit', size.id, size.name)),
  ...content.materials.flatMap((item) => [
    ...when(blank(item.name), blocks('material-nameless', 'making', item.id)),
    ...when(item.quantityMilli === 0, warns('quantity-missing', 'making', item.id, item.name)),
  ]),
];

/** Aspect ratios: what cannot be, and what is unusual for the weave. */
export const checkFit: Check = ({ content }) => {
  const usual = usualBandOf(content.weave, content.otherNames);
  const tight = fitsOf(content, content.ringKinds).filter(({ fault }) => fault !== null);
  return [
    ...tight.map(({ placementId, part, number }) =>
      warns('ring-too-tight', 'making', placementId, `${part} ${number}`),
    ),
    ...content.ringKinds.flatMap((kind) => {
      const isWoven = content.repeat.some(({ opened }) => opened === kind.id);
      const finding = usual && isWoven ? bandFinding(sizesOf(kind).aspectRatio, usual.band) : 'usual';
      return when(
        finding === 'below' || finding === 'above',
        warns('ratio-unusual', 'making', kind.id, kind.name),
      );
    }),
  ];
};

/** What recordings leave out most: the end, the words, the tools. Common practice. */
export const checkWhole: Check = ({ content, cues }) => {
  const chapterKinds = new Set(content.chapters.map(({ kind }) => kind));
  const told = cues.map(({ text }) => text).join(' ');
  const termsUsed = TERMS_TO_EXPLAIN.filter((term) => new RegExp(`\\b${term}\\b`, 'i').test(told));
  return [
    ...when(
      content.repeat.length > 0 &&
        content.finishing.length === 0 &&
        !chapterKinds.has('finishing') &&
        !chapterKinds.has('clasp'),
      warns('ending-missing', 'making', 'finishing'),
    ),
    ...when(
      termsUsed.length > 0 && content.chapters.length > 0 && !chapterKinds.has('terms'),
      warns('terms-missing', 'transcript', null, termsUsed.join(', ')),
    ),
    ...when(
      placementsOf(content).length > 0 && !content.materials.some(({ kind }) => kind === 'tool'),
      warns('tools-missing', 'making', 'materials'),
    ),
  ];
};

/** Words that a pupil seldom knows from elsewhere. Common practice. */
const TERMS_TO_EXPLAIN = [
  'eyes of',
  'fold back',
  'aspect ratio',
  'kerf',
  'mandrel',
  'repeat unit',
  'ridge',
  'trough',
  'springback',
];
