/**
 * What a pupil who only listens never hears, though the lesson knows it: a
 * wire without its system, an inner diameter, a count, a colour, the hand.
 */
import type { Content } from '#lib/lesson/content.ts';
import { metalNameOf } from '#lib/rings/metals.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import type { SpokenFact } from './spoken-fact.ts';

export const UNSAID_CODES = [
  'wire without system',
  'wire',
  'inner diameter',
  'metal',
  'colour',
  'count',
  'leaning',
] as const;
export type UnsaidCode = (typeof UNSAID_CODES)[number];

export interface Unsaid {
  readonly code: UnsaidCode;
  /** Id of the ring kind; null where it is of the lesson. */
  readonly ringKind: string | null;
  readonly name: string;
  /** The fact that comes nearest (a gauge without its system), to lead to its moment; null where nothing was said. */
  readonly fact: SpokenFact | null;
}

/** In the order of UNSAID_CODES; nothing where there is no transcript. */
export function neverSaid(
  facts: readonly SpokenFact[],
  cues: readonly Cue[],
  content: Content,
): readonly Unsaid[] {
  if (cues.length === 0) return [];
  const spoken = new Set(cues.flatMap(({ text }) => text.toLowerCase().match(/\p{L}+/gu) ?? []));
  const found = content.ringKinds.flatMap((kind): readonly Unsaid[] => {
    const of = (code: UnsaidCode, fact: SpokenFact | null = null): Unsaid => ({
      code,
      ringKind: kind.id,
      name: kind.name,
      fact,
    });
    const said = (what: SpokenFact['kind']): readonly SpokenFact[] =>
      facts.filter((fact) => fact.kind === what && fact.ringKinds.includes(kind.id));
    const wires = said('wire');
    const withSystem = wires.some(({ system }) => system !== null);
    return [
      ...(wires.length === 0
        ? [of('wire')]
        : withSystem
          ? []
          : [of('wire without system', wires[0] ?? null)]),
      ...(said('inner diameter').length === 0 ? [of('inner diameter')] : []),
      ...(isSaid(spoken, metalNameOf(kind)) ? [] : [of('metal')]),
      ...(isSaid(spoken, kind.colour) ? [] : [of('colour')]),
      ...(content.sizes.length > 0 && said('rings').length === 0 ? [of('count')] : []),
    ];
  });
  const hand: readonly Unsaid[] =
    content.leaning !== 'none' && !spoken.has(content.leaning)
      ? [{ code: 'leaning', ringKind: null, name: content.leaning, fact: null }]
      : [];
  return [...found, ...hand].sort((a, b) => UNSAID_CODES.indexOf(a.code) - UNSAID_CODES.indexOf(b.code));
}

/** Whether the telling word of a name was said: of `aluminium 5356` the first, of `deep blue` the last. */
function isSaid(spoken: ReadonlySet<string>, name: string): boolean {
  const words = name.toLowerCase().match(/\p{L}{3,}/gu) ?? [];
  if (words.length === 0) return true;
  return words.some((word) => spoken.has(word) || spoken.has(word.replace('aluminium', 'aluminum')));
}
