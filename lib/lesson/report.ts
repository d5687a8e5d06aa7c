/**
 * What a pupil says is wrong in a lesson: what it concerns, at which second,
 * in her own words; and the correction that may be made of it. Nothing else
 * is known of her.
 */
import { z } from 'zod';
import { parseTimeCode } from '#lib/time/time-code.ts';
import { type Cue, compareCues } from '#lib/transcript/cue.ts';
import type { Correction } from './content.ts';
import { emptyCorrection } from './corrections.ts';

export const CONCERNS = ['spoken', 'shown', 'written', 'kit', 'link', 'safety'] as const;
export type Concern = (typeof CONCERNS)[number];

/** Characters of each of the two texts. */
export const LONGEST_REPORT = 2_000;

/** A text as it can be kept: line ends as one sign, without what no database holds. */
const written = z
  .string()
  .transform((text) => text.toWellFormed().replaceAll('\u0000', '').replaceAll(/\r\n?/g, '\n').trim());

export const pupilReport = z.object({
  /** Number of the revision that she reads. */
  revision: z.coerce.number().int().min(1).max(999_999),
  concerns: z.enum(CONCERNS),
  /** The moment as she typed it, since what cannot be read may still help. */
  at: written.pipe(z.string().max(40)),
  wrong: written.pipe(z.string().min(1).max(LONGEST_REPORT)),
  /** What would be right, where she knows it. */
  right: written.pipe(z.string().max(LONGEST_REPORT)),
});
export type PupilReport = Readonly<z.infer<typeof pupilReport>>;

/** Milliseconds of the recording that she saw, or null where she named none that can be read. */
export const reportedMs = ({ at }: Pick<PupilReport, 'at'>): number | null => parseTimeCode(at);

/** How far from a cue a moment may lie and still mean it: people look at the clock after they heard it. */
const NEAR_MS = 5_000;

/** The cue that is said at a moment, or shortly before it; null where none is. */
export function cueAt(cues: readonly Cue[], atMs: number): Cue | null {
  const begun = cues.toSorted(compareCues).filter(({ startMs }) => startMs <= atMs);
  const last = begun.at(-1);
  return last && atMs < last.endMs + NEAR_MS ? last : null;
}

const KINDS: Readonly<Record<Concern, Correction['kind']>> = {
  spoken: 'said wrongly',
  shown: 'shown wrongly',
  written: 'written wrongly',
  kit: 'kit wrong',
  link: 'link dead',
  safety: 'safety',
};

/**
 * A draft of the correction: span and words filled in as far as they are known.
 * What was said stands as it was said; everything else in the pupil's words.
 * @param cue the draft's cue that was said at the reported moment; null where there is none any more
 */
export function correctionOf(id: string, report: PupilReport, cue: Cue | null): Correction {
  const { concerns, revision, wrong, right } = report;
  const said = concerns === 'spoken' && cue !== null;
  return {
    ...emptyCorrection(id),
    kind: KINDS[concerns],
    startMs: cue?.startMs ?? null,
    endMs: cue?.endMs ?? null,
    wrong: said ? cue.text : wrong,
    right,
    affects: `everyone who works by revision ${revision} or an earlier one`,
    kitsChange: concerns === 'kit',
  };
}
