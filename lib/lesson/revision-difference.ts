/**
 * What changed from one revision to the next, as facts for a public history:
 * things are matched by their ids, never by place. Sentences are made in
 * app/words/revision-change.ts.
 */
import type { Cue } from '#lib/transcript/cue.ts';
import type { Content } from './content.ts';

export const CHANGED_PARTS = [
  'corrections',
  'title',
  'summary',
  'weave',
  'leaning',
  'times',
  'sample',
  'kit rules',
  'licence',
  'recording',
  'ringKinds',
  'start',
  'repeat',
  'finishing',
  'runs',
  'ends',
  'steps',
  'sizes',
  'materials',
  'cautions',
  'links',
  'chapters',
  'transcript',
] as const;
export type ChangedPart = (typeof CHANGED_PARTS)[number];

export interface RevisionChange {
  readonly part: ChangedPart;
  readonly how: 'added' | 'changed' | 'removed';
  /** Names of what changed, where it has any; else how many in `count`. */
  readonly names: readonly string[];
  readonly count: number;
}

interface Compared {
  readonly content: Content;
  readonly cues: readonly Cue[];
  readonly recording: { readonly id: string } | null;
}

/** Every change from the older to the newer, in a fixed order; `[]` where nothing a pupil sees changed. */
export function revisionDifference(older: Compared, newer: Compared): readonly RevisionChange[] {
  const before = older.content;
  const now = newer.content;
  const one = (part: ChangedPart, was: unknown, is: unknown): readonly RevisionChange[] =>
    same(was, is) ? [] : [{ part, how: 'changed', names: [], count: 1 }];
  return [
    ...things('corrections', before.corrections, now.corrections, (item) => item.wrong),
    ...one('title', before.title, now.title),
    ...one('summary', before.summary, now.summary),
    ...one('weave', [before.weave, before.otherNames], [now.weave, now.otherNames]),
    ...one('leaning', before.leaning, now.leaning),
    ...one('times', [before.prepareMinutes, before.makeMinutes], [now.prepareMinutes, now.makeMinutes]),
    ...one('sample', before.sample, now.sample),
    ...one('kit rules', before.kitRules, now.kitRules),
    ...one('licence', before.licence, now.licence),
    ...one('recording', older.recording?.id ?? null, newer.recording?.id ?? null),
    ...things('ringKinds', before.ringKinds, now.ringKinds, (item) => item.name),
    ...things('start', before.start, now.start, () => ''),
    ...things('repeat', before.repeat, now.repeat, () => ''),
    ...things('finishing', before.finishing, now.finishing, () => ''),
    ...one('runs', before.runs, now.runs),
    ...one('ends', before.endsAfter, now.endsAfter),
    ...things('steps', before.steps, now.steps, () => ''),
    ...things('sizes', before.sizes, now.sizes, (item) => item.name),
    ...things('materials', before.materials, now.materials, (item) => item.name),
    ...things('cautions', before.cautions, now.cautions, () => ''),
    ...things('links', before.links, now.links, (item) => item.label),
    ...things('chapters', before.chapters, now.chapters, (item) => item.title),
    ...things('transcript', older.cues, newer.cues, () => ''),
  ];
}

const same = (one: unknown, other: unknown): boolean => inKeyOrder(one) === inKeyOrder(other);

/** JSON with its keys in order: a database does not keep the order in which they were written. */
const inKeyOrder = (value: unknown): string =>
  JSON.stringify(value, (_, inner: unknown) =>
    inner !== null && typeof inner === 'object' && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).toSorted(([one], [other]) => (one < other ? -1 : 1)))
      : inner,
  );

function things<T extends { readonly id: string }>(
  part: ChangedPart,
  before: readonly T[],
  now: readonly T[],
  nameOf: (thing: T) => string,
): readonly RevisionChange[] {
  const old = new Map(before.map((thing) => [thing.id, thing]));
  const kept = new Set(now.map((thing) => thing.id));
  const told = (how: RevisionChange['how'], found: readonly T[]): readonly RevisionChange[] =>
    found.length === 0
      ? []
      : [{ part, how, names: found.map(nameOf).filter((name) => name !== ''), count: found.length }];
  return [
    ...told(
      'added',
      now.filter((thing) => !old.has(thing.id)),
    ),
    ...told(
      'changed',
      now.filter((thing) => old.has(thing.id) && !same(old.get(thing.id), thing)),
    ),
    ...told(
      'removed',
      before.filter((thing) => !kept.has(thing.id)),
    ),
  ];
}
