/** What a pupil would still have to ask: one list, the most important first. */
import { chapterFaults } from '#lib/chapters/chapter-rules.ts';
import { offeredCautions } from './cautions.ts';
import { linkAddress } from './content.ts';
import {
  blank,
  blocks,
  type Check,
  type Checked,
  FINDING_CODES,
  type Finding,
  findingKey,
  placementsOf,
  warns,
  when,
} from './finding.ts';
import { hardToSee } from './hard-to-see.ts';
import { checkFit, checkKit, checkRingKinds, checkSequence, checkWhole } from './missing-making.ts';

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

/** Weaves that exist in a left and a right hand. Names: common practice. */
const HANDED = /\b(persian|spiral|jens pind|jpl)/i;

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
