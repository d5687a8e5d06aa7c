/**
 * The draft of one lesson in one window: shows every change at once, saves
 * them in order, keeps what is not acknowledged, and takes in what others
 * saved. It decides nothing by itself where two people changed the same thing.
 */
import type { SaveStateCode } from '#app/words/draft-words.ts';
import type { Change, Draft } from '#lib/lesson/change.ts';
import { forgetSteps, type History, makeStep, noHistory, redoStep, undoStep } from '#lib/lesson/history.ts';
import {
  acknowledge,
  addPending,
  type Collision,
  collisionsOf,
  isSettled,
  layOn,
  nothingPending,
  type Pending,
  sendAgain,
  startSending,
  type Touched,
  unacknowledged,
  withoutKeys,
} from '#lib/lesson/pending.ts';
import type { Keep, Left } from './draft-keep.ts';
import type { OtherSave, Refused, SaveAnswer, ServerDraft } from './send-save.ts';

/** How long after the last change it is saved, ms. */
const SAVE_AFTER_MS = 600;
/** Breaks between attempts while nothing answers, ms; the last one repeats. */
const RETRY_MS = [2_000, 4_000, 8_000, 15_000, 30_000];

/** What happened without the person's doing and is told to them. */
export type DraftNote =
  | { readonly kind: 'taken-in'; readonly by: readonly string[]; readonly ownWindow: boolean }
  | { readonly kind: 'taken-up'; readonly count: number };

/** Own changes and others' changes of the same things; nothing is saved until it is decided. */
export interface Collided {
  readonly collisions: readonly Collision[];
  readonly mine: Draft;
  readonly theirs: ServerDraft;
  readonly saves: readonly OtherSave[];
}

export interface DraftState extends Draft {
  readonly version: number;
  readonly saveState: SaveStateCode;
  readonly mayEdit: boolean;
  /** What undo would take back, or null. */
  readonly undoLabel: string | null;
  readonly redoLabel: string | null;
  readonly note: DraftNote | null;
  readonly collided: Collided | null;
  readonly refused: Refused | null;
}

export interface DraftStoreOptions {
  readonly draft: ServerDraft;
  readonly mayEdit: boolean;
  readonly keep: Keep;
  readonly send: (baseVersion: number, sending: NonNullable<Pending['sending']>) => Promise<SaveAnswer>;
  readonly load: () => Promise<ServerDraft | null>;
  readonly newId: () => string;
  readonly nowMs: () => number;
}

export type DraftStore = ReturnType<typeof createDraftStore>;

export function createDraftStore(options: DraftStoreOptions) {
  const { keep, mayEdit } = options;
  let draft: Draft = { content: options.draft.content, cues: options.draft.cues };
  let pending: Pending = nothingPending(options.draft.version);
  // The newest version that this window has seen whole; `pending.version` may lie behind it after a reload.
  let newestSeen = options.draft.version;
  let history: History = noHistory;
  let left: readonly Left[] = [];
  let collided: Collided | null = null;
  let refused: Refused | null = null;
  let note: DraftNote | null = null;
  let trouble: 'offline' | 'signed-out' | null = null;
  let busy = false;
  let failures = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let closed = false;
  let state = present();
  const listeners = new Set<() => void>();

  function present(): DraftState {
    return {
      ...draft,
      version: pending.version,
      mayEdit,
      saveState: saveState(),
      undoLabel: history.done.at(-1)?.label ?? null,
      redoLabel: history.undone.at(-1)?.label ?? null,
      note,
      collided,
      refused,
    };
  }

  function saveState(): SaveStateCode {
    if (!mayEdit) return 'read-only';
    if (collided) return 'collided';
    if (refused) return 'refused';
    if (trouble) return trouble;
    if (busy) return 'saving';
    return isSettled(pending) ? 'saved' : 'unsaved';
  }

  function publish() {
    state = present();
    for (const listener of listeners) listener();
  }

  const persist = () => keep.write(isSettled(pending) ? null : pending);

  function take(moved: { history: History; draft: Draft; changes: readonly Change[] } | null) {
    if (!moved || !mayEdit || moved.changes.length === 0) return;
    history = moved.history;
    draft = moved.draft;
    pending = addPending(pending, moved.changes);
    refused = null;
    persist();
    saveIn(SAVE_AFTER_MS);
    publish();
  }

  function saveIn(ms: number) {
    clearTimeout(timer);
    if (!closed) timer = setTimeout(() => void save(), ms);
  }

  async function save(): Promise<void> {
    clearTimeout(timer);
    if (busy || collided || refused || !mayEdit) return;
    pending = startSending(pending, options.newId());
    const { sending } = pending;
    if (!sending) return;
    persist();
    busy = true;
    publish();
    const answer = await options.send(pending.version, sending);
    busy = false;
    await hear(answer);
    persist();
    publish();
  }

  async function hear(answer: SaveAnswer): Promise<void> {
    if (answer.kind !== 'not-reached' && answer.kind !== 'signed-out') {
      trouble = null;
      failures = 0;
    }
    switch (answer.kind) {
      case 'saved':
        return arrived(answer.version);
      case 'newer':
        return meet(answer.newer, answer.saves);
      case 'refused':
        pending = sendAgain(pending, pending.version);
        refused = answer.why;
        return;
      case 'signed-out':
      case 'not-reached':
        trouble = answer.kind === 'signed-out' ? 'signed-out' : 'offline';
        saveIn(RETRY_MS[Math.min(failures, RETRY_MS.length - 1)] ?? 0);
        failures += 1;
    }
  }

  async function arrived(version: number): Promise<void> {
    pending = acknowledge(pending, version);
    if (version < newestSeen) {
      // The answer to a save from before a reload: others have saved since, and the draft shown at
      // the start already held both.
      const newest = await options.load();
      if (newest) {
        draft = layOn(newest, pending.waiting);
        if (isSettled(pending)) pending = nothingPending(newest.version);
        newestSeen = Math.max(newestSeen, newest.version);
      }
    }
    newestSeen = Math.max(newestSeen, pending.version);
    if (!isSettled(pending)) saveIn(0);
    else takeUpLeft();
  }

  function meet(newer: ServerDraft, saves: readonly OtherSave[]) {
    newestSeen = newer.version;
    const touched = touchedBy(saves, newer.version - pending.version);
    const collisions = collisionsOf(unacknowledged(pending), touched);
    if (collisions.length > 0) {
      collided = { collisions, mine: draft, theirs: newer, saves };
      return;
    }
    layOnTop(newer, unacknowledged(pending), touched);
    const others = saves.filter((save) => !save.own);
    note = {
      kind: 'taken-in',
      by: [...new Set(others.map((save) => save.by))],
      ownWindow: others.length === 0,
    };
  }

  function layOnTop(newer: ServerDraft, mine: readonly Change[], touched: Touched) {
    pending = sendAgain({ ...pending, sending: null, waiting: mine }, newer.version);
    draft = layOn(newer, mine);
    history = forgetSteps(history, touched);
    if (!isSettled(pending)) saveIn(0);
  }

  /** Goes on with what an earlier window could not save, one window's changes after another's. */
  function takeUpLeft() {
    const next = left[0];
    if (!next || !isSettled(pending)) return;
    left = left.slice(1);
    const changes = unacknowledged(next.pending);
    if (changes.length > 0) {
      const step = makeStep(history, draft, changes, {
        label: 'changes taken up again',
        atMs: options.nowMs(),
      });
      history = step.history;
      draft = step.draft;
      pending = next.pending;
      note = { kind: 'taken-up', count: changes.length };
      persist();
      saveIn(0);
    }
    next.forget();
    publish();
  }

  return {
    getState: () => state,
    subscribe(listener: () => void) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    /** Looks for changes that were kept by a window that is gone, and goes on with them. */
    async start() {
      left = mayEdit ? await keep.findLeft() : [];
      takeUpLeft();
    },
    /** Makes changes as one step that undo takes back under this label; see `makeStep` for `run`. */
    change(changes: readonly Change[], label: string, run?: string) {
      take(makeStep(history, draft, changes, { label, atMs: options.nowMs(), run }));
    },
    undo: () => take(undoStep(history, draft)),
    redo: () => take(redoStep(history, draft)),
    /** Saves what waits now rather than later. */
    saveNow: () => void save(),
    /** Reads the draft again, for instance after the server itself changed it; keeps own changes. */
    async refresh() {
      if (busy || !isSettled(pending)) return save();
      const newest = await options.load();
      if (!newest || busy || !isSettled(pending) || newest.version <= pending.version) return;
      newestSeen = newest.version;
      draft = { content: newest.content, cues: newest.cues };
      pending = nothingPending(newest.version);
      history = forgetSteps(history, 'everything');
      publish();
    },
    /** Settles collisions: those in `keepTheirs` (by place in the list) lose the own change, the rest win. */
    resolve(keepTheirs: ReadonlySet<number>) {
      if (!collided) return;
      const { collisions, theirs, saves } = collided;
      const dropped = new Set(collisions.flatMap((group, at) => (keepTheirs.has(at) ? group.keys : [])));
      const touched = touchedBy(saves, theirs.version - pending.version);
      collided = null;
      history = forgetSteps(history, dropped);
      layOnTop(theirs, withoutKeys(unacknowledged(pending), dropped), touched);
      persist();
      publish();
    },
    dismissNote() {
      note = null;
      publish();
    },
    close() {
      closed = true;
      clearTimeout(timer);
    },
  };
}

/** Keys that saves touched; everything, where not every version between is told. */
function touchedBy(saves: readonly OtherSave[], versions: number): Touched {
  return saves.length === versions ? new Set(saves.flatMap((save) => save.keys)) : 'everything';
}
