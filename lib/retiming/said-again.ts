/**
 * How what was said again lies in the new recording: evenly, as far as is
 * known; word by word where a transcript of the new recording is there.
 */
import type { Span } from '#lib/time/time.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import type { EditList } from './edit-list.ts';
import { type Anchor, matchWords } from './match-words.ts';
import type { Retake } from './retakes.ts';

export interface SaidAgain extends Retake {
  /** From the start of the old take to its end, in order. */
  readonly anchors: readonly Anchor[];
  /** What is heard in the new take, each under the id of the cue that it says again; null where no transcript tells. */
  readonly heard: readonly Cue[] | null;
}

/** @param old cues of the old recording @param heard cues of the new one, or none */
export function saidAgain(retake: Retake, old: readonly Cue[], heard: readonly Cue[]): SaidAgain {
  const now = retake.inserted.new;
  const ends = [
    { oldMs: retake.old.startMs, newMs: now.startMs },
    { oldMs: retake.old.endMs, newMs: now.endMs },
  ] as const;
  const words = heardIn(now, heard);
  if (words.length === 0) return { ...retake, anchors: ends, heard: null };
  const { anchors, same } = matchWords(
    old.filter((cue) => isMostlyIn(cue, retake.old)),
    words,
  );
  const inside = anchors.filter(
    ({ oldMs, newMs }) =>
      oldMs > ends[0].oldMs && oldMs < ends[1].oldMs && newMs > ends[0].newMs && newMs < ends[1].newMs,
  );
  return {
    ...retake,
    anchors: [ends[0], ...inside, ends[1]],
    heard: words.map((cue, at) => ({ ...cue, id: same.get(at)?.id ?? cue.id })),
  };
}

/** Cues that lie for the most part in a stretch of the new recording, cut to it. */
export const heardIn = (stretch: Span, heard: readonly Cue[]): readonly Cue[] =>
  heard
    .filter((cue) => isMostlyIn(cue, stretch))
    .map((cue) => {
      const startMs = Math.max(cue.startMs, stretch.startMs);
      return { ...cue, startMs, endMs: Math.max(startMs + 1, Math.min(cue.endMs, stretch.endMs)) };
    });

/** Cues that lie in parts that the old recording does not have. */
export const heardNew = ({ edits }: EditList, heard: readonly Cue[]): readonly Cue[] =>
  heard.filter((cue) => edits.some((edit) => edit.kind === 'inserted' && isMostlyIn(cue, edit.new)));

export const isMostlyIn = (span: Span, { startMs, endMs }: Span): boolean => {
  const middle = (span.startMs + span.endMs) / 2;
  return middle >= startMs && middle < endMs;
};

/** A span that lies for the most part in a retake, where it is said again; else null. */
export function inRetake(span: Span, retakes: readonly SaidAgain[]): Span | null {
  const retake = retakes.find(({ old }) => isMostlyIn(span, old));
  if (!retake) return null;
  const startMs = along(retake.anchors, span.startMs);
  return { startMs, endMs: Math.max(startMs + 1, along(retake.anchors, span.endMs)) };
}

/** The moment between the two anchors around it, evenly; outside of all the nearer end. */
function along(anchors: readonly Anchor[], oldMs: number): number {
  const next = anchors.findIndex((anchor) => anchor.oldMs > oldMs);
  const [from, to] = next < 0 ? [anchors.at(-1), undefined] : [anchors[next - 1], anchors[next]];
  if (!from || !to) return (from ?? to)?.newMs ?? 0;
  const part = (oldMs - from.oldMs) / (to.oldMs - from.oldMs);
  return Math.round(from.newMs + part * (to.newMs - from.newMs));
}

export const momentInRetake = (ms: number, retakes: readonly SaidAgain[]): number | null =>
  inRetake({ startMs: ms, endMs: ms + 1 }, retakes)?.startMs ?? null;
