'use client';
/**
 * Gives every screen of a lesson its draft: `useDraft()`. Opens it, saves what
 * changes (shortly after the last change, at once when the window is left),
 * and listens for undo and redo.
 */
import {
  createContext,
  type ReactNode,
  useContext,
  useEffect,
  useMemo,
  useRef,
  useState,
  useSyncExternalStore,
} from 'react';
import { keepNothing, openKeep } from './draft-keep.ts';
import { createDraftStore, type DraftState, type DraftStore } from './draft-store.ts';
import { fetchDraft, sendSave } from './send-save.ts';
import { isWritten } from './typing.ts';

const DraftContext = createContext<DraftStore | null>(null);

export interface DraftProviderProps {
  /** Address of the route that reads and saves the draft. */
  readonly address: string;
  readonly lessonId: string;
  readonly userId: string;
  readonly mayEdit: boolean;
  readonly children: ReactNode;
}

const newId = () => crypto.randomUUID();

export function DraftProvider({ address, lessonId, userId, mayEdit, children }: DraftProviderProps) {
  const [store, setStore] = useState<DraftStore | null>(null);
  const [failedStatus, setFailedStatus] = useState<number | null>(null);
  const [attempt, setAttempt] = useState(0);

  useEffect(() => {
    let opened: DraftStore | null = null;
    let gone = false;
    void attempt;
    const open = async () => {
      setFailedStatus(null);
      const [found, keep] = await Promise.all([
        fetchDraft(address),
        mayEdit ? openKeep(userId, lessonId, newId) : keepNothing,
      ]);
      if (gone) return;
      if (!found.ok) {
        setFailedStatus(found.status);
        return;
      }
      opened = createDraftStore({
        draft: found.value,
        mayEdit,
        keep,
        send: (version, sending) => sendSave(address, version, sending),
        load: async () => {
          const again = await fetchDraft(address);
          return again.ok ? again.value : null;
        },
        newId,
        nowMs: () => performance.now(),
      });
      await opened.start();
      if (gone) opened.close();
      else setStore(opened);
    };
    void open();
    return () => {
      gone = true;
      opened?.saveNow();
      opened?.close();
    };
  }, [address, lessonId, userId, mayEdit, attempt]);

  if (!store) {
    return (
      <main className="page">
        {failedStatus === null ? (
          <p role="status">Opening the lesson…</p>
        ) : (
          <div className="notice alarm" role="alert">
            <p>{openingFault(failedStatus)}</p>
            <button type="button" className="quiet" onClick={() => setAttempt(attempt + 1)}>
              Try again
            </button>
          </div>
        )}
      </main>
    );
  }
  return (
    <DraftContext.Provider value={store}>
      <SaveWhenLeft store={store} />
      <UndoKeys store={store} />
      {children}
    </DraftContext.Provider>
  );
}

const openingFault = (status: number): string =>
  status === 401
    ? 'You are signed out. Sign in in another window, then try again here.'
    : status === 404
      ? 'This lesson is not there any more.'
      : 'The lesson could not be opened. Look at your connection and try again.';

/** The lesson's draft, and what can be done to it. Renders again with every change of it. */
export function useDraft(): DraftState &
  Pick<DraftStore, 'change' | 'undo' | 'redo' | 'saveNow' | 'refresh'> {
  const store = useDraftStore();
  const state = useSyncExternalStore(store.subscribe, store.getState, store.getState);
  return useMemo(
    () => ({
      ...state,
      change: store.change,
      undo: store.undo,
      redo: store.redo,
      saveNow: store.saveNow,
      refresh: store.refresh,
    }),
    [state, store],
  );
}

/** One part of the draft's state; renders again only when that part is another one. */
export function useDraftPart<T>(pick: (state: DraftState) => T): T {
  const store = useDraftStore();
  const read = () => pick(store.getState());
  return useSyncExternalStore(store.subscribe, read, read);
}

/** The store itself, for what reads it when something happens and need not render again. */
export function useDraftStore(): DraftStore {
  const store = useContext(DraftContext);
  if (!store) throw new Error('useDraft stands inside a DraftProvider');
  return store;
}

function SaveWhenLeft({ store }: { store: DraftStore }) {
  useEffect(() => {
    const saveNow = () => store.saveNow();
    const whenHidden = () => {
      if (document.visibilityState === 'hidden') store.saveNow();
    };
    const whenFieldLeft = (event: FocusEvent) => {
      if (isWritten(event.target)) store.saveNow();
    };
    document.addEventListener('focusout', whenFieldLeft);
    window.addEventListener('blur', saveNow);
    window.addEventListener('pagehide', saveNow);
    window.addEventListener('online', saveNow);
    document.addEventListener('visibilitychange', whenHidden);
    return () => {
      document.removeEventListener('focusout', whenFieldLeft);
      window.removeEventListener('blur', saveNow);
      window.removeEventListener('pagehide', saveNow);
      window.removeEventListener('online', saveNow);
      document.removeEventListener('visibilitychange', whenHidden);
    };
  }, [store]);
  return null;
}

/** Ctrl or Cmd with Z, with Shift+Z or with Y; text fields keep their own undo while they are written in. */
function UndoKeys({ store }: { store: DraftStore }) {
  const held = useRef(store);
  held.current = store;
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || event.defaultPrevented) return;
      const key = event.key.toLowerCase();
      if (key !== 'z' && key !== 'y') return;
      if (isWritten(event.target) || document.querySelector('dialog[open]')) return;
      event.preventDefault();
      if (key === 'y' || event.shiftKey) held.current.redo();
      else held.current.undo();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
  return null;
}
