/**
 * The status of a page that finds nothing. Next lets a page only throw, and
 * then sends a body that stays empty until script has run; this way it says
 * its sentence in words and its status at once. Pages and the server are two
 * programs within one process, each with modules of its own; so they meet in
 * the process itself.
 */
import { AsyncLocalStorage } from 'node:async_hooks';

export interface Told {
  /** Nothing is here (404), or no longer (410); null where all is well. */
  status: 404 | 410 | null;
}

declare global {
  var benchleafTold: AsyncLocalStorage<Told> | undefined;
}

const requests = (): AsyncLocalStorage<Told> => {
  const known = globalThis.benchleafTold ?? new AsyncLocalStorage<Told>();
  globalThis.benchleafTold = known;
  return known;
};

/** Answers a request; `told` holds what its page says of its status. */
export const whileListening = <T>(told: Told, answer: () => T): T => requests().run(told, answer);

/** Says with which status the page that is being written is answered. */
export function tellStatus(status: 404 | 410): void {
  const told = requests().getStore();
  if (told) told.status = status;
}
