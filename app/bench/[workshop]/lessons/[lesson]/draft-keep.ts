/**
 * Keeps changes that are not acknowledged yet in the browser, so that a crash,
 * a dead battery or a closed window loses none of them. Small records lie in
 * localStorage, which is written at once; large ones in IndexedDB.
 */
import { z } from 'zod';
import { change } from '#lib/lesson/change.ts';
import type { Pending } from '#lib/lesson/pending.ts';
import { largeRecords } from './large-records.ts';
import { claimWindowId, livingWindows } from './window-id.ts';

const record = z.object({
  version: z.int().min(1),
  sending: z.object({ saveId: z.string(), changes: z.array(change) }).nullable(),
  waiting: z.array(change),
});

/** What a window that is gone, or this one before a reload, left behind. */
export interface Left {
  readonly pending: Pending;
  /** To be called once the changes are kept elsewhere. */
  readonly forget: () => void;
}

export interface Keep {
  /** Keeps the changes in place of what this window kept before; null forgets them. */
  write(pending: Pending | null): void;
  findLeft(): Promise<readonly Left[]>;
}

/** Keeps nothing: for people who only read. */
export const keepNothing: Keep = { write: () => {}, findLeft: async () => [] };

// Characters of JSON. Browsers give a site about 5 million in localStorage; a sixth of it is for one lesson.
const LARGEST_SMALL = 800_000;
// Large records are put together again at most this often, ms.
const LARGE_EVERY_MS = 200;

/** A keep for one person's changes of one lesson in this window. */
export async function openKeep(userId: string, lessonId: string, newId: () => string): Promise<Keep> {
  const prefix = `benchleaf.unsaved/${userId}/${lessonId}/`;
  const windowId = await claimWindowId(newId);
  const own = prefix + windowId;
  let isLarge = (await largeRecords.keys(own)).length > 0;
  let next: Pending | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;

  function writeNow() {
    timer = undefined;
    if (!next) return;
    const text = JSON.stringify(next);
    const wasLarge = isLarge;
    isLarge = text.length > LARGEST_SMALL || !writeSmall(own, text);
    if (isLarge) {
      void largeRecords.write(own, text).then(() => localStorage.removeItem(own));
    } else if (wasLarge) void largeRecords.remove(own);
  }

  return {
    write(pending) {
      next = pending;
      if (pending) {
        if (!isLarge) writeNow();
        else timer ??= setTimeout(writeNow, LARGE_EVERY_MS);
        return;
      }
      clearTimeout(timer);
      timer = undefined;
      localStorage.removeItem(own);
      if (isLarge) void largeRecords.remove(own);
      isLarge = false;
    },
    async findLeft() {
      const living = await livingWindows();
      const small = Object.keys(localStorage).filter((key) => key.startsWith(prefix));
      const keys = new Set([...small, ...(await largeRecords.keys(prefix))]);
      const found: Left[] = [];
      for (const key of keys) {
        if (key !== own && living.has(key.slice(prefix.length))) continue;
        const parsed = record.safeParse(
          parseOrNull(localStorage.getItem(key) ?? (await largeRecords.read(key))),
        );
        const forget = () => {
          if (key === own) return;
          localStorage.removeItem(key);
          void largeRecords.remove(key);
        };
        if (parsed.success) found.push({ pending: parsed.data, forget });
      }
      return found;
    },
  };
}

function writeSmall(key: string, text: string): boolean {
  try {
    localStorage.setItem(key, text);
    return true;
  } catch {
    // The site's share of storage is full; IndexedDB has room of its own.
    return false;
  }
}

const parseOrNull = (text: string | null): unknown => {
  try {
    return text === null ? null : JSON.parse(text);
  } catch {
    return null;
  }
};
