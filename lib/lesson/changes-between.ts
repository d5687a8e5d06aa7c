/** The changes that make one content, or one draft, of another: what a teacher would have done, written down. */
import type { Change, Draft } from './change.ts';
import { type Content, type ListField, listField, scalarField } from './content.ts';

type Item = { readonly id: string };

/** Made in order on `from`, they give `to`. Things that are alike are left alone. */
export function changesBetween(from: Content, to: Content): readonly Change[] {
  const alike = (one: unknown, other: unknown) => JSON.stringify(one) === JSON.stringify(other);
  const scalars: Change[] = scalarField.options
    .filter((field) => !alike(from[field], to[field]))
    .map((field) => ({ kind: 'set', field, value: to[field] }));
  const lists = listField.options.filter((list) => !alike(from[list], to[list]));
  return [...scalars, ...lists.flatMap((list) => changesOfList(list, from[list], to[list]))];
}

/** As `changesBetween`, with the cues: made in order on the one draft, they give the other. */
export function draftChangesBetween(from: Draft, to: Draft): readonly Change[] {
  const before = new Map(from.cues.map((cue) => [cue.id, JSON.stringify(cue)]));
  const kept = new Set(to.cues.map(({ id }) => id));
  const put = to.cues.filter((cue) => before.get(cue.id) !== JSON.stringify(cue));
  const remove = from.cues.filter(({ id }) => !kept.has(id)).map(({ id }) => id);
  const cues: Change[] = put.length + remove.length === 0 ? [] : [{ kind: 'cues', put, remove }];
  return [...changesBetween(from.content, to.content), ...cues];
}

function changesOfList(list: ListField, from: readonly Item[], to: readonly Item[]): Change[] {
  const kept = new Set(to.map((item) => item.id));
  const gone = from.filter((item) => !kept.has(item.id));
  return [
    ...gone.map((item): Change => ({ kind: 'remove', list, id: item.id })),
    ...to.map((item, index): Change => ({ kind: 'put', list, item: { ...item }, index })),
  ];
}
