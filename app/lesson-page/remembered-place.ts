/** Where a pupil left off, kept on her device alone. */

export interface RememberedPlace {
  readonly atMs: number;
  readonly rate: number;
  readonly mirrored: boolean;
  readonly holding: boolean;
  readonly captions: boolean;
}

const FRESH: RememberedPlace = { atMs: 0, rate: 1, mirrored: false, holding: false, captions: true };

/** What was kept under a key; the defaults where nothing was, or the device keeps nothing. */
export function recallPlace(key: string): RememberedPlace {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(key) ?? 'null');
    if (kept === null || typeof kept !== 'object') return FRESH;
    const { atMs, rate, mirrored, holding, captions } = kept as Partial<
      Record<keyof RememberedPlace, unknown>
    >;
    return {
      atMs: typeof atMs === 'number' && atMs >= 0 ? atMs : FRESH.atMs,
      rate: rate === 0.5 || rate === 0.75 ? rate : FRESH.rate,
      mirrored: mirrored === true,
      holding: holding === true,
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
