/**
 * Undo and redo of one window. A step is what a person did at once, under the
 * name that the undo button shows. It keeps the changes that take it back;
 * those are changes like any other, saved like any other.
 */
import { applyChange, type Change, type Draft, inverseOf, keysOf } from './change.ts';
import type { Touched } from './pending.ts';

/** Steps that are kept; the oldest go first. */
export const MOST_STEPS = 500;
/** Longest break within one run of typing, ms. */
export const TYPING_BREAK_MS = 2_000;

export interface Step {
  readonly label: string;
  /** Takes the step back, in the order to be made. */
  readonly back: readonly Change[];
  readonly keys: readonly string[];
  /** When it was last added to, ms of the window's own clock. */
  readonly atMs: number;
  /** Whether further typing in the same place may join it. */
  readonly open: boolean;
  readonly run?: string | undefined;
}

export interface History {
  readonly done: readonly Step[];
  readonly undone: readonly Step[];
}

export const noHistory: History = { done: [], undone: [] };

/** What a step does to history and draft, and the changes to be saved for it. */
export interface Moved {
  readonly history: History;
  readonly draft: Draft;
  readonly changes: readonly Change[];
}

export interface StepOptions {
  /** What the undo button calls the step. */
  readonly label: string;
  readonly atMs: number;
  /** Names one stay in one field: all that is typed in it is one step, however slowly. */
  readonly run?: string | undefined;
}

/**
 * Makes changes as one step. A single change of the same thing under the same
 * label shortly after the last one joins its step, so that typing a sentence
 * is undone at once.
 */
export function makeStep(
  history: History,
  draft: Draft,
  changes: readonly Change[],
  { label, atMs, run }: StepOptions,
): Moved {
  const { after, back } = applyAll(draft, changes);
  const keys = [...new Set(changes.flatMap((made) => keysOf(made)))];
  const open = changes.length === 1 && keys.length === 1 && changes[0]?.kind !== 'remove';
  const last = history.done.at(-1);
  const joins =
    last?.open === true &&
    open &&
    last.label === label &&
    last.keys[0] === keys[0] &&
    last.run === run &&
    (run !== undefined || atMs - last.atMs <= TYPING_BREAK_MS);
  const done = joins
    ? history.done.with(-1, { ...last, atMs })
    : [...history.done, { label, back, keys, atMs, open, run }].slice(-MOST_STEPS);
  return { history: { done, undone: [] }, draft: after, changes };
}

/** Takes the last step back; null where there is none. */
export function undoStep(history: History, draft: Draft): Moved | null {
  const step = history.done.at(-1);
  if (!step) return null;
  const { after, back } = applyAll(draft, step.back);
  return {
    history: {
      done: history.done.slice(0, -1),
      undone: [...history.undone, { ...step, back, open: false }],
    },
    draft: after,
    changes: step.back,
  };
}

/** Makes the step taken back last once more; null where there is none. */
export function redoStep(history: History, draft: Draft): Moved | null {
  const step = history.undone.at(-1);
  if (!step) return null;
  const { after, back } = applyAll(draft, step.back);
  return {
    history: { done: [...history.done, { ...step, back }], undone: history.undone.slice(0, -1) },
    draft: after,
    changes: step.back,
  };
}

/**
 * History after others changed these keys: steps that would overwrite what
 * they did can no longer be taken back.
 */
export function forgetSteps(history: History, touched: Touched): History {
  const safe = (step: Step) => touched !== 'everything' && !step.keys.some((key) => touched.has(key));
  return { done: history.done.filter(safe), undone: history.undone.filter(safe) };
}

function applyAll(draft: Draft, changes: readonly Change[]): { after: Draft; back: readonly Change[] } {
  let after = draft;
  const back: Change[] = [];
  for (const made of changes) {
    back.unshift(inverseOf(after, made));
    after = applyChange(after, made);
  }
  return { after, back };
}
