/**
 * The outcome of something that a person can get wrong: a value, or a fault
 * that says what happened. Faults carry facts, never worded sentences; words
 * are made in app/words.
 */
export type Result<T, F> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly fault: F };

export const ok = <T>(value: T): { readonly ok: true; readonly value: T } => ({ ok: true, value });

export const failed = <F>(fault: F): { readonly ok: false; readonly fault: F } => ({
  ok: false,
  fault,
});

/** Says that something cannot be; throws where the program itself is wrong. */
export function invariant(condition: unknown, why: string): asserts condition {
  if (!condition) throw new Error(`Broken invariant: ${why}`);
}
