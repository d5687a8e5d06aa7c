/** Adding, changing, moving and taking out things of one list of the draft, each as one step of undo. */
import type { Change } from '#lib/lesson/change.ts';
import type { Content, ListField } from '#lib/lesson/content.ts';
import { useDraft } from '../draft.client.tsx';

export type ItemOf<L extends ListField> = Content[L][number];

export interface ListDeeds<L extends ListField> {
  readonly items: readonly ItemOf<L>[];
  readonly add: (item: ItemOf<L>, index?: number) => void;
  readonly put: (item: ItemOf<L>, what: string, run?: string) => void;
  readonly move: (id: string, by: -1 | 1) => void;
  readonly remove: (id: string) => void;
}

const putOf = (list: ListField, item: { readonly id: string }, index?: number): Change => ({
  kind: 'put',
  list,
  item: { ...item },
  ...(index === undefined ? {} : { index }),
});

/** @param one what a single item is called in the undo button: `ring kind`. */
export function useList<L extends ListField>(list: L, one: string): ListDeeds<L> {
  const { content, change } = useDraft();
  const items: readonly ItemOf<L>[] = content[list];
  return {
    items,
    add: (item, index) => change([putOf(list, item, index)], `add ${one}`),
    put: (item, what, run) => change([putOf(list, item)], `${one}: ${what}`, run),
    move(id, by) {
      const index = items.findIndex((item) => item.id === id);
      const item = items[index];
      const to = index + by;
      if (item && to >= 0 && to < items.length) change([putOf(list, item, to)], `move ${one}`);
    },
    remove: (id) => change([{ kind: 'remove', list, id }], `take out ${one}`),
  };
}
