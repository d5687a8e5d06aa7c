/** What a teacher decides about proposed chapters, as changes of the draft under the names that undo shows. */
import type { ProposedChapter } from '#lib/chapters/propose-chapters.ts';
import type { Change } from '#lib/lesson/change.ts';
import type { Content } from '#lib/lesson/content.ts';
import type { DraftStore } from '../draft-store.ts';

/** A refused beginning is remembered among what was put aside, by its cue. */
const REFUSED = 'chapter-not-at/';

/** Cues in which no chapter is to be proposed again. */
export const refusedCues = (dismissed: Content['dismissed']): readonly string[] =>
  dismissed.filter((key) => key.startsWith(REFUSED)).map((key) => key.slice(REFUSED.length));

const acceptedChapters = (proposed: readonly ProposedChapter[], newId: () => string): readonly Change[] =>
  proposed.map(({ kind, title, startMs }) => ({
    kind: 'put',
    list: 'chapters',
    item: { id: newId(), kind, title, startMs },
  }));

export function acceptChapters(store: DraftStore, proposed: readonly ProposedChapter[]): void {
  const label = proposed.length === 1 ? 'accept a chapter' : `accept ${proposed.length} chapters`;
  store.change([...acceptedChapters(proposed, () => crypto.randomUUID())], label);
}

export function refuseChapter(store: DraftStore, cueId: string): void {
  const { dismissed } = store.getState().content;
  store.change(
    [{ kind: 'set', field: 'dismissed', value: [...dismissed, REFUSED + cueId] }],
    'refuse a chapter',
  );
}

/** Takes all refusals of this lesson back. */
export function forgetRefusals(store: DraftStore): void {
  const { dismissed } = store.getState().content;
  const kept = dismissed.filter((key) => !key.startsWith(REFUSED));
  store.change([{ kind: 'set', field: 'dismissed', value: kept }], 'offer refused chapters again');
}
