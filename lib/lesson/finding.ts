/**
 * What is found missing or wrong in a lesson, as facts; app/words/finding.ts
 * words them. A finding blocks publishing or only warns; a warning can be put
 * aside, a block cannot.
 */
import type { Cue } from '#lib/transcript/cue.ts';
import { type Content, SEQUENCE_PARTS } from './content.ts';

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

/** One thing that is looked at. */
export type Check = (checked: Checked) => readonly Finding[];

/** A finding that keeps the lesson from being published. */
export const blocks = (code: FindingCode, screen: Screen, of: string | null = null, name = ''): Finding => ({
  code,
  weight: 'blocks',
  screen,
  of,
  name,
});
/** A finding to think about. */
export const warns = (code: FindingCode, screen: Screen, of: string | null = null, name = ''): Finding => ({
  ...blocks(code, screen, of, name),
  weight: 'warns',
});
/** The finding, where it holds. */
export const when = (holds: boolean, finding: Finding): readonly Finding[] => (holds ? [finding] : []);
export const blank = (text: string): boolean => text.trim() === '';

export const placementsOf = (content: Content) => SEQUENCE_PARTS.flatMap((part) => content[part]);
