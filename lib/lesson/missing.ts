/**
 * What a pupil would still have to ask: one list, the most important first.
 * A finding blocks publishing or only warns; a warning can be put aside, a
 * block cannot. Findings carry facts; app/words/finding.ts words them.
 */
import { chapterFaults } from '#lib/chapters/chapter-rules.ts';
import { kitFor } from '#lib/kit/kit-list.ts';
import { bandFinding } from '#lib/rings/fit.ts';
import { namesSystem } from '#lib/rings/parse-size.ts';
import { sizesOf } from '#lib/rings/ring.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { checkPiece } from '#lib/weave/check-piece.ts';
import { fitsOf } from '#lib/weave/fit-sequence.ts';
import { usualBandOf } from '#lib/weave/usual-bands.ts';
import { offeredCautions } from './cautions.ts';
import { type Content, linkAddress, SEQUENCE_PARTS } from './content.ts';
import { hardToSee } from './hard-to-see.ts';

/** In order of importance: what comes first is listed first among its weight. */
export const FINDING_CODES = [
  'title-missing',
  'nothing-to-teach',
  'transcript-missing',
  'correction-incomplete',
  'correction-span-wrong',
  'size-without-system',
  'metal-missing',
  'ring-kind-nameless',
  'ring-kind-unknown',
  'kit-not-computed',
  'sentence-missing',
  'chapter-nameless',
  'chapter-after-end',
  'link-not-well-formed',
  'material-nameless',
  'caution-empty',
  'recording-missing',
  'transcript-after-end',
  'times-approximate',
  'captions-hard-to-read',
  'chapters-missing',
  'chapter-late-start',
  'chapter-short',
  'repeat-missing',
  'sample-missing',
  'sizes-missing',
  'piece-not-sound',
  'ring-too-tight',
  'said-otherwise',
  'adds-nothing',
  'nothing-closed',
  'leaning-unstated',
  'never-said',
  'ratio-unusual',
  'ending-missing',
  'terms-missing',
  'tools-missing',
  'caution-missing',
  'caution-fits',
  'moment-missing',
  'moment-after-end',
  'picture-without-words',
  'colour-missing',
  'colours-alike',
  'quantity-missing',
  'summary-missing',
  'weave-missing',
  'minutes-missing',
  'licence-missing',
  'link-nameless',
] as const;
export type FindingCode = (typeof FINDING_CODES)[number];

export type Weight = 'blocks' | 'warns';
/** Where it is mended: a stage of the bench. */
export type Screen = 'bring-in' | 'transcript' | 'making' | 'kit' | 'corrections';

export interface Finding {
  readonly code: FindingCode;
  readonly weight: Weight;
  readonly screen: Screen;
  /** Id of the thing it is about; null where it is about the lesson. */
  readonly of: string | null;
  /** How the thing is called, to word it; may be empty. */
  readonly name: string;
  /** Tells findings of the same code about the same thing apart. */
  readonly detail?: string;
}

/** What the list is made from. */
export interface Checked {
  readonly content: Content;
  readonly cues: readonly Cue[];
  /** Null where the lesson has no ready recording. */
  readonly recording: {
    readonly durationMs: number;
    readonly hasAudio: boolean;
    readonly hasVideo?: boolean;
  } | null;
  /** What else was found, by parts that know more than the document: said aloud and never said. */
  readonly more?: readonly Finding[];
}

/** Tells a finding in `content.dismissed`. */
export const findingKey = ({ code, of, detail }: Pick<Finding, 'code' | 'of' | 'detail'>): string =>
  [code, of, detail]
    .filter((part) => part !== null && part !== undefined)
    .join('/')
    .slice(0, 200);

export interface Missing {
  readonly blocks: readonly Finding[];
  readonly warns: readonly Finding[];
  /** Warnings that the teacher put aside and that still hold. */
  readonly dismissed: readonly Finding[];
}

/** Everything that is still missing, by weight, each in order of importance. */
export function missingFrom(checked: Checked): Missing {
  const found = [...CHECKS.flatMap((check) => check(checked)), ...(checked.more ?? [])].toSorted(
    (one, other) => FINDING_CODES.indexOf(one.code) - FINDING_CODES.indexOf(other.code),
  );
  const asides = new Set(checked.content.dismissed);
  const warnings = found.filter((finding) => finding.weight === 'warns');
  return {
    blocks: found.filter((finding) => finding.weight === 'blocks'),
    warns: warnings.filter((finding) => !asides.has(findingKey(finding))),
    dismissed: warnings.filter((finding) => asides.has(findingKey(finding))),
  };
}

type Check = (checked: Checked) => readonly Finding[];

const blocks = (code: FindingCode, screen: Screen, of: string | null = null, name = ''): Finding => ({
  code,
  weight: 'blocks',
  screen,
  of,
  name,
});
const warns = (code: FindingCode, screen: Screen, of: string | null = null, name = ''): Finding => ({
  ...blocks(code, screen, of, name),
  weight: 'warns',
});
const when = (holds: boolean, finding: Finding): readonly Finding[] => (holds ? [finding] : []);
const blank = (text: string): boolean => text.trim() === '';

/** Weaves that exist in a left and a right hand. Names: common practice. */
const HANDED = /\b(persian|spiral|jens pind|jpl)/i;

const placementsOf = (content: Content) => SEQUENCE_PARTS.flatMap((part) => content[part]);

const checkSource: Check = ({ content, cues, recording }) => [
  ...when(blank(content.title), blocks('title-missing', 'making', 'title')),
  ...when(
    recording === null && placementsOf(content).length + content.steps.length === 0,
    blocks('nothing-to-teach', 'bring-in'),
  ),
  ...when(
    recording === null && placementsOf(content).length + content.steps.length > 0,
    warns('recording-missing', 'bring-in'),
  ),
  ...when(recording?.hasAudio === true && cues.length === 0, blocks('transcript-missing', 'bring-in')),
  ...(recording === null ? [] : cues)
    .filter((cue) => cue.startMs >= (recording?.durationMs ?? 0))
    .slice(0, 1)
    .map((cue) => warns('transcript-after-end', 'transcript', cue.id)),
  ...(recording === null ? [] : cues)
    .filter(({ timing }) => timing === 'approximate')
    .slice(0, 1)
    .map((cue) => warns('times-approximate', 'transcript', cue.id)),
];

const checkChapters: Check = ({ content, recording }) => {
  if (content.chapters.length === 0) return when(recording !== null, warns('chapters-missing', 'transcript'));
  return chapterFaults(content.chapters, recording?.durationMs ?? null).map(({ code, chapter }) =>
    code === 'chapter-nameless' || code === 'chapter-after-end'
      ? blocks(code, 'transcript', chapter.id, chapter.title || chapter.kind)
      : warns(code, 'transcript', chapter.id, chapter.title),
  );
};

const checkRingKinds: Check = ({ content }) =>
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

const checkSequence: Check = ({ content, recording }) => {
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

const checkKit: Check = ({ content }) => [
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
const checkFit: Check = ({ content }) => {
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
const checkWhole: Check = ({ content, cues }) => {
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

const checkText: Check = ({ content }) => [
  ...when(blank(content.summary), warns('summary-missing', 'making', 'summary')),
  ...when(blank(content.weave), warns('weave-missing', 'making', 'weave')),
  ...when(
    content.leaning === 'none' && HANDED.test(`${content.weave} ${content.otherNames}`),
    warns('leaning-unstated', 'making', 'leaning', content.weave),
  ),
  ...when(
    content.prepareMinutes === null && content.makeMinutes === null,
    warns('minutes-missing', 'making', 'minutes'),
  ),
  ...when(blank(content.licence), warns('licence-missing', 'making', 'licence')),
];

const checkCautions: Check = ({ content }) => {
  const offered = offeredCautions(content);
  return [
    ...content.cautions
      .filter((caution) => caution.of === null && blank(caution.text))
      .map((caution) => blocks('caution-empty', 'making', caution.id)),
    ...(content.cautions.length === 0 && offered.length > 0
      ? [warns('caution-missing', 'making', null, offered.map((caution) => caution.title).join(', '))]
      : offered.map((caution) => warns('caution-fits', 'making', caution.id, caution.title))),
  ];
};

/** An address that a browser can read and that names a host (or a mailbox). */
export function linkIsWellFormed(address: string): boolean {
  if (!linkAddress.safeParse(address).success || !URL.canParse(address)) return false;
  const url = new URL(address);
  return url.protocol === 'mailto:' ? url.pathname.includes('@') : url.hostname.includes('.');
}

const checkLinks: Check = ({ content }) => [
  ...content.links.flatMap((link) => [
    ...when(
      !linkIsWellFormed(link.address),
      blocks('link-not-well-formed', 'making', link.id, link.label || link.address),
    ),
    ...when(blank(link.label), warns('link-nameless', 'making', link.id, link.address)),
  ]),
  // An offer may do without a link; one that it has must lead somewhere.
  ...[...content.ringKinds, ...content.materials]
    .filter((sold) => sold.offer !== null && sold.offer.link !== '' && !linkIsWellFormed(sold.offer.link))
    .map((sold) => blocks('link-not-well-formed', 'making', sold.id, sold.name)),
];

const checkCorrections: Check = ({ content, recording }) =>
  content.corrections
    .filter((correction) => correction.revision === null)
    .flatMap((correction) => {
      const { startMs, endMs } = correction;
      const half = (startMs === null) !== (endMs === null);
      const backwards = startMs !== null && endMs !== null && endMs <= startMs;
      const beyond = recording !== null && startMs !== null && startMs >= recording.durationMs;
      return [
        ...when(
          blank(correction.wrong) || blank(correction.right) || blank(correction.affects),
          blocks('correction-incomplete', 'corrections', correction.id, correction.wrong),
        ),
        ...when(
          half || backwards || beyond,
          blocks('correction-span-wrong', 'corrections', correction.id, correction.wrong),
        ),
      ];
    });

const CHECKS: readonly Check[] = [
  hardToSee,
  checkFit,
  checkWhole,
  checkSource,
  checkChapters,
  checkRingKinds,
  checkSequence,
  checkKit,
  checkText,
  checkCautions,
  checkLinks,
  checkCorrections,
];
