/** Tells living windows of this browser apart from those that are gone. */

const KEY = 'benchleaf.window';
const lockName = (windowId: string) => `${KEY}/${windowId}`;
const heldHere = new Set<string>();

/**
 * An id that survives a reload and that no other living window has: a lock
 * under its name is held as long as the window lives. A duplicated tab comes
 * with its twin's id and gets a new one.
 */
export async function claimWindowId(newId: () => string): Promise<string> {
  const before = sessionStorage.getItem(KEY);
  const id = before && (await hold(before)) ? before : newId();
  if (id !== before) await hold(id);
  sessionStorage.setItem(KEY, id);
  return id;
}

/** Ids of windows that live; empty where the browser cannot tell (a site without https has no locks). */
export async function livingWindows(): Promise<ReadonlySet<string>> {
  if (!navigator.locks) return new Set();
  const { held } = await navigator.locks.query();
  const start = lockName('');
  return new Set(
    (held ?? []).flatMap(({ name }) => (name?.startsWith(start) ? [name.slice(start.length)] : [])),
  );
}

function hold(windowId: string): Promise<boolean> {
  if (!navigator.locks || heldHere.has(windowId)) return Promise.resolve(true);
  return new Promise((resolve) => {
    void navigator.locks.request(lockName(windowId), { ifAvailable: true }, (lock) => {
      resolve(lock !== null);
      if (!lock) return null;
      heldHere.add(windowId);
      // Never settles: the lock goes with the window.
      return new Promise(() => {});
    });
  });
}
