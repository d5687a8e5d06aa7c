/** What a teacher does to cues and chapters, as changes of the draft under the names that undo shows. */
import { takeSuggestions } from '#lib/glossary/decide.ts';
import type { Suggestion } from '#lib/glossary/suggestion.ts';
import type { Change } from '#lib/lesson/change.ts';
import type { Chapter } from '#lib/lesson/content.ts';
import { LONGEST_MS } from '#lib/time/longest-time.ts';
import type { Span } from '#lib/time/time.ts';
import type { CaptionProfile } from '#lib/transcript/caption-profile.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import {
  type CueEdit,
  cueAfter,
  editCue,
  joinCues,
  retimeCue,
  shiftCues,
  splitCue,
} from '#lib/transcript/edit-cues.ts';
import { type Found, replaceFound } from '#lib/transcript/find-text.ts';
import { fitCaptions } from '#lib/transcript/fit-captions.ts';
import { hearStart, spreadAgain, takeTimes } from '#lib/transcript/spread-script.ts';
import { wordStart } from '#lib/transcript/word-times.ts';
import type { DraftStore } from '../draft-store.ts';

export type MarkUp = ReturnType<typeof createMarkUp>;

/** @param speech where speech was found in the sound; empty without a recording */
export function createMarkUp(store: DraftStore, newId: () => string, speech: readonly Span[]) {
  const cues = () => store.getState().cues;
  const indexOf = (id: string) => cues().findIndex((cue) => cue.id === id);
  const make = (edit: CueEdit | null, label: string, run?: string): boolean => {
    if (!edit || edit.put.length + edit.remove.length === 0) return false;
    store.change([{ kind: 'cues', ...edit }], label, run);
    return true;
  };
  const putChapter = (chapter: Chapter, label: string, run?: string) => {
    const change: Change = { kind: 'put', list: 'chapters', item: { ...chapter } };
    store.change([change], label, run);
  };
  const join = (first: Cue | undefined, second: Cue | undefined): string | null =>
    first && second && make(joinCues(first, second), 'join cues') ? first.id : null;

  return {
    /** @param run names one stay in the field, so that it is undone at once. */
    edit(id: string, typed: string, run: string) {
      const cue = cues()[indexOf(id)];
      if (!cue) return;
      const edit = editCue(cue, typed, newId);
      if (edit.put[0]?.text !== cue.text) make(edit, 'mend text', run);
    },
    /** Splits before the word at the offset. @returns the id of the second part, or null where nothing was split. */
    split(id: string, offset: number, atMs?: number): string | null {
      const cue = cues()[indexOf(id)];
      const second = newId();
      return cue && make(splitCue(cue, wordStart(cue.text, offset), second, atMs), 'split cue')
        ? second
        : null;
    },
    /** @returns the id of the cue that both became, or null. */
    joinWithNext: (id: string) => join(cues()[indexOf(id)], cues()[indexOf(id) + 1]),
    joinWithFormer: (id: string) => join(cues()[indexOf(id) - 1], cues()[indexOf(id)]),
    remove: (id: string) => make({ put: [], remove: [id] }, 'delete cue'),
    insertAfter(id: string | null): string {
      const fresh = newId();
      const at = id === null ? -1 : indexOf(id);
      make(cueAfter(cues()[at] ?? null, cues()[at + 1] ?? null, fresh), 'insert cue');
      return fresh;
    },
    retime(id: string, times: { startMs?: number; endMs?: number }) {
      const cue = cues()[indexOf(id)];
      if (!cue) return;
      // In a transcript that is only spread, a start that is set brings its neighbours along.
      if (cue.timing && times.startMs !== undefined && times.endMs === undefined)
        make(hearStart(cues(), id, inReach(times.startMs), speech), 'hear where a cue begins');
      else make(retimeCue(cue, times), 'move edge of cue');
    },
    shift(from: number, to: number, byMs: number) {
      const some = cues().slice(from, to);
      make(shiftCues(some, byMs), some.length === 1 ? 'shift cue' : `shift ${some.length} cues`);
    },
    replace(found: readonly Found[], instead: string) {
      make(
        replaceFound(cues(), found, instead, newId),
        found.length === 1 ? 'replace words' : `replace words in ${found.length} places`,
      );
    },
    /** Spreads cues whose times are approximate over the speech once more. */
    spread: () => make(spreadAgain(cues(), speech), 'spread the script'),
    /** Takes approximate times as they are. */
    takeTimes: () => make(takeTimes(cues()), 'take the times as they are'),
    /** Breaks and times captions anew for a profile. @returns how many cues changed or went */
    fitCaptions(profile: CaptionProfile): number {
      const edit = fitCaptions(cues(), profile, newId);
      make(edit, 'break and time captions');
      return edit.put.length + edit.remove.length;
    },
    /** Takes suggestions; places that read differently by now are left. */
    take(taken: readonly Suggestion[]) {
      make(
        takeSuggestions(cues(), taken, newId),
        taken.length === 1 ? 'take a suggestion' : `take ${taken.length} suggestions`,
      );
    },
    /** Leaves suggestions, so that this lesson does not offer them again. */
    leave(keys: readonly string[]) {
      const { dismissed } = store.getState().content;
      const value = [...new Set([...dismissed, ...keys])];
      store.change([{ kind: 'set', field: 'dismissed', value }], 'leave a suggestion');
    },
    /** Sets a chapter; where one starts at that very moment already, that one is told instead. */
    setChapter(atMs: number): string {
      const { chapters } = store.getState().content;
      const startMs = Math.min(Math.max(Math.round(atMs), 0), LONGEST_MS);
      const there = chapters.find((chapter) => chapter.startMs === startMs);
      if (there) return there.id;
      const id = newId();
      putChapter(
        { id, kind: chapters.length === 0 ? 'opening' : 'setup', title: '', startMs },
        'set chapter',
      );
      return id;
    },
    nameChapter: (chapter: Chapter, title: string, run: string) =>
      putChapter({ ...chapter, title }, 'chapter title', run),
    sortChapter: (chapter: Chapter, kind: Chapter['kind']) =>
      putChapter({ ...chapter, kind }, 'chapter kind'),
    moveChapter(chapter: Chapter, atMs: number) {
      const startMs = Math.min(Math.max(Math.round(atMs), 0), LONGEST_MS);
      if (startMs !== chapter.startMs) putChapter({ ...chapter, startMs }, 'move chapter');
    },
    removeChapter: (id: string) => store.change([{ kind: 'remove', list: 'chapters', id }], 'delete chapter'),
  };
}

const inReach = (ms: number): number => Math.min(Math.max(Math.round(ms), 0), LONGEST_MS - 60_000);
