/** Where a pupil left off, kept on her device alone. */

export interface RememberedPlace {
  readonly atMs: number;
  readonly rate: number;
  readonly mirrored: boolean;
  readonly holding: boolean;
  /** How long a step is held before playing goes on by itself, ms; null: until she goes on. */
  readonly goOnAfterMs: number | null;
  readonly captions: boolean;
}

/** Times to choose from for going on by itself, ms. */
export const GO_ON_AFTER_MS = [5_000, 10_000, 20_000, 30_000, 60_000, 120_000] as const;

const FRESH: RememberedPlace = {
  atMs: 0,
  rate: 1,
  mirrored: false,
  holding: false,
  goOnAfterMs: null,
  captions: true,
};

/** What was kept under a key; the defaults where nothing was, or the device keeps nothing. */
export function recallPlace(key: string): RememberedPlace {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(key) ?? 'null');
    if (kept === null || typeof kept !== 'object') return FRESH;
    const { atMs, rate, mirrored, holding, goOnAfterMs, captions } = kept as Partial<
      Record<keyof RememberedPlace, unknown>
    >;
    return {
      atMs: typeof atMs === 'number' && atMs >= 0 ? atMs : FRESH.atMs,
      rate: rate === 0.5 || rate === 0.75 ? rate : FRESH.rate,
      mirrored: mirrored === true,
      holding: holding === true,
      goOnAfterMs: GO_ON_AFTER_MS.find((known) => known === goOnAfterMs) ?? null,
      captions: captions !== false,
    };
  } catch {
    return FRESH;
  }
}

/** Keeps it; a device that refuses costs the pupil nothing but the memory. */
export function keepPlace(key: string, place: RememberedPlace): void {
  try {
    localStorage.setItem(key, JSON.stringify(place));
  } catch {
    // Private windows may refuse to store.
  }
}
