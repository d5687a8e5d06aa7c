'use client';
/**
 * The text of a cue while it is written. Every letter is a change of the
 * draft at once, all of one stay a single step of undo; while the field has
 * the keyboard, undo is the browser's own.
 */
import { type KeyboardEvent, useEffect, useId, useLayoutEffect, useRef, useState } from 'react';
import { formatTimeCode } from '#lib/time/time-code.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { tidyCueText } from '#lib/transcript/tidy-text.ts';
import styles from './cue-row.module.css';
import type { MarkUp } from './mark-up.ts';

export interface CueEditorProps {
  readonly cue: Cue;
  /** Where the caret goes first. */
  readonly caret: number;
  readonly markUp: MarkUp;
  /** Where a split is made, ms, or null for the pace of the cue. */
  readonly heardMs: () => number | null;
  /** The text is done with; the keyboard goes to this cue, to edit on at `caret` where given. */
  readonly leave: (to: string, caret?: number) => void;
  readonly onCaret: (caret: number) => void;
}

export function CueEditor({ cue, caret, markUp, heardMs, leave, onCaret }: CueEditorProps) {
  const field = useRef<HTMLTextAreaElement>(null);
  const [typed, setTyped] = useState(cue.text);
  const run = useId();
  // A stay in the field has a name of its own, though the field may come to the same cue again.
  const [stay] = useState(() => `${run} ${performance.now()}`);
  const shown = useRef(cue.text);

  useEffect(() => {
    const element = field.current;
    element?.focus({ preventScroll: true });
    element?.setSelectionRange(caret, caret);
  }, [caret]);

  // The draft may change from elsewhere (find and replace, another window): take that over.
  useEffect(() => {
    if (cue.text !== shown.current) {
      shown.current = cue.text;
      setTyped(cue.text);
    }
  }, [cue.text]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: the height follows what is typed
  useLayoutEffect(() => {
    const element = field.current;
    if (!element) return;
    element.style.height = 'auto';
    element.style.height = `${element.scrollHeight}px`;
  }, [typed]);

  const write = (text: string) => {
    setTyped(text);
    markUp.edit(cue.id, text, stay);
    // What is too long for one cue comes back shorter: its rest has become cues of its own.
    shown.current = tidyCueText(text);
  };

  const onKey = (event: KeyboardEvent<HTMLTextAreaElement>) => {
    const act = editorAct(event);
    if (!act) return;
    event.preventDefault();
    const { selectionStart, value } = event.currentTarget;
    switch (act) {
      case 'split': {
        const second = markUp.split(
          cue.id,
          offsetIn(cue.text, value, selectionStart),
          heardMs() ?? undefined,
        );
        if (second) leave(second, 0);
        return;
      }
      case 'done':
        return leave(cue.id);
      case 'join-former': {
        const former = markUp.joinWithFormer(cue.id);
        if (former) leave(former, -cue.text.length);
        return;
      }
      case 'join-next': {
        const at = cue.text.length;
        if (markUp.joinWithNext(cue.id)) leave(cue.id, at);
      }
    }
  };

  return (
    <textarea
      ref={field}
      className={styles.editor}
      aria-label={`Text of the cue at ${formatTimeCode(cue.startMs)}`}
      data-editor={cue.id}
      value={typed}
      rows={1}
      onChange={(event) => write(event.target.value)}
      onKeyDown={onKey}
      onSelect={(event) => onCaret(event.currentTarget.selectionStart)}
      onBlur={(event) => {
        // The tools of this very cue may be used with the caret where it is.
        const to = event.relatedTarget;
        if (
          document.hasFocus() &&
          !(to instanceof Element && to.closest(`[data-cue="${CSS.escape(cue.id)}"]`))
        )
          leave('');
      }}
    />
  );
}

/** An offset in what is typed as one in the cue's text, which has no spaces around it. */
const offsetIn = (text: string, typed: string, offset: number): number =>
  Math.min(text.length, Math.max(0, offset - (typed.length - typed.trimStart().length)));

/** What a key does beyond writing, or null. */
function editorAct(
  event: KeyboardEvent<HTMLTextAreaElement>,
): 'split' | 'done' | 'join-former' | 'join-next' | null {
  if (event.nativeEvent.isComposing) return null;
  const { selectionStart, selectionEnd, value } = event.currentTarget;
  const mod = event.ctrlKey || event.metaKey;
  if (event.key === 'Enter') return mod ? 'split' : event.shiftKey ? null : 'done';
  if (event.key === 'Escape') return 'done';
  if (mod || selectionStart !== selectionEnd) return null;
  if (event.key === 'Backspace' && selectionStart === 0) return 'join-former';
  return event.key === 'Delete' && selectionStart === value.length ? 'join-next' : null;
}
