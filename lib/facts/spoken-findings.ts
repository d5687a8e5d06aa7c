/**
 * What was said otherwise than it is written, and what was never said, as
 * findings of the check. What a correction covers already is no finding.
 */
import type { Content } from '#lib/lesson/content.ts';
import type { Finding } from '#lib/lesson/finding.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { type ComparedFact, compareFacts } from './compare-facts.ts';
import { neverSaid, UNSAID_CODES, type Unsaid } from './never-said.ts';
import { spokenFacts } from './spoken-facts.ts';

export interface SaidAloud {
  readonly facts: readonly ComparedFact[];
  readonly unsaid: readonly Unsaid[];
}

/** Everything said aloud and never said, from a transcript and the lesson beside it. */
export function saidAloud(cues: readonly Cue[], content: Content): SaidAloud {
  const facts = spokenFacts(cues, content);
  return { facts: compareFacts(facts, content), unsaid: neverSaid(facts, cues, content) };
}

/** Whether a correction is about the moment at which a fact was said. */
export const isCorrected = ({ fact }: ComparedFact, corrections: Content['corrections']): boolean =>
  corrections.some(
    ({ startMs, endMs }) => startMs !== null && startMs < fact.endMs && (endMs ?? startMs + 1) > fact.startMs,
  );

/** Words come from the caller: this folder knows none. */
export interface FindingNames {
  readonly contradiction: (compared: ComparedFact) => string;
  readonly unsaid: (one: Unsaid) => string;
}

export function spokenFindings(
  { facts, unsaid }: SaidAloud,
  content: Pick<Content, 'corrections'>,
  names: FindingNames,
): readonly Finding[] {
  const otherwise = facts
    .filter((one) => one.standing === 'contradicts' && !isCorrected(one, content.corrections))
    .map(
      (one): Finding => ({
        code: 'said-otherwise',
        weight: 'warns',
        screen: 'transcript',
        of: one.fact.cueId,
        name: names.contradiction(one),
        detail: `${one.fact.kind} ${one.fact.stated}`,
      }),
    );
  // One finding a kind of thing, however many ring kinds it is of: a list of twenty is read by nobody.
  const never = UNSAID_CODES.flatMap((code): readonly Finding[] => {
    const some = unsaid.filter((one) => one.code === code);
    const [first] = some;
    if (!first) return [];
    const cue = first.fact?.cueId ?? null;
    return [
      {
        code: 'never-said',
        weight: 'warns',
        screen: cue === null ? 'making' : 'transcript',
        of: cue ?? (first.ringKind === null ? 'leaning' : `${first.ringKind}-name`),
        name: names.unsaid({ ...first, name: some.map(({ name }) => name).join(', ') }),
        detail: code,
      },
    ];
  });
  return [...otherwise, ...never];
}
