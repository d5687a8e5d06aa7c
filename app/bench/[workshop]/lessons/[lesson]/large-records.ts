/** Texts too large for localStorage, in IndexedDB, by key. */

const STORE = 'unsaved';

/**
 * Calls run one after the other, so that the last write wins. A browser
 * without IndexedDB (some private windows) keeps nothing and says nothing:
 * saving itself goes on.
 */
export const largeRecords = {
  write: (key: string, text: string) =>
    inTurn(() => within('readwrite', (store) => store.put(text, key)), null),
  remove: (key: string) => inTurn(() => within('readwrite', (store) => store.delete(key)), null),
  async read(key: string): Promise<string | null> {
    const value = await inTurn<unknown>(() => within('readonly', (store) => store.get(key)), null);
    return typeof value === 'string' ? value : null;
  },
  async keys(prefix: string): Promise<readonly string[]> {
    const keys = await inTurn<IDBValidKey[]>(() => within('readonly', (store) => store.getAllKeys()), []);
    return keys.map(String).filter((key) => key.startsWith(prefix));
  },
};

let last: Promise<unknown> = Promise.resolve();

function inTurn<T>(work: () => Promise<T>, otherwise: T): Promise<T> {
  const next = last.then(work).catch(() => otherwise);
  last = next;
  return next;
}

function open(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open('benchleaf', 1);
    request.onupgradeneeded = () => request.result.createObjectStore(STORE);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error('IndexedDB cannot be opened'));
  });
}

async function within<T>(
  mode: IDBTransactionMode,
  act: (store: IDBObjectStore) => IDBRequest<T>,
): Promise<T> {
  const db = await open();
  try {
    return await new Promise<T>((resolve, reject) => {
      const request = act(db.transaction(STORE, mode).objectStore(STORE));
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error ?? new Error('IndexedDB refused'));
    });
  } finally {
    db.close();
  }
}
