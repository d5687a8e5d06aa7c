/** Moments and spans of the old recording in the new one, and back. */
import type { Span } from '#lib/time/time.ts';
import { type Edit, type EditList, LEAST_EDIT_MS } from './edit-list.ts';

/** Where a moment went: into the other recording, or out with something that the other does not have. */
export type Placed =
  | { readonly is: 'there'; readonly ms: number; readonly edit: Edit }
  /** `ms` is where, in the other recording, what stood around it meets. */
  | { readonly is: 'gone'; readonly ms: number };

type Side = 'old' | 'new';

/** Moments of the old recording in the new one. */
export const toNew = (list: EditList): ((oldMs: number) => Placed) => mapFrom(list, 'old', 'new');

/** Moments of the new recording in the old one: the way back. */
export const toOld = (list: EditList): ((newMs: number) => Placed) => mapFrom(list, 'new', 'old');

function mapFrom({ edits }: EditList, from: Side, to: Side): (ms: number) => Placed {
  const both = edits
    .filter(hasBoth)
    .toSorted((one, other) => one[from].startMs - other[from].startMs || (one.kind === 'kept' ? -1 : 1));
  const gone = edits.filter((edit) => !hasBoth(edit) && edit[from].endMs > edit[from].startMs);
  return (ms) => {
    const within = both.find((edit) => ms >= edit[from].startMs && ms < edit[from].endMs);
    if (within) return { is: 'there', ms: along(within, from, to, ms), edit: within };
    const lost = gone.find((edit) => ms >= edit[from].startMs && ms < edit[from].endMs);
    if (lost) return { is: 'gone', ms: lost[to].startMs };
    // In the measure's own doubt between two edits, or at the very end: whatever is nearest.
    const near = nearest(both, from, ms);
    if (!near || near.away > LEAST_EDIT_MS)
      return { is: 'gone', ms: near ? along(near.edit, from, to, ms) : 0 };
    return { is: 'there', ms: along(near.edit, from, to, ms), edit: near.edit };
  };
}

const hasBoth = ({ kind }: Edit): boolean => kind === 'kept' || kind === 'moved';

function nearest(
  edits: readonly Edit[],
  from: Side,
  ms: number,
): { readonly edit: Edit; readonly away: number } | null {
  let best: { edit: Edit; away: number } | null = null;
  for (const edit of edits) {
    const away = Math.max(edit[from].startMs - ms, ms - edit[from].endMs, 0);
    if (!best || away < best.away) best = { edit, away };
  }
  return best;
}

/** The moment as far along in the one as in the other; outside of it the nearer end. */
function along(edit: Edit, from: Side, to: Side, ms: number): number {
  const length = edit[from].endMs - edit[from].startMs;
  const part = length === 0 ? 0 : Math.min(1, Math.max(0, (ms - edit[from].startMs) / length));
  return Math.round(edit[to].startMs + part * (edit[to].endMs - edit[to].startMs));
}

/** Where a span went. */
export type PlacedSpan =
  | { readonly is: 'there'; readonly span: Span /** Ms of it that are gone. */; readonly lostMs: number }
  | { readonly is: 'gone'; readonly ms: number };

/** So much of a span must be left for it to be still there. */
const ENOUGH = 0.5;

/**
 * A span of the old recording in the new one. Where a cut went through it, it
 * ends or begins there; where more than half is cut it is gone. Where parts of
 * it came apart, it stays with the longest.
 */
export function spanToNew({ edits, oldMs }: EditList): (span: Span) => PlacedSpan {
  const both = edits.filter(hasBoth);
  const place = toNew({ edits, oldMs, newMs: 0, speed: 1, pitchMoved: false });
  return (span) => {
    const whole = { startMs: Math.min(span.startMs, oldMs), endMs: Math.min(span.endMs, oldMs) };
    const length = whole.endMs - whole.startMs;
    const parts = both
      .map((edit) => partOf(edit, whole))
      .filter((part) => part !== null)
      .toSorted((one, other) => one.new.startMs - other.new.startMs);
    const groups = joined(parts);
    const best = groups.toSorted((one, other) => other.keptMs - one.keptMs)[0];
    if (!best || length <= 0 || best.keptMs < ENOUGH * length)
      return { is: 'gone', ms: goneAt(place(whole.startMs)) };
    const { startMs, endMs } = best;
    return {
      is: 'there',
      span: { startMs, endMs: Math.max(startMs + 1, endMs) },
      lostMs: length - best.keptMs,
    };
  };
}

const goneAt = (placed: Placed): number => placed.ms;

interface PartOfSpan {
  readonly new: Span;
  readonly keptMs: number;
}

function partOf(edit: Edit, span: Span): PartOfSpan | null {
  // Within the measure's doubt of an end, the end itself is meant.
  const from = Math.max(span.startMs, edit.old.startMs);
  const to = Math.min(span.endMs, edit.old.endMs);
  if (to <= from) return null;
  return {
    new: { startMs: along(edit, 'old', 'new', from), endMs: along(edit, 'old', 'new', to) },
    keptMs: to - from,
  };
}

/** Parts that follow one another in the new recording at once belong together. */
function joined(parts: readonly PartOfSpan[]): readonly (Span & { readonly keptMs: number })[] {
  const groups: { startMs: number; endMs: number; keptMs: number }[] = [];
  for (const part of parts) {
    const last = groups.at(-1);
    if (last && part.new.startMs - last.endMs < LEAST_EDIT_MS) {
      last.endMs = Math.max(last.endMs, part.new.endMs);
      last.keptMs += part.keptMs;
    } else groups.push({ startMs: part.new.startMs, endMs: part.new.endMs, keptMs: part.keptMs });
  }
  return groups;
}
