/**
 * What changed from one revision to the next, as facts for a public history:
 * things are matched by their ids, and their order is told by itself. Sentences
 * are made in app/words/revision-change.ts. That every field of a revision is
 * told, or left out on purpose, is held by tests/lesson/told-fields.test.ts.
 */
import type { FrozenKit } from './frozen-kit.ts';
import type { Revision } from './revision.ts';

type Compared = Pick<Revision, 'content' | 'cues' | 'kits' | 'terms'> & {
  readonly workshop: Pick<Revision['workshop'], 'name'>;
  readonly recording: Pick<NonNullable<Revision['recording']>, 'id' | 'posterKey'> | null;
};

interface Thing {
  readonly id: string;
}

/** A part that is one thing. */
const field = <P extends string>(part: P, of: (all: Compared) => unknown) =>
  ({ part, isList: false, of }) as const;

/** A part of many things with ids; each is told by its name where it has one. */
const list = <P extends string, T extends Thing>(
  part: P,
  of: (all: Compared) => readonly T[],
  nameOf: (thing: T) => string = () => '',
) =>
  ({
    part,
    isList: true,
    of: (all: Compared): readonly (Thing & { readonly called: string })[] =>
      of(all).map((thing) => ({ ...thing, called: nameOf(thing) })),
  }) as const;

/** What of each size's kit, whether it can be reckoned or not; a size that comes or goes is told as a size. */
const ofKits =
  (part: (kit: FrozenKit) => unknown) =>
  ({ content, kits }: Compared) =>
    content.sizes.map(({ id, name }) => {
      const kit = kits.find(({ size }) => size === id);
      return { id, name, of: kit ? part(kit) : null };
    });

/** Without what it costs, and how many packs are bought for it. */
const heldIn = ({ rings, materials, packsMinor, unpriced, ...kit }: FrozenKit) => ({
  ...kit,
  rings: rings.map(({ packs, ...ring }) => ring),
  materials: materials.map(({ packs, ...material }) => material),
});

const costOf = ({ rings, materials, packsMinor, unpriced }: FrozenKit) => ({
  packsMinor,
  unpriced,
  packs: [rings, materials].map((lines) => lines.map(({ packs }) => packs)),
});

/** Every part of a revision that a pupil sees, in the order in which changes are told. */
const PARTS = [
  list(
    'corrections',
    ({ content }) => content.corrections,
    ({ wrong }) => wrong,
  ),
  field('title', ({ content }) => content.title),
  field('summary', ({ content }) => content.summary),
  field('weave', ({ content }) => [content.weave, content.otherNames]),
  field('difficulty', ({ content }) => content.difficulty),
  field('leaning', ({ content }) => content.leaning),
  field('language', ({ content }) => content.language),
  field('times', ({ content }) => [content.prepareMinutes, content.makeMinutes]),
  field('sample', ({ content }) => content.sample),
  field('kit rules', ({ content }) => content.kitRules),
  field('currency', ({ content }) => content.currency),
  field('licence', ({ content }) => content.licence),
  field('workshop', ({ workshop }) => workshop.name),
  field('recording', ({ recording }) => recording?.id ?? null),
  field('poster', ({ recording }) => recording?.posterKey ?? null),
  list(
    'ringKinds',
    ({ content }) => content.ringKinds,
    ({ name }) => name,
  ),
  list('start', ({ content }) => content.start),
  list('repeat', ({ content }) => content.repeat),
  list('finishing', ({ content }) => content.finishing),
  field('runs', ({ content }) => content.runs),
  field('ends', ({ content }) => [content.endsAfter, content.ends]),
  list('steps', ({ content }) => content.steps),
  list(
    'sizes',
    ({ content }) => content.sizes,
    ({ name }) => name,
  ),
  list('kits', ofKits(heldIn), ({ name }) => name),
  list('costs', ofKits(costOf), ({ name }) => name),
  list(
    'materials',
    ({ content }) => content.materials,
    ({ name }) => name,
  ),
  list('cautions', ({ content }) => content.cautions),
  list(
    'links',
    ({ content }) => content.links,
    ({ label }) => label,
  ),
  list(
    'chapters',
    ({ content }) => content.chapters,
    ({ title }) => title,
  ),
  list(
    'terms',
    ({ terms }) => terms.map((term) => ({ ...term, id: term.term })),
    ({ term }) => term,
  ),
  list('transcript', ({ cues }) => cues),
] as const;

export type FieldPart = Extract<(typeof PARTS)[number], { readonly isList: false }>['part'];
export type ListPart = Extract<(typeof PARTS)[number], { readonly isList: true }>['part'];

export interface RevisionChange {
  readonly part: FieldPart | ListPart;
  readonly how: 'added' | 'changed' | 'removed' | 'reordered';
  /** Names of what changed, where it has any; else how many in `count`. */
  readonly names: readonly string[];
  readonly count: number;
}

/** Every change from the older to the newer, in a fixed order; `[]` where nothing a pupil sees changed. */
export const revisionDifference = (older: Compared, newer: Compared): readonly RevisionChange[] =>
  PARTS.flatMap((one): readonly RevisionChange[] => {
    const { part } = one;
    if (!one.isList)
      return same(one.of(older), one.of(newer)) ? [] : [{ part, how: 'changed', names: [], count: 1 }];
    const changes = things(part, one.of(older), one.of(newer));
    return part === 'kits' || part === 'costs' ? changes.filter(({ how }) => how === 'changed') : changes;
  });

const same = (one: unknown, other: unknown): boolean => inKeyOrder(one) === inKeyOrder(other);

/** JSON with its keys in order: a database does not keep the order in which they were written. */
const inKeyOrder = (value: unknown): string =>
  JSON.stringify(value, (_, inner: unknown) =>
    inner !== null && typeof inner === 'object' && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).toSorted(([one], [other]) => (one < other ? -1 : 1)))
      : inner,
  );

/** Things that stand in another place than before among those that were there before. */
const outOfOrder = <T extends Thing>(before: readonly Thing[], now: readonly T[]): readonly T[] =>
  now.filter(({ id }, place) => before[place]?.id !== id);

function things(
  part: RevisionChange['part'],
  before: readonly (Thing & { readonly called: string })[],
  now: readonly (Thing & { readonly called: string })[],
): readonly RevisionChange[] {
  const old = new Map(before.map((thing) => [thing.id, thing]));
  const kept = new Set(now.map((thing) => thing.id));
  const found = {
    added: now.filter((thing) => !old.has(thing.id)),
    changed: now.filter((thing) => old.has(thing.id) && !same(old.get(thing.id), thing)),
    removed: before.filter((thing) => !kept.has(thing.id)),
    reordered: outOfOrder(
      before.filter((thing) => kept.has(thing.id)),
      now.filter((thing) => old.has(thing.id)),
    ),
  };
  return (['added', 'changed', 'removed', 'reordered'] as const).flatMap((how) =>
    found[how].length === 0
      ? []
      : [
          {
            part,
            how,
            names: found[how].map(({ called }) => called).filter((name) => name !== ''),
            count: found[how].length,
          },
        ],
  );
}
