/** Where on its stage a finding is mended: the id of the field, or of what holds it. */
import type { Finding, FindingCode } from './missing.ts';

/** `{of}` stands for the id of the thing that the finding is about. */
const PLACES: Readonly<Record<FindingCode, string>> = {
  'title-missing': 'title',
  'nothing-to-teach': 'recording',
  'transcript-missing': 'transcript',
  'correction-incomplete': '{of}',
  'correction-span-wrong': 'start-{of}',
  'size-without-system': '{of}-inner',
  'metal-missing': '{of}-metal',
  'ring-kind-nameless': '{of}-name',
  'ring-kind-unknown': '{of}-opened',
  'kit-not-computed': '{of}',
  'sentence-missing': '{of}-sentence',
  'chapter-nameless': '{of}',
  'chapter-after-end': '{of}',
  'link-not-well-formed': '{of}-link',
  'material-nameless': '{of}-name',
  'caution-empty': '{of}',
  'recording-missing': 'recording',
  'transcript-after-end': '{of}',
  'chapters-missing': 'set-chapter',
  'chapter-late-start': '{of}',
  'chapter-short': '{of}',
  'repeat-missing': 'add-to-repeat',
  'sample-missing': 'per-repeat',
  'sizes-missing': 'sizes',
  'piece-not-sound': '{of}-opened',
  'adds-nothing': '{of}-opened',
  'nothing-closed': 'add-to-repeat',
  'leaning-unstated': 'leaning',
  'caution-missing': 'cautions',
  'caution-fits': '{of}',
  'moment-missing': '{of}-moment',
  'moment-after-end': '{of}-moment',
  'colour-missing': '{of}-colour',
  'quantity-missing': '{of}-quantity',
  'summary-missing': 'summary',
  'weave-missing': 'weave',
  'minutes-missing': 'minutes',
  'licence-missing': 'licence',
  'link-nameless': '{of}',
};

/** The part of the stage's address after `#`. */
export const findingPlace = ({ code, of }: Pick<Finding, 'code' | 'of'>): string =>
  PLACES[code].replace('{of}', of ?? '');
