'use client';
/**
 * The transcript as a document. Only the rows near the window are there; the
 * row with the keyboard's place always is, so that focus is never lost by
 * scrolling. A row is drawn again when its own cue changes, and no other.
 */
import {
  type KeyboardEvent,
  type MouseEvent,
  useCallback,
  useEffect,
  useImperativeHandle,
  useMemo,
  useRef,
  useState,
} from 'react';
import { snapPlaces } from '#lib/chapters/snap.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { offsetToMs, wordStart } from '#lib/transcript/word-times.ts';
import { useDraftPart } from '../draft.client.tsx';
import { ChapterRow } from './chapter-row.client.tsx';
import { CueEditor } from './cue-editor.client.tsx';
import { CueRow, type Mark } from './cue-row.client.tsx';
import { CueTools } from './cue-tools.client.tsx';
import styles from './document.module.css';
import { cueIndexAt } from './document-items.ts';
import type { MarkUp } from './mark-up.ts';
import type { PlayedRecording } from './picture.client.tsx';
import type { Player } from './player.ts';
import { textOffsetAt } from './text-offset.ts';
import { useCurrentCueId } from './use-current-cue.ts';
import { useDocumentList } from './use-document-list.ts';
import { useFollowing } from './use-following.ts';

/** What the rest of the screen asks of the document. */
export interface DocumentHandle {
  /** Brings an item into view and gives it the keyboard. */
  goTo(id: string, options?: { readonly edit?: number; readonly title?: boolean }): void;
  /** Brings an item into view; the keyboard stays where it is. */
  show(id: string): void;
  /** Brings the cue that is played into view, and keeps it there. */
  follow(): void;
  readonly activeId: () => string | null;
}

export interface DocumentProps {
  readonly ref: React.Ref<DocumentHandle>;
  readonly player: Player;
  readonly markUp: MarkUp;
  readonly recording: PlayedRecording | null;
  readonly peaks: Uint8Array | null;
  readonly marks: ReadonlyMap<string, readonly Mark[]>;
  /** Height of what lies over the window's top, px. */
  readonly coveredTop: () => number;
  readonly onFollowing: (following: boolean) => void;
}

/** Keys that go to another cue, and how many cues further that is. */
const ARROWS: Readonly<Record<string, number>> = { ArrowDown: 1, ArrowUp: -1 };

interface Editing {
  readonly id: string;
  readonly caret: number;
}

export function Document(props: DocumentProps) {
  const { player, markUp, recording, peaks, marks, coveredTop, onFollowing } = props;
  const cues = useDraftPart((state) => state.cues);
  const chapters = useDraftPart((state) => state.content.chapters);
  const mayEdit = useDraftPart((state) => state.mayEdit);
  const list = useRef<HTMLOListElement>(null);
  const playhead = useRef<HTMLSpanElement>(null);
  const caret = useRef(0);
  const [activeId, setActiveId] = useState<string | null>(null);
  const [anchorId, setAnchorId] = useState<string | null>(null);
  const [editing, setEditing] = useState<Editing | null>(null);
  const currentId = useCurrentCueId(player, cues);

  const cueIndex = useMemo(() => new Map(cues.map((cue, at) => [cue.id, at])), [cues]);
  const { items, indexById, virtualizer, margin, scrollTo } = useDocumentList(list, {
    cues,
    chapters,
    activeId,
    coveredTop,
  });
  const { join, follow } = useFollowing({
    player,
    currentId,
    indexById,
    isEditing: editing !== null,
    scrollTo,
    onFollowing,
  });
  const firstCueId = cues[0]?.id ?? null;
  const stopId = activeId !== null && cueIndex.has(activeId) ? activeId : firstCueId;

  // The keyboard goes to a row once it is there.
  const wanted = useRef<{ readonly id: string; readonly title: boolean } | null>(null);
  useEffect(() => {
    const to = wanted.current;
    if (!to) return;
    const selector = to.title
      ? `[data-chapter-title="${CSS.escape(to.id)}"]`
      : `[data-text="${CSS.escape(to.id)}"]`;
    const element = list.current?.querySelector<HTMLElement>(selector);
    if (!element) return;
    wanted.current = null;
    element.focus({ preventScroll: true });
  });

  const goTo = useCallback((id: string, { edit, title = false }: { edit?: number; title?: boolean } = {}) => {
    setActiveId(title ? `chapter ${id}` : id);
    setAnchorId(null);
    setEditing(edit === undefined ? null : { id, caret: edit });
    wanted.current = edit === undefined ? { id, title } : null;
    setScrollWish({ id: title ? `chapter ${id}` : id });
  }, []);
  const show = useCallback((id: string) => setScrollWish({ id }), []);
  const [scrollWish, setScrollWish] = useState<{ readonly id: string } | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a wish is granted once, with the items of its moment
  useEffect(() => {
    const at = scrollWish && indexById.get(scrollWish.id);
    if (at !== null && at !== undefined) scrollTo(at, 'near');
  }, [scrollWish]);

  const splitHere = useCallback(() => {
    if (!editing) return;
    const second = markUp.split(
      editing.id,
      caret.current,
      heardIn(player, cues[cueIndex.get(editing.id) ?? -1]),
    );
    if (second) goTo(second, { edit: 0 });
  }, [editing, markUp, player, cues, cueIndex, goTo]);

  useImperativeHandle(props.ref, () => ({ goTo, show, follow, activeId: () => stopId }), [
    goTo,
    show,
    follow,
    stopId,
  ]);

  useEffect(
    () =>
      player.onTick((ms) => {
        const cue = cues[cueIndexAt(cues, ms)];
        const mark = playhead.current;
        if (!cue || !mark) return;
        const share = (ms - cue.startMs) / (cue.endMs - cue.startMs);
        mark.style.top = `${Math.min(Math.max(share, 0), 1) * 100}%`;
      }),
    [player, cues],
  );

  const pauses = recording?.pauses;
  const places = useMemo(() => {
    let made: readonly number[] | null = null;
    return () => {
      made ??= snapPlaces(cues, pauses ?? []);
      return made;
    };
  }, [cues, pauses]);

  const momentAt = useCallback(
    (clientY: number): number | null => {
      for (const sound of list.current?.querySelectorAll<HTMLElement>('[data-sound]') ?? []) {
        const box = sound.getBoundingClientRect();
        if (clientY > box.bottom) continue;
        const cue = cues[cueIndex.get(sound.dataset['sound'] ?? '') ?? -1];
        if (!cue) return null;
        const share = Math.max(0, (clientY - box.top) / box.height);
        return cue.startMs + Math.round((cue.endMs - cue.startMs) * share);
      }
      return cues.at(-1)?.endMs ?? null;
    },
    [cues, cueIndex],
  );

  const chosen = useMemo((): readonly [number, number] | null => {
    const a = anchorId === null ? undefined : cueIndex.get(anchorId);
    const b = activeId === null ? undefined : cueIndex.get(activeId);
    return a === undefined || b === undefined || a === b ? null : [Math.min(a, b), Math.max(a, b) + 1];
  }, [anchorId, activeId, cueIndex]);

  const setChapter = useCallback(
    (ms: number) => goTo(markUp.setChapter(ms), { title: true }),
    [markUp, goTo],
  );

  const goOn = useCallback(
    (chapterId: string) => {
      const from = (indexById.get(`chapter ${chapterId}`) ?? 0) + 1;
      const cue =
        items.slice(from).find((item) => item.kind === 'cue') ??
        items.findLast((item) => item.kind === 'cue');
      if (cue) goTo(cue.id);
    },
    [items, indexById, goTo],
  );

  const onClick = (event: MouseEvent) => {
    const text = event.target instanceof Element ? event.target.closest<HTMLElement>('[data-text]') : null;
    const cue = text && cues[cueIndex.get(text.dataset['text'] ?? '') ?? -1];
    if (!text || !cue) return;
    if (event.shiftKey && stopId) {
      setAnchorId(anchorId ?? stopId);
      setActiveId(cue.id);
      return;
    }
    setActiveId(cue.id);
    setAnchorId(null);
    const offset = textOffsetAt(text, event.clientX, event.clientY);
    join();
    player.playFrom(offsetToMs(cue, wordStart(cue.text, offset ?? 0)));
  };
  const onDoubleClick = (event: MouseEvent) => {
    const text = event.target instanceof Element ? event.target.closest<HTMLElement>('[data-text]') : null;
    const id = text?.dataset['text'];
    if (!mayEdit || !text || !id) return;
    goTo(id, { edit: textOffsetAt(text, event.clientX, event.clientY) ?? 0 });
  };
  const onKey = (event: KeyboardEvent) => {
    const id = event.target instanceof HTMLElement ? event.target.dataset['text'] : undefined;
    if (id === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
    const at = cueIndex.get(id) ?? 0;
    const by = ARROWS[event.key];
    const next = by === undefined ? undefined : cues[at + by];
    if (event.key === 'Enter' && mayEdit) goTo(id, { edit: cues[at]?.text.length ?? 0 });
    else if (event.key === ' ') player.playFrom(cues[at]?.startMs ?? 0);
    else if (next) {
      const anchor = event.shiftKey ? (anchorId ?? id) : null;
      goTo(next.id);
      setAnchorId(anchor);
    } else return;
    event.preventDefault();
  };

  return (
    <ol
      ref={list}
      aria-label="Transcript"
      className={styles.document}
      style={{ height: virtualizer.getTotalSize() }}
      onClick={onClick}
      onDoubleClick={onDoubleClick}
      onKeyDown={onKey}
    >
      {virtualizer.getVirtualItems().map(({ index, start, key }) => {
        const item = items[index];
        if (!item) return null;
        return (
          <li
            key={key}
            ref={virtualizer.measureElement}
            data-index={index}
            aria-setsize={items.length}
            aria-posinset={index + 1}
            style={{ top: start - margin }}
          >
            {item.kind === 'chapter' ? (
              <ChapterRow
                chapter={item.chapter}
                mayEdit={mayEdit}
                markUp={markUp}
                places={places}
                momentAt={momentAt}
                goOn={goOn}
              />
            ) : (
              <CueRow
                cue={item.cue}
                pauseMs={item.pauseMs}
                peaks={peaks}
                marks={marks.get(item.id)}
                isCurrent={item.id === currentId}
                isActive={item.id === stopId}
                isChosen={isIn(chosen, cueIndex.get(item.id))}
                playhead={playhead}
                editor={
                  editing?.id === item.id ? (
                    <CueEditor
                      key={item.id}
                      cue={item.cue}
                      caret={editing.caret < 0 ? item.cue.text.length + editing.caret : editing.caret}
                      markUp={markUp}
                      heardMs={() => heardIn(player, item.cue) ?? null}
                      leave={(to, at) => {
                        if (to === '') setEditing(null);
                        else goTo(to, at === undefined ? {} : { edit: at });
                      }}
                      onCaret={(at) => {
                        caret.current = at;
                      }}
                    />
                  ) : null
                }
                tools={
                  mayEdit && item.id === activeId ? (
                    <CueTools
                      cue={item.cue}
                      markUp={markUp}
                      isEditing={editing?.id === item.id}
                      chosen={chosen}
                      index={cueIndex.get(item.id) ?? 0}
                      count={cues.length}
                      edit={() => goTo(item.id, { edit: item.cue.text.length })}
                      split={splitHere}
                      goTo={(id, at) => goTo(id, at === undefined ? {} : { edit: at })}
                      setChapter={setChapter}
                    />
                  ) : null
                }
              />
            )}
          </li>
        );
      })}
    </ol>
  );
}

const isIn = (span: readonly [number, number] | null, at: number | undefined): boolean =>
  span !== null && at !== undefined && at >= span[0] && at < span[1];

/** The playing place, where it lies inside the cue while it plays: the moment of a split that was heard. */
function heardIn(player: Player, cue: Cue | undefined): number | undefined {
  const ms = player.timeMs();
  return cue && player.getState().playing && ms > cue.startMs && ms < cue.endMs ? ms : undefined;
}
