/**
 * What people decided about suggestions, and what follows: what is offered
 * again, what is known to the workshop by now, and the cues with what was
 * taken. A decision of the workshop holds for all its lessons, a refusal in a
 * lesson for that lesson alone.
 */
import type { Cue } from '#lib/transcript/cue.ts';
import { type CueEdit, editCue } from '#lib/transcript/edit-cues.ts';
import { alikeKey, plainWords, type Suggestion } from './suggestion.ts';
import type { GlossaryTerm } from './term.ts';

/** What a workshop decided about words that stand for others. */
export interface HeardDecision {
  /** As they were heard, small letters. */
  readonly heard: string;
  readonly instead: string;
  /** In how many places it was taken. */
  readonly taken: number;
  /** Never to be offered again. */
  readonly never: boolean;
}

/** A workshop's own term with how it is said. */
type OwnWords = Pick<GlossaryTerm, 'term'> & {
  readonly forms: readonly string[];
  readonly sounds: readonly string[];
};

/** Key by which a lesson remembers that a suggestion was left; at one place, or wherever the same words stand. */
export const leftKey = (suggestion: Suggestion, where: 'here' | 'everywhere'): string =>
  `misheard/${where === 'here' ? (suggestion.parts[0]?.cueId ?? '') : '*'}/${alikeKey(suggestion)}`.slice(
    0,
    200,
  );

/** Suggestions that nobody has decided about yet. */
export function undecided(
  suggestions: readonly Suggestion[],
  left: readonly string[],
  decisions: readonly HeardDecision[],
): readonly Suggestion[] {
  const keys = new Set(left);
  const never = new Set(
    decisions.filter((decision) => decision.never).map(({ heard, instead }) => alikeKey({ heard, instead })),
  );
  return suggestions.filter(
    (one) =>
      !never.has(alikeKey(one)) && !keys.has(leftKey(one, 'here')) && !keys.has(leftKey(one, 'everywhere')),
  );
}

/** Which suggestion a person looks at. */
export interface LookedAt {
  /** Of the suggestion. */
  readonly id: string;
  /** Its place in the list, from 0. */
  readonly at: number;
}

/**
 * Where the suggestion that is looked at stands by now: a later search may
 * find more before it or fewer, and nothing else may come under a hand that
 * is about to take it. Where it is gone, what took its place.
 */
export function placeOf(suggestions: readonly Suggestion[], { id, at }: LookedAt): number {
  const same = suggestions.findIndex((one) => one.id === id);
  return same === -1 ? Math.min(at, Math.max(0, suggestions.length - 1)) : same;
}

/** Suggestions of the same words for the same term, in order of their first place. */
export function alike(suggestions: readonly Suggestion[]): readonly (readonly Suggestion[])[] {
  const groups = new Map<string, Suggestion[]>();
  for (const one of suggestions) {
    const group = groups.get(alikeKey(one));
    if (group) group.push(one);
    else groups.set(alikeKey(one), [one]);
  }
  return [...groups.values()];
}

/**
 * Our terms, the workshop's own, and what it has taken before as known
 * mishearings. A term of its own that we have too is its own.
 */
export function glossaryOf(
  trade: readonly GlossaryTerm[],
  own: readonly OwnWords[],
  decisions: readonly HeardDecision[],
): readonly GlossaryTerm[] {
  const ownNames = new Set(own.map(({ term }) => plainWords(term)));
  const terms: GlossaryTerm[] = [
    ...trade.filter(({ term }) => !ownNames.has(plainWords(term))),
    ...own.map(({ term, forms, sounds }) => ({
      term,
      forms: [...forms],
      sounds: [...sounds],
      confusions: [],
      everyday: false,
    })),
  ];
  const at = new Map(
    terms.flatMap(({ term, forms }, index) =>
      [term, ...forms].map((written) => [plainWords(written), index]),
    ),
  );
  for (const { heard, instead, taken, never } of decisions) {
    const index = at.get(plainWords(instead));
    const term = index === undefined ? undefined : terms[index];
    if (never || taken === 0 || !term || index === undefined) continue;
    const learned = { heard, after: [], before: [], near: [], instead };
    terms[index] = { ...term, confusions: [...term.confusions, learned] };
  }
  return terms;
}

/** Those whose words still stand where they were found. */
export function standing(suggestions: readonly Suggestion[], cues: readonly Cue[]): readonly Suggestion[] {
  const byId = new Map(cues.map((cue) => [cue.id, cue]));
  return suggestions.filter((one) => stillStands(one, byId));
}

/** The cues with suggestions taken. A place that reads differently by now is left as it is. */
export function takeSuggestions(
  cues: readonly Cue[],
  taken: readonly Suggestion[],
  newId: () => string,
): CueEdit {
  const byId = new Map(cues.map((cue) => [cue.id, cue]));
  const parts = standing(taken, cues)
    .flatMap((one) => one.parts)
    .sort((a, b) => b.start - a.start);
  const changed = new Map<string, string>();
  for (const { cueId, start, end, instead } of parts) {
    const text = changed.get(cueId) ?? byId.get(cueId)?.text ?? '';
    changed.set(cueId, text.slice(0, start) + instead + text.slice(end));
  }
  return {
    put: [...changed].flatMap(([id, text]) => {
      const cue = byId.get(id);
      return cue ? editCue(cue, text, newId).put : [];
    }),
    remove: [],
  };
}

function stillStands({ heard, parts }: Suggestion, byId: ReadonlyMap<string, Cue>): boolean {
  const now = parts.map(({ cueId, start, end }) => byId.get(cueId)?.text.slice(start, end) ?? '').join(' ');
  return now.replace(/\s+/g, ' ') === heard;
}
